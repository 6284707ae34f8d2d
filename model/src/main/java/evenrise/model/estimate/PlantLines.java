package evenrise.model.estimate;

import evenrise.model.contract.Phrase;
import evenrise.model.contract.Words;
import evenrise.model.project.Catalogue;
import evenrise.model.project.Contactor;
import evenrise.model.project.ContactorPrice;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Load;
import evenrise.model.project.NodePrice;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedBy;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerPrice;
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
    private final BillLines sources = new BillLines();
    private final KindLines<NodePrice> nodes =
            new KindLines<>(kind -> new UnitPrices(kind.price(), kind.priceBreaks()));
    private final KindLines<TransformerPrice> transformers =
            new KindLines<>(kind -> new UnitPrices(kind.price(), kind.priceBreaks()));
    private final KindLines<ContactorPrice> contactors =
            new KindLines<>(kind -> new UnitPrices(kind.price(), kind.priceBreaks()));

    private PlantLines(Project project) {
        this.project = project;
        this.catalogue = project.catalogue();
    }

    /** None of a project that has none of it. */
    static List<BillLine> of(Project project) {
        PlantLines lines = new PlantLines(project);
        project.nodes().forEach(lines::node);
        project.loads().stream().filter(PlantLines::hasContactor).forEach(lines::contactor);
        return Stream.of(
                        lines.sources.lines(),
                        lines.transformers.lines(),
                        lines.nodes.lines(),
                        FeederLines.of(project).lines(),
                        lines.contactors.lines())
                .flatMap(List::stream)
                .toList();
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
            sources.count("further source, " + BillOfMaterials.amps(node.ratedAmps()), Optional.empty());
        } else if (node.transformer().isPresent()) {
            transformer(node.transformer().get());
        } else {
            nodes.count(
                    "distribution point, " + BillOfMaterials.amps(node.ratedAmps()),
                    kinds(Catalogue::nodes).filter(kind -> kind.upToAmps() >= node.ratedAmps()));
        }
    }

    private void transformer(Transformer it) {
        OptionalDouble kva = it.ratedKva();
        transformers.count(
                "transformer, " + Words.word(it.connection())
                        + (kva.isPresent()
                                ? ", " + BillOfMaterials.number(kva.getAsDouble()) + " kVA"
                                : ", rating not stated"),
                kinds(Catalogue::transformers)
                        .filter(kind -> kva.isPresent() && kind.upToKva() >= kva.getAsDouble())
                        .filter(kind ->
                                kind.connection().isEmpty() || kind.connection().get() == it.connection()));
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
        contactors.count(
                "contactor, " + Phrase.counted(poles, "pole") + ", " + BillOfMaterials.amps(amps),
                kinds(Catalogue::contactors).filter(kind -> kind.upToPoles() >= poles && kind.upToAmps() >= amps));
    }

    private <K> Stream<K> kinds(Function<Catalogue, List<K>> of) {
        return catalogue.stream().flatMap(it -> of.apply(it).stream());
    }
}
