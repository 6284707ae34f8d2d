package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.measured.Discrepancy.Weight;
import evenrise.model.measured.FieldChange;
import evenrise.model.measured.MeasuredPlant;
import java.util.ArrayList;
import java.util.List;

/** What is still to be done before a plant counts as taken over. */
public final class OpenPoints {
    private OpenPoints() {}

    /** @param most ids named of each kind */
    public static List<String> of(MeasuredPlant plant, int most) {
        List<String> points = new ArrayList<>();
        long unsafe = plant.count(Weight.UNSAFE) + plant.broken().size();
        if (unsafe > 0) {
            points.add(Phrase.counted(unsafe, "unsafe point") + " to be mended before use.");
        }
        if (plant.count(Weight.FAULT) > 0) {
            points.add(Phrase.counted(plant.count(Weight.FAULT), "fault")
                    + " to be mended, or taken into the plan as it is.");
        }
        if (plant.count(Weight.DIFFERS) > 0) {
            points.add(Phrase.counted(plant.count(Weight.DIFFERS), "figure")
                    + " other than stated, to be explained or taken into the project.");
        }
        named(
                points,
                "load",
                "not measured, the greatest first",
                plant.coverage().missing(),
                most);
        named(
                points,
                "panel",
                "without voltage, rotation or insulation written down",
                plant.coverage().withoutTests(),
                most);
        List<String> unconfirmed = plant.refitted().changes().stream()
                .filter(FieldChange::waitsForFullUse)
                .map(FieldChange::load)
                .distinct()
                .toList();
        named(
                points,
                "load",
                "read below what is stated; say with --confirm which were in full use",
                unconfirmed,
                most);
        return points;
    }

    private static void named(List<String> points, String noun, String what, List<String> ids, int most) {
        if (!ids.isEmpty()) {
            points.add(Phrase.counted(ids.size(), noun) + " " + what + ": " + Phrase.quoted(ids, most) + ".");
        }
    }
}
