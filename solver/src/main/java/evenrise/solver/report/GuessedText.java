package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Project;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What a project guesses, for a screen: which field of which loads, and with which value. */
public final class GuessedText {
    private static final int LOADS = 6;

    private GuessedText() {}

    /** @param all whether every load is named */
    public static List<String> lines(Project project, boolean all, Paint paint) {
        Section section = new Section(paint, "Guessed in " + DisplayWidth.cut(project.name(), 60));
        List<GuessedField> guessed = GuessedField.of(project);
        if (guessed.isEmpty()) {
            return section.text("No load says that anything of it was guessed.").lines();
        }
        section.text(GuessedField.counted(project).orElseThrow()
                + ". Confirm each by a datasheet or on site, then take it out of the load's list 'guessed'.");
        Map<String, Map<String, List<String>>> loads = guessed.stream()
                .collect(Collectors.groupingBy(
                        GuessedField::field,
                        TreeMap::new,
                        Collectors.groupingBy(
                                GuessedField::value,
                                TreeMap::new,
                                Collectors.mapping(GuessedField::load, Collectors.toList()))));
        loads.forEach((field, values) -> {
            section.text(field);
            values.forEach((value, which) -> section.item((value.isEmpty() ? "none" : value) + ": "
                    + Phrase.counted(which.size(), "load") + " (" + named(which, all ? which.size() : LOADS) + ")"));
        });
        return section.lines();
    }

    private static String named(List<String> loads, int most) {
        String shown = loads.stream().limit(most).collect(Collectors.joining(", "));
        return loads.size() > most ? shown + " and " + (loads.size() - most) + " more" : shown;
    }
}
