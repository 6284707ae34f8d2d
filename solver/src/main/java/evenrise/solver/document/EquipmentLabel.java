package evenrise.solver.document;

import evenrise.model.plan.Quantity;
import evenrise.model.plan.Review;
import evenrise.model.project.Cable;
import evenrise.model.project.Feeder;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What a label on a piece of equipment may say: the fault current that is computed, and what is not.
 *
 * @param kind supply, source, panel, distribution point or transformer
 * @param fedFrom empty for the supply and further sources
 * @param fault greatest of the sources, without motors that feed back, as the electrical review computes it; empty where the project states too little for it
 * @param interruptingAmps of what stands there; empty where it is not stated
 * @param cable of its feeder; empty where the project states none
 */
public record EquipmentLabel(
        String place,
        String kind,
        String voltage,
        String fedFrom,
        Optional<Quantity> fault,
        OptionalDouble interruptingAmps,
        Optional<Cable> cable) {
    /** Stands for every figure that only a study gives. */
    public static final String NOT_CALCULATED = "not calculated";

    static DocumentTable<EquipmentLabel> table(Layout layout, Review review) {
        return DocumentTable.of(
                "equipment",
                "Equipment labels: available fault current, arc flash",
                SheetWords.in(SheetLanguage.EN).say("plate.note"),
                List.of(
                        Column.text("place", "Place", EquipmentLabel::place),
                        Column.text("kind", "Kind", EquipmentLabel::kind),
                        Column.text("voltage", "Voltage", EquipmentLabel::voltage),
                        Column.text("fedFrom", "Fed from", EquipmentLabel::fedFrom),
                        Column.number(
                                "fault", "Available fault current", "A", EquipmentLabel::faultAmps, NOT_CALCULATED),
                        Column.number("interrupts", "Interrupts", "A", EquipmentLabel::interruptingAmps, "not stated"),
                        Column.text("how", "How the fault current comes about", EquipmentLabel::how),
                        Column.text("clearing", "Clearing time", any -> NOT_CALCULATED),
                        Column.text("energy", "Incident energy", any -> NOT_CALCULATED),
                        Column.text("boundary", "Arc-flash boundary", any -> NOT_CALCULATED)),
                layout.distribution().points().stream()
                        .map(point -> of(layout, review, point))
                        .toList());
    }

    private static EquipmentLabel of(Layout layout, Review review, Point point) {
        return new EquipmentLabel(
                point.id(),
                point.parent() < 0
                        ? point.isSupply() ? "supply" : "source"
                        : point.panel().isPresent()
                                ? "panel"
                                : point.transformer().isPresent() ? "transformer" : DistributionRow.POINT,
                NominalVoltage.of(point),
                point.parent() < 0
                        ? ""
                        : layout.distribution().points().get(point.parent()).id(),
                review.quantities().stream()
                        .filter(each -> each.name().equals(PanelHead.GREATEST_FAULT)
                                && each.place().equals(point.id()))
                        .findFirst(),
                point.interruptingAmps(),
                point.feeder().flatMap(Feeder::cable));
    }

    /** To the next ampere up, never below what was computed. */
    public OptionalDouble faultAmps() {
        return fault.isPresent() ? OptionalDouble.of(Math.ceil(fault.get().value() - 1e-6)) : OptionalDouble.empty();
    }

    /** What it rests on; empty where nothing was computed. */
    public String how() {
        return fault.flatMap(Quantity::how).orElse("");
    }

    /** In kiloampere, upwards to a tenth; says so where nothing was computed. */
    public String faultInWords() {
        return fault.map(each -> PanelHead.upwards(each.value())).orElse(NOT_CALCULATED);
    }

    /** Whether the fault current passes what the equipment interrupts. */
    public boolean isOver() {
        return fault.filter(each -> interruptingAmps.isPresent() && each.value() > interruptingAmps.getAsDouble())
                .isPresent();
    }
}
