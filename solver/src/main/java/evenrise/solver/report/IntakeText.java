package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Cautions;
import evenrise.solver.intake.EquipmentList;
import java.util.ArrayList;
import java.util.List;

/** What came of an equipment list, for a screen. */
public final class IntakeText {
    private static final int SHOWN = 20;

    private IntakeText() {}

    /** @param all whether long lists stand in full */
    public static List<String> lines(EquipmentList list, boolean all, Paint paint) {
        int shown = all ? Integer.MAX_VALUE : SHOWN;
        List<List<String>> sections = new ArrayList<>();
        sections.add(new Section(paint, "Equipment list")
                .text(Phrase.counted(list.pieces(), "piece") + " in " + Phrase.counted(list.rows(), "row") + " on "
                        + Phrase.counted(list.breakers(), "breaker")
                        + (list.leftOut() == 0
                                ? "."
                                : "; " + Phrase.counted(list.leftOut(), "piece") + " of " + list.listed()
                                        + " left out, listed below."))
                .lines());
        if (!list.problems().isEmpty()) {
            sections.add(listed(new Section(paint, "Rows that cannot be taken over"), list.problems(), shown));
        }
        if (!list.outside().isEmpty()) {
            sections.add(listed(
                    new Section(paint, "Outside this project: life safety, fed by others"), list.outside(), shown));
        }
        if (!list.questions().isEmpty()) {
            sections.add(listed(new Section(paint, "Questions that somebody has to answer"), list.questions(), shown));
        }
        Section guessed = new Section(paint, "Guessed, to be confirmed");
        list.project()
                .flatMap(GuessedField::counted)
                .ifPresent(count ->
                        guessed.text(count + ", each named in its load's 'guessed' and counted on every cover."));
        sections.add(listed(guessed, list.guesses(), shown));
        if (!list.notRead().isEmpty()) {
            sections.add(listed(new Section(paint, "Columns that were not read"), list.notRead(), shown));
        }
        sections.add(CautionText.lines(Cautions.ALL, paint));
        return Sections.joined(sections);
    }

    private static List<String> listed(Section section, List<String> entries, int shown) {
        entries.stream().limit(shown).forEach(section::item);
        if (entries.size() > shown) {
            section.item("and " + (entries.size() - shown) + " more; --all shows them");
        }
        return section.lines();
    }
}
