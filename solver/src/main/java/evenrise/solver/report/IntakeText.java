package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Finding;
import evenrise.model.project.Project;
import evenrise.model.project.QuantityRange;
import evenrise.solver.intake.EquipmentList;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What came of an equipment list, for a screen. */
public final class IntakeText {
    private static final int SHOWN = 20;

    private IntakeText() {}

    /** @param all whether long lists stand in full, row by row */
    public static List<String> lines(EquipmentList list, boolean all, Paint paint) {
        List<List<String>> sections = new ArrayList<>();
        sections.add(new Section(paint, "Equipment list").text(counts(list)).lines());
        part(list, "problem", new Section(paint, "Rows that cannot be taken over"), all, sections);
        part(list, "outside", new Section(paint, "Outside this project: life safety, fed by others"), all, sections);
        part(list, "left-out", new Section(paint, "Left out"), all, sections);
        part(list, "question", new Section(paint, "Questions that somebody has to answer"), all, sections);
        quantities(list, paint).ifPresent(sections::add);
        Section guessed = new Section(paint, "Guessed, to be confirmed");
        list.project()
                .flatMap(GuessedField::counted)
                .ifPresent(count ->
                        guessed.text(count + ", each named in its load's 'guessed' and counted on every cover."));
        part(list, "guess", guessed, all, sections);
        part(list, "not-read", new Section(paint, "Columns that were not read"), all, sections);
        sections.add(CautionText.lines(Cautions.ALL, paint));
        return Sections.joined(sections);
    }

    /** Numbers that the list does not say exactly; where several pieces share a breaker, counted in breakers. */
    private static Optional<List<String>> quantities(EquipmentList list, Paint paint) {
        Section section = new Section(paint, "Quantities that are open, drawn by compare --draws");
        List<QuantityRange> open = list.project().map(Project::quantities).orElse(List.of());
        open.forEach(each -> section.item(
                each.stated()
                        ? each.name() + ": " + each.low() + " to " + each.high() + ", likely " + each.tip() + ", "
                                + each.listed() + " in the project"
                        : each.name() + ": nobody has said how many, " + each.listed() + " in the project"));
        return open.isEmpty() ? Optional.empty() : Optional.of(section.lines());
    }

    private static String counts(EquipmentList list) {
        String leftOut = list.leftOut() == 0
                ? "."
                : "; " + Phrase.counted(list.leftOut(), "piece") + " of " + list.listed() + " left out, listed below.";
        return Phrase.counted(list.pieces(), "piece") + " in " + Phrase.counted(list.rows(), "row") + " on "
                + Phrase.counted(list.breakers(), "breaker") + leftOut;
    }

    private static void part(
            EquipmentList list, String kind, Section section, boolean all, List<List<String>> sections) {
        List<Finding> findings = list.findings(kind);
        if (findings.isEmpty()) {
            return;
        }
        List<String> entries =
                all ? findings.stream().map(Finding::message).distinct().toList() : FoldedNotices.of(findings);
        entries.stream().limit(all ? Long.MAX_VALUE : SHOWN).forEach(section::item);
        if (!all && entries.size() > SHOWN) {
            section.item("and " + (entries.size() - SHOWN) + " more; --all shows them");
        } else if (!all && entries.stream().anyMatch(entry -> entry.matches("(?s)[0-9]+ × .*"))) {
            section.item("--all shows each row");
        }
        sections.add(section.lines());
    }
}
