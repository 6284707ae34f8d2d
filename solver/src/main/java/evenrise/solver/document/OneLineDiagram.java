package evenrise.solver.document;

import evenrise.model.contract.Decimals;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Review;
import evenrise.model.project.Cable;
import evenrise.model.project.Device;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Feeder;
import evenrise.model.project.Panel;
import evenrise.model.project.Transformer;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** The whole tree from supply and sources to the panels: devices, feeders, transformers, ratings and fault levels. */
final class OneLineDiagram {
    private static final String NOTE = "One line stands for all conductors of a feeder. Beside it: left the device that"
            + " protects it, right the size of a line conductor and the length. Fault: the greatest that is available,"
            + " as the electrical review computes it, without motors that feed back; of what the project does not state"
            + " nothing is drawn.";

    private final Layout layout;
    private final Map<String, Double> faults = new HashMap<>();

    private OneLineDiagram(Layout layout, Review review) {
        this.layout = layout;
        for (Quantity each : review.quantities()) {
            if (each.name().equals(PanelHead.GREATEST_FAULT)) {
                faults.put(each.place(), each.value());
            }
        }
    }

    static Diagram of(Layout layout, Review review) {
        OneLineDiagram of = new OneLineDiagram(layout, review);
        List<Point> points = layout.distribution().points();
        return new Diagram(
                "one-line",
                "One-line diagram",
                "power",
                NOTE,
                Arrays.stream(layout.distribution().topDown())
                        .mapToObj(points::get)
                        .map(of::block)
                        .toList());
    }

    private Diagram.Block block(Point point) {
        Optional<String> parent = point.parent() < 0
                ? Optional.empty()
                : Optional.of(layout.distribution().points().get(point.parent()).id());
        return new Diagram.Block(point.id(), kind(point), parent, device(point), lead(point), lines(point));
    }

    private static Diagram.Kind kind(Point point) {
        if (point.parent() < 0) {
            return Diagram.Kind.SOURCE;
        }
        return point.panel().isPresent()
                ? Diagram.Kind.PANEL
                : point.transformer().isPresent() ? Diagram.Kind.TRANSFORMER : Diagram.Kind.NODE;
    }

    private static String device(Point point) {
        OptionalDouble amps = point.feeder().map(Feeder::breakerAmps).orElse(OptionalDouble.empty());
        return amps.isPresent() ? Unrounded.amps(amps.getAsDouble()) : "";
    }

    private static List<String> lead(Point point) {
        Optional<Cable> cable = point.feeder().flatMap(Feeder::cable);
        return cable.map(it -> List.of(CableWords.size(it), Unrounded.rated(it.lengthMetres()) + " m"))
                .orElse(List.of());
    }

    private List<String> lines(Point point) {
        List<String> lines = new ArrayList<>();
        point.node().flatMap(DistributionNode::transformer).ifPresent(it -> lines.addAll(transformer(it)));
        lines.add(NominalVoltage.words(point));
        double rated = point.isSupply() ? layout.project().supply().ratedAmps() : point.ratedAmps();
        lines.add(Unrounded.amps(rated) + main(point).orElse(""));
        point.panel().map(Panel::slots).ifPresent(slots -> lines.add(slots + " slots"));
        if (faults.containsKey(point.id())) {
            lines.add("fault " + PanelHead.upwards(faults.get(point.id())));
        }
        if (point.interruptingAmps().isPresent()) {
            lines.add("interrupts "
                    + Decimals.toThousandths(point.interruptingAmps().getAsDouble() / 1000) + " kA");
        }
        point.panel()
                .flatMap(Panel::alternateFedFrom)
                .or(() -> point.node().flatMap(DistributionNode::alternateFedFrom))
                .ifPresent(other -> lines.add("or from " + Plain.text(other, 40)));
        return lines;
    }

    private Optional<String> main(Point point) {
        Optional<Device> main = point.isSupply() ? layout.project().supply().main() : point.main();
        return main.map(it -> it.ratedAmps().isPresent()
                ? ", main " + Unrounded.amps(it.ratedAmps().getAsDouble())
                : ", main");
    }

    private static List<String> transformer(Transformer it) {
        return List.of(DistributionRow.words(it).split(", "));
    }
}
