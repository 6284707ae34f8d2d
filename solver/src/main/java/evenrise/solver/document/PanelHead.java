package evenrise.solver.document;

import evenrise.model.contract.Decimals;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Review;
import evenrise.model.project.Device;
import evenrise.model.project.Feeder;
import evenrise.model.project.Panel;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * What stands above a panel's schedule. A value that nobody has stated is empty: whoever draws it leaves room to write, and
 * says that it is not stated.
 */
final class PanelHead {
    /** As the electrical review names it. */
    static final String GREATEST_FAULT = "greatest fault current";

    static final String FED_FROM = "Fed from";

    private final Layout layout;
    private final Review review;

    PanelHead(Layout layout, Review review) {
        this.layout = layout;
        this.review = review;
    }

    List<Fact> of(Panel panel) {
        Point point = layout.distribution().of(panel);
        List<Fact> head = new ArrayList<>();
        head.add(new Fact("Voltage", NominalVoltage.of(point), hertz(point)));
        head.add(mains(panel, point));
        head.add(new Fact(
                "Bus rating",
                Unrounded.amps(panel.ratedAmps()),
                "neutral " + Unrounded.amps(panel.neutralAmps()) + ", " + panel.slots() + " slots"));
        head.add(new Fact(FED_FROM, fedFrom(point), beyond(point)));
        head.add(new Fact(
                "Feeder",
                point.feeder().flatMap(Feeder::cable).map(CableWords::whole).orElse(""),
                "device " + Unrounded.amps(deviceAmps(panel))));
        head.add(stated("Interrupting rating", kiloamps(panel.interruptingAmps()), ""));
        head.add(available(panel));
        head.add(stated("Location", panel.location(), ""));
        head.add(stated("Mounting", panel.mounting(), ""));
        head.add(stated("Enclosure", panel.enclosure(), ""));
        return head;
    }

    /** The device before the bus: its own main, else the feeder's, whose rating is that of the bus where none is stated. */
    static double deviceAmps(Panel panel) {
        OptionalDouble feeder = panel.feeder().map(Feeder::breakerAmps).orElse(OptionalDouble.empty());
        return panel.main()
                .map(Device::ratedAmps)
                .orElse(OptionalDouble.empty())
                .orElse(feeder.orElse(panel.ratedAmps()));
    }

    private static Fact mains(Panel panel, Point point) {
        if (panel.main().isPresent()) {
            return new Fact("Mains", Unrounded.amps(deviceAmps(panel)) + " main device", "");
        }
        return new Fact(
                "Mains",
                "lugs only",
                "no main of its own is stated; the feeder's device, " + Unrounded.amps(deviceAmps(panel))
                        + (point.feeder()
                                        .map(Feeder::breakerAmps)
                                        .orElse(OptionalDouble.empty())
                                        .isPresent()
                                ? ""
                                : " as the bus, not stated")
                        + ", protects it");
    }

    private String hertz(Point point) {
        String words = DistributionRow.system(layout, point);
        return words.substring(words.lastIndexOf(", ") + 2);
    }

    private String fedFrom(Point point) {
        return layout.distribution().points().get(point.parent()).id();
    }

    /** What it can be transferred to, and what it feeds on. */
    private String beyond(Point point) {
        List<String> parts = new ArrayList<>();
        point.panel().flatMap(Panel::alternateFedFrom).ifPresent(other -> parts.add("can be transferred to " + other));
        String fed = layout.distribution().points().stream()
                .filter(each -> each.parent() == point.index())
                .map(Point::id)
                .collect(Collectors.joining(", "));
        if (!fed.isEmpty()) {
            parts.add("feeds " + fed);
        }
        return Plain.text(String.join("; ", parts), 200);
    }

    private Fact available(Panel panel) {
        Optional<Quantity> fault = review.quantities().stream()
                .filter(each -> each.place().equals(panel.id()) && each.name().equals(GREATEST_FAULT))
                .findFirst();
        return new Fact(
                "Available fault",
                fault.map(each -> upwards(each.value())).orElse("not calculated"),
                fault.flatMap(Quantity::how).orElse(""));
    }

    /** To a tenth of a kiloampere, never below what was computed. */
    static String upwards(double faultAmps) {
        return Decimals.fixed(Math.ceil(faultAmps / 100 - 1e-9) / 10, 1) + " kA";
    }

    private static Optional<String> kiloamps(OptionalDouble amps) {
        return amps.isPresent()
                ? Optional.of(Decimals.toThousandths(amps.getAsDouble() / 1000) + " kA")
                : Optional.empty();
    }

    private static Fact stated(String name, Optional<String> value, String note) {
        return new Fact(name, value.map(text -> Plain.text(text, 60)).orElse(""), note);
    }
}
