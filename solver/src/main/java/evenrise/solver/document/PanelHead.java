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
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * What stands above a panel's schedule. A value that nobody has stated is empty: whoever draws it leaves room to write, and
 * says that it is not stated.
 */
final class PanelHead {
    /** As the electrical review names it. */
    static final String GREATEST_FAULT = "greatest fault current";

    private final Layout layout;
    private final SheetWords words;
    private final Map<String, Quantity> faults;

    PanelHead(Layout layout, Review review, SheetWords words) {
        this.layout = layout;
        this.words = words;
        this.faults = review.quantities().stream()
                .filter(each -> each.name().equals(GREATEST_FAULT))
                .collect(Collectors.toMap(Quantity::place, Function.identity(), (first, any) -> first));
    }

    List<Fact> of(Panel panel) {
        Point point = layout.distribution().of(panel);
        List<Fact> head = new ArrayList<>();
        head.add(fact("voltage", NominalVoltage.in(words, point), hertz(point)));
        head.add(mains(panel, point));
        head.add(fact(
                "bus", amps(panel.ratedAmps()), words.say("head.bus-note", amps(panel.neutralAmps()), panel.slots())));
        head.add(fact("fed-from", fedFrom(panel), beyond(point)));
        head.add(fact(
                "feeder",
                point.feeder()
                        .flatMap(Feeder::cable)
                        .map(cable -> CableWords.whole(cable, words))
                        .orElse(""),
                words.say("head.device", amps(deviceAmps(panel)))));
        head.add(stated("interrupting", kiloamps(panel.interruptingAmps())));
        head.add(available(panel));
        head.add(stated("location", panel.location()));
        head.add(stated("mounting", panel.mounting()));
        head.add(stated("enclosure", panel.enclosure()));
        return head;
    }

    private Fact fact(String key, String value, String note) {
        return new Fact(words.say("head." + key), value, note);
    }

    private String amps(double amps) {
        return words.number(Unrounded.amps(amps));
    }

    /** The device before the bus: its own main, else the feeder's, whose rating is that of the bus where none is stated. */
    static double deviceAmps(Panel panel) {
        OptionalDouble feeder = panel.feeder().map(Feeder::breakerAmps).orElse(OptionalDouble.empty());
        return panel.main()
                .map(Device::ratedAmps)
                .orElse(OptionalDouble.empty())
                .orElse(feeder.orElse(panel.ratedAmps()));
    }

    private Fact mains(Panel panel, Point point) {
        String device = amps(deviceAmps(panel));
        if (panel.main().isPresent()) {
            return fact("mains", words.say("head.main-device", device), "");
        }
        boolean isStated = point.feeder()
                .map(Feeder::breakerAmps)
                .orElse(OptionalDouble.empty())
                .isPresent();
        return fact(
                "mains",
                words.say("head.lugs"),
                words.say(isStated ? "head.feeder-protects" : "head.feeder-as-bus-protects", device));
    }

    private String hertz(Point point) {
        String system = DistributionRow.system(layout, point);
        return words.number(system.substring(system.lastIndexOf(", ") + 2));
    }

    /** Where it is fed from. */
    String fedFrom(Panel panel) {
        Point parent = layout.distribution()
                .points()
                .get(layout.distribution().of(panel).parent());
        return parent.isSupply() ? words.say("place.supply") : parent.id();
    }

    /** What it can be transferred to, and what it feeds on. */
    private String beyond(Point point) {
        List<String> parts = new ArrayList<>();
        point.panel().flatMap(Panel::alternateFedFrom).ifPresent(other -> parts.add(words.say("head.transfer", other)));
        String fed = layout.distribution().points().stream()
                .filter(each -> each.parent() == point.index())
                .map(Point::id)
                .collect(Collectors.joining(", "));
        if (!fed.isEmpty()) {
            parts.add(words.say("head.feeds", fed));
        }
        return Plain.text(String.join("; ", parts), 200);
    }

    /** How it was computed is told in English, in the words of the review. */
    private Fact available(Panel panel) {
        Optional<Quantity> fault = Optional.ofNullable(faults.get(panel.id()));
        return fact(
                "fault",
                fault.map(each -> words.number(upwards(each.value()))).orElse(words.say("head.not-calculated")),
                words.language() == SheetLanguage.EN
                        ? fault.flatMap(Quantity::how).orElse("")
                        : fault.map(any -> words.say("head.fault-how")).orElse(""));
    }

    /** To a tenth of a kiloampere, never below what was computed. */
    static String upwards(double faultAmps) {
        return Decimals.fixed(Math.ceil(faultAmps / 100 - 1e-9) / 10, 1) + " kA";
    }

    private Optional<String> kiloamps(OptionalDouble amps) {
        return amps.isPresent()
                ? Optional.of(words.number(Decimals.toThousandths(amps.getAsDouble() / 1000) + " kA"))
                : Optional.empty();
    }

    private Fact stated(String key, Optional<String> value) {
        return fact(key, value.map(text -> Plain.text(text, 60)).orElse(""), "");
    }
}
