package evenrise.model.nodal;

import evenrise.model.project.Cable;
import evenrise.model.project.ConductorMaterial;
import evenrise.model.project.Conduit;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Electrical;
import evenrise.model.project.Feeder;
import evenrise.model.project.Panel;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.project.ReferenceMethod;
import evenrise.model.project.SourceKind;
import evenrise.model.project.SupplySource;
import evenrise.model.rules.Layout;
import evenrise.model.rules.RandomTree;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/** A random distribution whose sources, cables and transformers have impedances, all of them stated; loads are always on. */
public final class WiredTree {
    private static final String[] SIZES = {"4/0 AWG", "250 kcmil", "500 kcmil", "95 mm2", "150 mm2"};

    private final Random random;

    private WiredTree(long seed) {
        this.random = new Random(seed * 0x9E3779B97F4A7C15L + 23);
    }

    /** @param practice that faults are computed by */
    public static Layout of(long seed, Practice practice) {
        return new WiredTree(seed).wired(new RandomTree(seed, 0), practice);
    }

    private Layout wired(RandomTree tree, Practice practice) {
        List<DistributionNode> nodes = new ArrayList<>();
        for (DistributionNode each : tree.project.nodes()) {
            nodes.add(each.withFeeder(each.source().isPresent() ? Optional.empty() : feeder())
                    .withNeutralFactor(neutral())
                    .withSource(each.source().map(it -> it.withBehind(Optional.of(source()))))
                    .withTransformer(each.transformer()
                            .map(it -> it.withRatedKva(OptionalDouble.of(150 + 600 * random.nextDouble()))
                                    .withImpedancePercent(OptionalDouble.of(2 + 3 * random.nextDouble()))
                                    .withXOverR(OptionalDouble.of(1 + 4 * random.nextDouble()))
                                    .withSecondaryCable(
                                            random.nextInt(3) == 0 ? Optional.of(cable()) : Optional.empty()))));
        }
        List<Panel> panels = tree.project.panels().stream()
                .map(each -> each.withFeeder(feeder()).withNeutralFactor(neutral()))
                .toList();
        Project project = tree.project
                .withNodes(nodes)
                .withPanels(panels)
                .withElectrical(Optional.of(
                        Electrical.builder().practice(practice).source(source()).build()));
        return Layout.of(project, tree.plan);
    }

    private double neutral() {
        return random.nextInt(3) == 0 ? 2 : 1;
    }

    private Optional<Feeder> feeder() {
        return Optional.of(Feeder.builder().cable(cable()).breakerAmps(400).build());
    }

    private Cable cable() {
        String size = SIZES[random.nextInt(SIZES.length)];
        return Cable.builder()
                .lengthMetres(2 + 20 * random.nextDouble())
                .size(size)
                .material(ConductorMaterial.COPPER)
                .conduit(random.nextBoolean() ? Conduit.STEEL : Conduit.NONMETALLIC)
                .method(ReferenceMethod.B1)
                .conductorCelsius(size.endsWith("mm2") ? 70 : 75)
                .build();
    }

    private SupplySource source() {
        return SupplySource.builder()
                .kind(SourceKind.UTILITY)
                .faultAmps(8_000 + 10_000 * random.nextDouble())
                .xOverR(0.5 + 5 * random.nextDouble())
                .build();
    }
}
