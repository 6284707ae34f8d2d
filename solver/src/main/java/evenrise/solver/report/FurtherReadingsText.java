package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.observation.FurtherReadings;
import evenrise.model.observation.FurtherReadings.Place;
import java.util.ArrayList;
import java.util.List;

/** What would tell what a recording leaves open. */
public final class FurtherReadingsText {
    private FurtherReadingsText() {}

    /**
     * The number first, then reading by reading; nothing where nothing is open.
     *
     * @param most ids named of each reading
     */
    public static List<String> lines(FurtherReadings further, int most) {
        List<String> lines = new ArrayList<>();
        if (further.count() == 0) {
            return lines;
        }
        lines.add(number(further));
        if (!further.places().isEmpty()) {
            lines.add("Record one more start, with clamps at "
                    + Phrase.counted(further.places().size(), "place") + " at once:");
        }
        for (Place each : further.places()) {
            lines.add(capital(each.label()) + " tells " + Phrase.quoted(each.loads(), most) + ".");
        }
        if (!further.alone().isEmpty()) {
            lines.add("Switch alone, or clamp the circuit of: " + Phrase.quoted(further.alone(), most) + ".");
        }
        return lines;
    }

    private static String number(FurtherReadings further) {
        return (further.isLeast()
                        ? "What is left open asks for " + Phrase.counted(further.count(), "further reading")
                                + " at least, and these are so few"
                        : "What is left open asks for " + further.atLeast() + " further readings at least; these are "
                                + further.count())
                + ", if further recordings are as sharp as this one:";
    }

    private static String capital(String label) {
        return Character.toUpperCase(label.charAt(0)) + label.substring(1);
    }
}
