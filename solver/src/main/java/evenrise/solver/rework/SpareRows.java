package evenrise.solver.rework;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.TripCurve;
import evenrise.model.rules.ProjectIndex;
import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;

/**
 * Breakers of a panel schedule that feed nobody: rows with a breaker, and no load or a word for none.
 *
 * @param problems rows that cannot be used
 */
public record SpareRows(List<SpareBreaker> spares, List<String> problems) {
    public SpareRows {
        spares = List.copyOf(spares);
        problems = List.copyOf(problems);
    }

    /** The spare rows of a schedule, whatever the others say. */
    public static SpareRows read(List<ReadTable> tables, Project project) {
        BuiltScheduleRows rows = BuiltScheduleRows.of(tables);
        List<BuiltScheduleRow> spare =
                rows.rows().stream().filter(SpareRows::isBreaker).toList();
        SpareRows found = of(spare, new ProjectIndex(project));
        List<String> problems = new ArrayList<>(rows.problems());
        problems.addAll(found.problems);
        return new SpareRows(found.spares, problems);
    }

    static boolean isBreaker(BuiltScheduleRow row) {
        return row.isSpare() && !row.breaker().isEmpty();
    }

    static SpareRows of(List<BuiltScheduleRow> rows, ProjectIndex index) {
        List<SpareBreaker> spares = new ArrayList<>();
        List<String> problems = new ArrayList<>();
        for (BuiltScheduleRow row : rows) {
            Optional<Panel> panel = index.panel(row.panel());
            TreeSet<Integer> slots = new TreeSet<>(row.slotNumbers());
            int poles = slots.size() > 1 ? slots.size() : row.poles().orElse(1);
            List<Integer> span = panel.isEmpty() || slots.isEmpty() || poles > 3
                    ? List.of()
                    : index.slotsOf(panel.get()).span(slots.first(), poles);
            if (span.isEmpty() || slots.size() > 1 && !span.equals(List.copyOf(slots))) {
                problems.add(row.place() + "a spare breaker in " + Phrase.quoted(row.panel() + " " + row.slots())
                        + " has no place there. Name a panel of the project, and the slot of each pole.");
            } else {
                spares.add(new SpareBreaker(row.panel(), slots.first(), poles, row.amps(), curve(row), false));
            }
        }
        return new SpareRows(spares, problems);
    }

    private static Optional<TripCurve> curve(BuiltScheduleRow row) {
        String letter = row.breaker().toUpperCase(Locale.ROOT).replaceAll("^(?:.*[^A-Z0-9])?([BCD])\\s?\\d.*$", "$1");
        return List.of("B", "C", "D").contains(letter) ? Optional.of(TripCurve.valueOf(letter)) : Optional.empty();
    }
}
