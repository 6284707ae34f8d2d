package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.measured.Coverage;
import evenrise.model.measured.Discrepancy;
import evenrise.model.measured.Discrepancy.Weight;
import evenrise.model.measured.FieldChange;
import evenrise.model.measured.FieldChange.Kind;
import evenrise.model.measured.MeasuredPlant;
import evenrise.model.measured.SiteVerdict;
import evenrise.model.measured.UseScene;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Cautions;
import java.util.ArrayList;
import java.util.List;

/** A plant as measured beside its plan, for a screen. */
public final class MeasuredPlantText {
    private static final int MOST_ROWS = 30;
    private static final int MOST_NAMED = 12;

    private MeasuredPlantText() {}

    /** @param isFull whether everything stands, and not what matters most alone */
    public static List<String> lines(
            MeasuredPlant plant, RenewalGain gain, List<String> notes, boolean isFull, Paint paint) {
        List<List<String>> sections = new ArrayList<>();
        sections.add(head(plant, paint));
        sections.add(differences(plant, isFull, paint));
        sections.add(limits(plant, gain, paint));
        sections.add(plates(plant, isFull, paint));
        sections.add(voltages(plant, paint));
        sections.add(taken(plant, isFull, paint));
        sections.add(open(plant, notes, isFull, paint));
        sections.add(CautionText.lines(Cautions.ALL, paint));
        return Sections.joined(sections.stream().filter(each -> !each.isEmpty()).toList());
    }

    private static List<String> head(MeasuredPlant plant, Paint paint) {
        SiteVerdict verdict = plant.verdict();
        return new Section(paint, "Measured: " + verdict.words())
                .text(verdict == SiteVerdict.AS_PLANNED ? Tone.GOOD : Tone.BAD, verdict.meaning())
                .text(counts(plant))
                .text(coverage(plant.coverage()))
                .lines();
    }

    /** How many of each weight. */
    public static String counts(MeasuredPlant plant) {
        return plant.count(Weight.UNSAFE) + " unsafe, " + Phrase.counted(plant.count(Weight.FAULT), "fault") + ", "
                + Phrase.counted(plant.count(Weight.DIFFERS), "figure") + " other than stated, "
                + plant.count(Weight.LESS) + " less than stated; "
                + (plant.broken().isEmpty()
                        ? "no rule on currents is broken by what was measured."
                        : Phrase.counted(plant.broken().size(), "rule") + " on currents broken by what was measured.");
    }

    /** How much of the plant was measured. */
    public static String coverage(Coverage coverage) {
        return coverage.loads() + " of " + Phrase.counted(coverage.ofLoads(), "load")
                + " have readings of their own; with whole panels " + Decimals.fixed(100 * coverage.part(), 0)
                + " % of the plant's idle current was measured. A plant counts as measured from 90 % on (common"
                + " practice, no source).";
    }

    private static List<String> differences(MeasuredPlant plant, boolean isFull, Paint paint) {
        Section section = new Section(paint, "Differences, what matters most first");
        List<Discrepancy> shown = plant.discrepancies().stream()
                .filter(each -> isFull || each.weight() != Weight.LESS)
                .limit(isFull ? Integer.MAX_VALUE : MOST_ROWS)
                .toList();
        if (shown.isEmpty()) {
            section.text("None.");
        } else {
            section.table(table(shown));
        }
        int left = plant.discrepancies().size() - shown.size();
        if (left > 0) {
            section.text("Not shown: " + left + ", most of them less than stated; --all shows them.");
        }
        return section.lines();
    }

    private static Table table(List<Discrepancy> shown) {
        Table table = new Table()
                .words("Where")
                .text("What")
                .number("Planned")
                .number("Measured")
                .number("±")
                .text("Likely cause; look at first");
        for (Discrepancy each : shown) {
            DiscrepancyRow row = DiscrepancyRow.of(each);
            table.row(
                    each.weight() == Weight.UNSAFE ? Tone.BAD : Tone.PLAIN,
                    row.subject(),
                    (each.weight() == Weight.DIFFERS ? "" : row.weightWord() + ": ") + row.quantity(),
                    row.planned(),
                    row.measured(),
                    row.within(),
                    row.cause() + "; look at " + row.lookAt());
        }
        return table;
    }

    private static List<String> limits(MeasuredPlant plant, RenewalGain gain, Paint paint) {
        Section section = new Section(paint, "Limits at measured values, each with all that it may be off by on top");
        for (BrokenRule each : plant.broken()) {
            section.item(each.rule() + ": " + each.message());
        }
        section.text(limitsWords(plant));
        gain.lines().forEach(section::text);
        return section.lines();
    }

    /** What holds of limits, and of neutrals does not. */
    public static String limitsWords(MeasuredPlant plant) {
        return (plant.broken().isEmpty()
                        ? "Ratings, neutrals and inrush limits that the plan keeps are kept with what was measured. "
                        : "")
                + "A neutral is not bounded so: where a load draws less than was read, it may carry more; 'audit' has"
                + " its worst use.";
    }

