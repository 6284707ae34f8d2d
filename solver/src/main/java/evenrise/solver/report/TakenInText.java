package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Cautions;
import java.util.List;

/** What edited tables change in a project, for a screen: every row of it. */
public final class TakenInText {
    private TakenInText() {}

    /** @param changes a sentence each */
    public static List<String> lines(String project, List<String> changes, Paint paint) {
        Section section = new Section(paint, "Changes to " + DisplayWidth.cut(project, 60));
        if (changes.isEmpty()) {
            section.text("None: the tables say what the project says.");
        } else {
            section.text(Phrase.counted(changes.size(), "row") + (changes.size() == 1 ? " is" : " are") + " another:");
        }
        changes.forEach(section::item);
        return Sections.joined(List.of(section.lines(), CautionText.lines(Cautions.ALL, paint)));
    }
}
