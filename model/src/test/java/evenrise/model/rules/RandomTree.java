package evenrise.model.rules;

import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.anAssignment;

import evenrise.model.PlanBuilder;
import evenrise.model.plan.Plan;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.DistributionNodeBuilder;
import evenrise.model.project.Load;
import evenrise.model.project.NodeSource;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.project.Secondary;
import evenrise.model.project.SlotNumbering;
import evenrise.model.project.Supply;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;

/**
 * A distribution from a seed: nodes, transformers of every connection, sources and panels, nested at will, with loads that
 * are always on in their panels, of one to three poles, leading and lagging.
 */
public final class RandomTree {
    private static final double[] VOLTS = {120, 127, 230, 277};

    public final Project project;
    public final Plan plan;

    private final Random random;
    private final double harmonics;
    private final List<DistributionNode> nodes = new ArrayList<>();
    private final List<Panel> panels = new ArrayList<>();
    private final List<Load> loads = new ArrayList<>();
    private final PlanBuilder placed = aPlan();
    private final Map<String, PhaseSystem> systems = new HashMap<>(Map.of("supply", PhaseSystem.THREE_PHASE));

    /** @param harmonics greatest third harmonic over fundamental */
    public RandomTree(long seed, double harmonics) {
        this.random = new Random(seed * 0x9E3779B97F4A7C15L + 11);
        this.harmonics = harmonics;
        List<String> points = new ArrayList<>(List.of("supply"));
        int count = 2 + random.nextInt(10);
        for (int i = 0; i < count; i++) {
            points.add(node("N" + i, points.get(random.nextInt(points.size()))));
        }
        for (int i = 0; i < points.size() + 2; i++) {
            panel("P" + i, points.get(random.nextInt(points.size())));
        }
        project = Project.builder()
                .name("tree " + seed)
                .supply(Supply.builder()
                        .system(PhaseSystem.THREE_PHASE)
                        .lineToNeutralVolts(VOLTS[random.nextInt(VOLTS.length)])
                        .frequencyHertz(60)
                        .ratedAmps(10_000)
                        .build())
                .panels(panels)
                .nodes(nodes)
                .loads(loads)
                .build();
        plan = placed.build();
    }

    private String node(String id, String fedFrom) {
        DistributionNodeBuilder node = DistributionNode.builder().id(id).ratedAmps(10_000);
        PhaseSystem above = systems.get(fedFrom);
        double volts = VOLTS[random.nextInt(VOLTS.length)];
        int kind = random.nextInt(12);
        PhaseSystem system = above;
        if (kind == 0) {
            system = PhaseSystem.THREE_PHASE;
            node.source(Optional.of(NodeSource.builder()
                    .system(system)
                    .lineToNeutralVolts(volts)
                    .frequencyHertz(60)
                    .build()));
        } else {
            node.fedFrom(Optional.of(fedFrom));
            if (kind > 2) {
                Transformer transformer = transformer(above, volts);
                system = transformer.secondary().system();
                node.transformer(Optional.of(transformer));
            }
        }
        systems.put(id, system);
        nodes.add(node.build());
        return id;
    }

    private Transformer transformer(PhaseSystem above, double volts) {
        boolean isSingle = above != PhaseSystem.THREE_PHASE || random.nextInt(3) == 0;
        PhaseSystem system = isSingle
                ? random.nextBoolean() ? PhaseSystem.SPLIT_PHASE : PhaseSystem.SINGLE_PHASE
                : PhaseSystem.THREE_PHASE;
        List<Phase> primary = new ArrayList<>(above.phases());
        java.util.Collections.shuffle(primary, random);
        return Transformer.builder()
                .connection(
                        isSingle
                                ? TransformerConnection.SINGLE
                                : random.nextInt(3) == 0
                                        ? TransformerConnection.WYE_WYE
                                        : TransformerConnection.DELTA_WYE)
                .primaryPhases(
                        isSingle
                                ? List.copyOf(primary.subList(0, Math.min(primary.size(), 1 + random.nextInt(2))))
                                : List.of())
                .shiftDegrees(random.nextBoolean() ? 30 : -30)
                .secondary(Secondary.builder()
                        .system(system)
                        .lineToNeutralVolts(volts)
                        .build())
                .build();
    }

    private void panel(String id, String fedFrom) {
        panels.add(Panel.builder()
                .id(id)
                .slots(60)
                .ratedAmps(10_000)
                .numbering(SlotNumbering.SEQUENTIAL)
                .fedFrom(Optional.of(fedFrom))
                .build());
        PhaseSystem system = systems.get(fedFrom);
        int slot = 1;
        for (int i = random.nextInt(8); i >= 0; i--) {
            int poles = 1 + random.nextInt(system.phases().size());
            slot += random.nextInt(3);
            String load = id + "-L" + i;
            loads.add(Load.builder()
                    .id(load)
                    .role(Role.AUXILIARY)
                    .switched(false)
                    .poles(poles)
                    .breakerAmps(63)
                    .runningAmps(0.5 + 20 * random.nextDouble())
                    .idleAmps(0.5 + 10 * random.nextDouble())
                    .powerFactor(0.3 + 0.7 * random.nextDouble())
                    .leading(random.nextInt(4) == 0)
                    .thirdHarmonic(harmonics * random.nextDouble())
                    .build());
            placed.assignments(anAssignment(load).at(id, slot));
            slot += poles;
        }
    }
}