    private static List<String> voltages(MeasuredPlant plant, Paint paint) {
        return plant.voltages()
                .map(seen -> new Section(paint, "Voltages to neutral")
                        .text(seen.counted() + ": mean " + percent(seen.mean()) + " % of nominal, standard deviation "
                                + percent(seen.deviation()) + " %, from " + percent(seen.least()) + " to "
                                + percent(seen.greatest()) + " %. Drops within the plant and the meter's error are in"
                                + " it.")
                        .text("What a load draws at another voltage is not known here: gear that keeps its power draws"
                                + " more as the voltage falls, gear like a resistor more as it rises, some about as"
                                + " much. Within this range a current may be up to " + percent(seen.mayBeMore())
                                + " % more than was read, were it in proportion; a motor may differ by more. No figure"
                                + " is changed by that.")
                        .lines())
                .orElse(List.of());
    }

    private static String percent(double part) {
        return Decimals.fixed(100 * part, 1);
    }

    private static List<String> plates(MeasuredPlant plant, boolean isFull, Paint paint) {
        List<FieldChange> wrong = plant.wrongPlates();
        if (wrong.isEmpty()) {
            return List.of();
        }
        Section section = new Section(paint, "Figures that were off by more than 24 % and the meter's error");
        Table table = new Table()
                .words("Load")
                .words("Field")
                .words("Was")
                .number("Said A")
                .number("Measured A")
                .number("±")
                .number("Off %");
        wrong.stream()
                .limit(isFull ? Integer.MAX_VALUE : MOST_ROWS)
                .forEach(each -> table.row(
                        each.load(),
                        each.field(),
                        each.wasGuessed() ? "guessed" : "stated",
                        Decimals.fixed(each.before(), 2),
                        Decimals.fixed(each.measured(), 2),
                        Decimals.fixed(each.spread(), 2),
                        Decimals.fixed(100 * each.offBy(), 0)));
        return section.table(table)
                .text("A running current below its plate is listed only where full use was confirmed, a peak below"
                        + " it never.")
                .lines();
    }

    private static List<String> taken(MeasuredPlant plant, boolean isFull, Paint paint) {
        Section section = new Section(paint, "What the project says with it");
        section.text(takenWords(plant));
        plant.use().ifPresent(use -> useLines(use, isFull).forEach(section::item));
        plant.refitted().changes().stream()
                .filter(each -> each.visit().isEmpty())
                .limit(isFull ? Integer.MAX_VALUE : MOST_NAMED)
                .forEach(each -> section.item(each.load() + " " + each.field() + " "
                        + Decimals.fixed(each.before(), 2) + " A, guessed, "
                        + (each.kind() == Kind.RAISED_BY_CLASS
                                ? "raised to " + Decimals.fixed(each.after(), 2) + " A"
                                : "stays")
                        + ": " + each.why() + "."));
        return section.lines();
    }

    /** What became of fields. */
    public static String takenWords(MeasuredPlant plant) {
        return Phrase.counted(plant.refitted().count(Kind.RAISED), "field")
                + " raised to what was read, with what the meter may be off by on top; "
                + plant.refitted().count(Kind.LOWERED) + " lowered as confirmed; "
                + plant.refitted().count(Kind.KEPT)
                + " kept, since more is stated than was read and nobody confirmed full use, it did not draw, or it is"
                + " a peak of one closing; "
                + plant.refitted().count(Kind.RAISED_BY_CLASS) + " guessed and raised by others of their kind."
                + plant.use().map(use -> " " + useWords(use)).orElse("");
    }

    private static List<String> useLines(UseScene use, boolean isFull) {
        List<String> lines = new ArrayList<>();
        use.parts().stream()
                .limit(isFull ? Integer.MAX_VALUE : MOST_NAMED)
                .forEach(each -> lines.add(each.load() + " " + Decimals.fixed(100 * each.factor(), 1)
                        + " % of running_a: " + Decimals.fixed(each.leastAmps(), 2) + " to "
                        + Decimals.fixed(each.greatestAmps(), 2) + " A were read on "
                        + Phrase.counted(each.visits(), "visit") + "."));
        if (!use.dead().isEmpty()) {
            lines.add("In full though it was read, since it did not draw on a visit: "
                    + Phrase.listed(use.dead(), MOST_NAMED) + ".");
        }
        return lines;
    }

    private static String useWords(UseScene use) {
        String scene = Phrase.quoted(use.scene().id());
        return use.parts().isEmpty()
                ? "No scene " + scene
                        + " is written: no load was read by two visits, on each of its poles, at less than" + " full."
                : "Scene " + scene + ": " + Phrase.counted(use.parts().size(), "load")
                        + " at the greatest that two visits and more read, with what the meter may be off by on top;"
                        + " every other load in"
                        + " full"
                        + " (" + use.notTwice().size() + " of them not read twice on each pole). It"
                        + " stands beside full use: no rule sees less than before, and phases are balanced in both.";
    }

    private static List<String> open(MeasuredPlant plant, List<String> notes, boolean isFull, Paint paint) {
        Section section = new Section(paint, "Open");
        OpenPoints.of(plant, isFull ? Integer.MAX_VALUE : MOST_NAMED).forEach(section::item);
        notes.forEach(section::item);
        return section.lines().size() > 1 ? section.lines() : List.of();
    }
}
