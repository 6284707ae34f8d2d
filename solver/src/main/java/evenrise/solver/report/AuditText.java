package evenrise.solver.report;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.List;

/** An audit for a screen. */
public final class AuditText {
    private static final int LOADS_AT_THE_PEAK = 15;
    private static final int PLACES_A_RULE = 10;
    private static final int NODES = 40;
    private static final int LOADS_BY_NAME = 15;

    private AuditText() {}

    /** @param all whether long lists stand in full */
    public static List<String> lines(Evaluation evaluation, AuditFile sheet, boolean all, Paint paint) {
        Project project = evaluation.project();
        List<List<String>> sections = new ArrayList<>();
        sections.add(AssessmentText.lines(sheet.assessment(), paint));
        sections.add(title(evaluation, sheet, paint));
        if (!sheet.defaults().isEmpty()) {
            sections.add(DefaultsText.lines(sheet.defaults(), all, paint));
        }
        sections.add(
                all
                        ? BrokenRules.all(sheet.violations(), paint)
                        : BrokenRules.folded(sheet.violations(), project, PLACES_A_RULE, paint));
        sections.add(KeyFigures.lines(evaluation, all ? Integer.MAX_VALUE : LOADS_BY_NAME, paint));
        if (!sheet.differences().isEmpty()) {
            sections.add(differences(sheet.differences(), paint));
        }
        if (!sheet.notFollowed().isEmpty()) {
            Section section = new Section(paint, "Stated as proven, and not proven here");
            sheet.notFollowed().forEach(section::item);
            sections.add(section.lines());
        }
        sections.addAll(PlantText.sections(evaluation.layout(), all ? Integer.MAX_VALUE : NODES, paint));
        sections.add(NodeText.lines(sheet.nodes(), !project.scenes().isEmpty(), sheet.peakBasis(), paint));
        sections.add(EventTable.lines(project, sheet.nodes(), sheet.eventPeaks(), sheet.peakBasis(), paint));
        sections.add(BoardTable.lines(sheet.boards(), paint));
        if (!sheet.groups().isEmpty()) {
            sections.add(GroupTable.lines(sheet.groups(), paint));
        }
        sections.add(PeakTable.lines(
                sheet.metrics(), sheet.peakShares(), all ? Integer.MAX_VALUE : LOADS_AT_THE_PEAK, paint));
        sections.add(
                all
                        ? ReviewText.all(sheet.review(), paint)
                        : ReviewText.folded(sheet.review(), project, PLACES_A_RULE, paint));
        sections.add(CautionText.lines(sheet.cautions(), paint));
        return Sections.joined(sections);
    }

    private static List<String> title(Evaluation evaluation, AuditFile sheet, Paint paint) {
        Section title = new Section(paint, "Audit of a plan for " + DisplayWidth.cut(sheet.project(), 60));
        if (sheet.projectChanged().isEmpty()) {
            title.text("The plan does not say which project file it was made from.");
        } else if (sheet.projectChanged().get()) {
            title.text(
                    Tone.BAD,
                    "The project file is not the one the plan was made from: it has changed since, or the plan belongs "
                            + "to another. What follows holds for the project file at hand.");
        } else {
            title.text("The project file is the one the plan was made from.");
        }
        MovedText.of(evaluation).ifPresent(title::text);
        GuessedField.counted(evaluation.project())
                .ifPresent(count -> title.text("Guessed: " + count + "; 'evenrise audit --guessed' lists them."));
        return title.lines();
    }

    private static List<String> differences(List<StatedFigure> differences, Paint paint) {
        Table table = new Table().words("Figure").number("In the plan file").number("Recomputed");
        differences.forEach(each -> table.row(
                Tone.BAD, each.figure(), StatedFigure.text(each.stated()), StatedFigure.text(each.recomputed())));
        return new Section(paint, "Figures in the plan file that do not follow from its assignments")
                .table(table)
                .text("The plan was edited, or the project has changed since. The recomputed figures hold.")
                .lines();
    }
}
