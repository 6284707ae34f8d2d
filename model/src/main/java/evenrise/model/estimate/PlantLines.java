package evenrise.model.estimate;

import evenrise.model.contract.Phrase;
import evenrise.model.contract.Words;
import evenrise.model.project.Cable;
import evenrise.model.project.Catalogue;
import evenrise.model.project.Contactor;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Feeder;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedBy;
import evenrise.model.project.Transformer;
import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * What stands between supply and panels, and contactors. Each costs what the cheapest kind of the catalogue does that is
 * large enough.
 */
final class PlantLines {
    private final Project project;
    private final Optional<Catalogue> catalogue;
    private final BillLines kinds = new BillLines();

    private PlantLines(Project project) {
        this.project = project;
        this.catalogue = project.catalogue();
    }

    /** None of a project that has none of it. */
    static List<BillLine> of(Project project) {
        PlantLines lines = new PlantLines(project);
        project.nodes().forEach(lines::node);
        boolean countsFeeders = !project.nodes().isEmpty()
                || project.catalogue().filter(it -> !it.feeders().isEmpty()).isPresent();
        if (countsFeeders) {
            project.panels().forEach(lines::feeder);
            project.nodes().stream().filter(node -> node.source().isEmpty()).forEach(lines::feeder);
        }
        project.loads().stream().filter(PlantLines::hasContactor).forEach(lines::contactor);
        return lines.kinds.lines();
    }

    /** Whether its breaker is one that a board switches: what a contactor switches has an ordinary one. */
    static boolean hasSwitchedBreaker(Load load) {
        return load.switched()
                && load.switchedBy() == SwitchedBy.BREAKER
                && load.comesWith().isEmpty();
    }

    /** Whether a lead of its own goes to its breaker or contactor. */
    static boolean hasLead(Load load) {
        return load.switched() && load.comesWith().isEmpty();
    }

    static boolean hasContactor(Load load) {
        return load.switchedBy() == SwitchedBy.CONTACTOR && load.comesWith().isEmpty();
    }

    private void node(DistributionNode node) {
        if (node.source().isPresent()) {
            kinds.count("further source, " + BillOfMaterials.amps(node.ratedAmps()), Optional.empty());
        } else if (node.transformer().isPresent()) {
            transformer(node.transformer().get());
        } else {
            kinds.count(
                    "node, " + BillOfMaterials.amps(node.ratedAmps()),
                    cheapest(
                            prices(Catalogue::nodes).filter(kind -> kind.upToAmps() >= node.ratedAmps()),
                            kind -> BigDecimal.valueOf(kind.price())));
        }
    }

    private void transformer(Transformer it) {
        OptionalDouble kva = it.ratedKva();
        String item = "transformer, " + Words.word(it.connection())
                + (kva.isPresent() ? ", " + BillOfMaterials.number(kva.getAsDouble()) + " kVA" : ", rating not stated");
        kinds.count(
                item,
                cheapest(
                        prices(Catalogue::transformers)
                                .filter(kind -> kva.isPresent() && kind.upToKva() >= kva.getAsDouble())
                                .filter(kind -> kind.connection().isEmpty()
                                        || kind.connection().get() == it.connection()),
                        kind -> BigDecimal.valueOf(kind.price())));
    }

    private void feeder(Panel panel) {
        feeder(panel.feeder(), OptionalDouble.of(panel.ratedAmps()));
    }

    /** Before a transformer its device is rated at another voltage than the node. */
    private void feeder(DistributionNode node) {
        feeder(
                node.feeder(),
                node.transformer().isPresent() ? OptionalDouble.empty() : OptionalDouble.of(node.ratedAmps()));
    }

    private void feeder(Optional<Feeder> feeder, OptionalDouble otherwise) {
        OptionalDouble amps = feeder.map(Feeder::breakerAmps)
                .filter(OptionalDouble::isPresent)
                .orElse(otherwise);
        OptionalDouble metres = feeder.flatMap(Feeder::cable).stream()
                .mapToDouble(Cable::lengthMetres)
                .findFirst();
        String item = "feeder, " + (amps.isPresent() ? BillOfMaterials.amps(amps.getAsDouble()) : "rating not stated")
                + (metres.isPresent() ? ", " + BillOfMaterials.number(metres.getAsDouble()) + " m" : "");
        kinds.count(
                item,
                cheapest(
                        prices(Catalogue::feeders)
                                .filter(kind -> amps.isPresent() && kind.upToAmps() >= amps.getAsDouble())
                                .filter(kind -> kind.pricePerMetre() == 0 || metres.isPresent()),
                        kind -> BigDecimal.valueOf(kind.price())
                                .add(BigDecimal.valueOf(kind.pricePerMetre())
                                        .multiply(BigDecimal.valueOf(metres.orElse(0))))));
    }

    private void contactor(Load lead) {
        List<Load> behind = Stream.concat(
                        Stream.of(lead),
                        project.loads().stream().filter(each -> each.comesWith().equals(Optional.of(lead.id()))))
                .toList();
        int poles = behind.stream().mapToInt(Load::poles).sum();
        double amps = lead.contactor()
                .map(Contactor::ratedAmps)
                .orElseGet(() ->
                        behind.stream().mapToDouble(Load::breakerAmps).max().orElseThrow());
        kinds.count(
                "contactor, " + Phrase.counted(poles, "pole") + ", " + BillOfMaterials.amps(amps),
                cheapest(
                        prices(Catalogue::contactors)
                                .filter(kind -> kind.upToPoles() >= poles && kind.upToAmps() >= amps),
                        kind -> BigDecimal.valueOf(kind.price())));
    }

    private <K> Stream<K> prices(Function<Catalogue, List<K>> of) {
        return catalogue.stream().flatMap(it -> of.apply(it).stream());
    }

    private static <K> Optional<BigDecimal> cheapest(Stream<K> kinds, Function<K, BigDecimal> price) {
        return kinds.map(price).min(Comparator.naturalOrder());
    }
}
