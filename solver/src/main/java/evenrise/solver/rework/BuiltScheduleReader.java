package evenrise.solver.rework;

import evenrise.model.check.Nearest;
import evenrise.model.contract.Phrase;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.rules.ProjectIndex;
import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;

/**
 * Makes a plan as built of the rows of a panel schedule: slot, load, breaker; outputs and settings of boards where it has
 * them. A load may stand in one row with all its slots, or in a row a pole.
 */
public final class BuiltScheduleReader {
    private static final int MOST_NAMED = 12;

    private final Project project;
    private final ProjectIndex index;
    private final Map<String, String> byBareName = new LinkedHashMap<>();
    private final Map<String, List<BuiltScheduleRow>> byLoad = new LinkedHashMap<>();
    private final List<BuiltScheduleRow> spares = new ArrayList<>();
    private final Map<String, BoardSetting> settings = new LinkedHashMap<>();
    private final List<String> problems = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();

    private BuiltScheduleReader(Project project) {
        this.project = project;
        this.index = new ProjectIndex(project);
        project.loads().forEach(load -> byBareName.put(bare(load.name()), load.id()));
        project.loads().forEach(load -> byBareName.put(bare(load.id()), load.id()));
    }

    /** @param tables the sheets; one without a column for the panel is of the panel that it is named after */
    public static BuiltSchedule read(List<ReadTable> tables, Project project) {
        BuiltScheduleReader it = new BuiltScheduleReader(project);
        BuiltScheduleRows rows = BuiltScheduleRows.of(tables);
        it.problems.addAll(rows.problems());
        rows.rows().forEach(it::take);
        return it.schedule();
    }

    private static String bare(String words) {
        return words.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]", "");
    }

    private void take(BuiltScheduleRow row) {
        if (row.isSpare()) {
            if (SpareRows.isBreaker(row)) {
                spares.add(row);
            }
            return;
        }
        Optional<Panel> panel = index.panel(row.panel());
        if (panel.isEmpty()) {
            Set<String> known =
                    project.panels().stream().map(Panel::id).collect(Collectors.toCollection(LinkedHashSet::new));
            problems.add(row.place() + "the project has no panel " + Phrase.quoted(row.panel()) + ". "
                    + Nearest.cure(row.panel(), known, "Name its panels as the project does."));
            return;
        }
        String id = Optional.ofNullable(byBareName.get(bare(row.load()))).orElse(row.load());
        byLoad.computeIfAbsent(id, any -> new ArrayList<>()).add(row);
    }

    private BuiltSchedule schedule() {
        List<Assignment> seats = new ArrayList<>();
        Map<String, Double> ratings = new LinkedHashMap<>();
        byLoad.forEach((id, rows) -> seat(id, rows).ifPresent(seats::add));
        SpareRows spare = SpareRows.of(spares, index);
        problems.addAll(spare.problems());
        byLoad.forEach((id, rows) -> rating(id, rows).ifPresent(amps -> ratings.put(id, amps)));
        boolean statesControl = statesControl(seats);
        if (problems.isEmpty() && seats.isEmpty()) {
            problems.add("the schedule feeds no load. Its first row names the columns: panel, slot, load, breaker.");
        }
        said(seats, ratings, statesControl);
        Plan plan = Plan.builder()
                .boards(statesControl ? List.copyOf(settings.values()) : List.of())
                .assignments(seats)
                .build();
        BuiltSchedule read = new BuiltSchedule(plan, ratings, statesControl, problems, notes, spare.spares());
        return new BuiltSchedule(read.judged(plan), ratings, statesControl, problems, notes, spare.spares());
    }

    private Optional<Assignment> seat(String id, List<BuiltScheduleRow> rows) {
        BuiltScheduleRow first = rows.get(0);
        Set<String> panels = rows.stream().map(BuiltScheduleRow::panel).collect(Collectors.toCollection(TreeSet::new));
        if (panels.size() > 1) {
            problems.add(first.place() + "load " + Phrase.quoted(id) + " stands in panels " + String.join(", ", panels)
                    + ". A load has one breaker: name those of others otherwise.");
            return Optional.empty();
        }
        Panel panel = index.panel(first.panel()).orElseThrow();
        TreeSet<Integer> slots = new TreeSet<>();
        for (BuiltScheduleRow row : rows) {
            slots.addAll(row.slotNumbers());
        }
        if (slots.isEmpty()) {
            problems.add(first.place() + "slot " + Phrase.quoted(first.slots())
                    + " is no number. Give the slot of each pole, such as 5 or 5, 7, 9.");
            return Optional.empty();
        }
        int poles = slots.size() > 1
                ? slots.size()
                : first.poles().orElse(index.load(id).map(Load::poles).orElse(1));
        List<Integer> span = poles > 3 ? List.of() : index.slotsOf(panel).span(slots.first(), poles);
        if (span.isEmpty() || slots.size() > 1 && !span.equals(List.copyOf(slots))) {
            problems.add(first.place() + "slots " + slots + " of panel " + panel.id()
                    + " are no place for one breaker of load " + Phrase.quoted(id)
                    + (span.isEmpty() ? "." : ": from slot " + slots.first() + " it would take " + span + ".")
                    + " Maybe two loads have the same name.");
            return Optional.empty();
        }
        if (index.load(id).isEmpty()) {
            Optional<String> meant = Nearest.to(
                    id,
                    project.loads().stream()
                            .map(Load::id)
                            .filter(each -> !byLoad.containsKey(each))
                            .toList());
            if (meant.isPresent()) {
                problems.add(first.place() + "the project has no load " + Phrase.quoted(id) + ". Maybe it is "
                        + Phrase.quoted(meant.get()) + "; name it otherwise if it is gone.");
                return Optional.empty();
            }
        }
        var seat = Assignment.builder()
                .load(id)
                .panel(panel.id())
                .slot(slots.first())
                .phases(span.stream().map(index.slotsOf(panel)::phase).toList());
        lead(rows).ifPresent(lead -> seat.board(Optional.of(lead.board())).output(OptionalInt.of(lead.output())));
        return Optional.of(seat.build());
    }

    private Optional<BuiltScheduleRow.Lead> lead(List<BuiltScheduleRow> rows) {
        List<BuiltScheduleRow.Lead> leads = new ArrayList<>();
        for (BuiltScheduleRow row : rows) {
            row.lead().ifPresent(leads::add);
            if (row.lead().isEmpty() && row.saysControl()) {
                problems.add(row.place() + "control " + Phrase.quoted(row.control())
                        + " names no output. Write it as B1 output 3.");
            }
        }
        Optional<BuiltScheduleRow.Lead> lead = leads.stream().findFirst();
        lead.filter(it -> index.board(it.board()).isEmpty())
                .ifPresent(it -> problems.add(rows.get(0).place() + "the project has no board "
                        + Phrase.quoted(it.board()) + ". Name its boards as the project does."));
        rows.forEach(row -> row.setting().ifPresent(setting -> settings.putIfAbsent(setting.id(), setting)));
        return lead.filter(it -> index.board(it.board()).isPresent());
    }

    /** Where it is another than the project's. */
    private Optional<Double> rating(String id, List<BuiltScheduleRow> rows) {
        return rows.stream()
                .flatMap(row -> row.breakerAmps().stream())
                .findFirst()
                .filter(amps -> index.load(id)
                        .filter(load -> Math.abs(load.breakerAmps() - amps) > 1e-6)
                        .isPresent());
    }

    /** Whether every switched load has an output, and every board used that can be set in several ways a setting. */
    private boolean statesControl(List<Assignment> seats) {
        boolean isLedAll = seats.stream()
                .filter(seat -> index.load(seat.load())
                        .filter(load -> load.switched() && load.comesWith().isEmpty())
                        .isPresent())
                .allMatch(seat -> seat.board().isPresent());
        boolean isSetAll = seats.stream()
                .flatMap(seat -> seat.board().stream())
                .distinct()
                .map(index::board)
                .flatMap(Optional::stream)
                .allMatch(board -> settings.containsKey(board.id()) || isSetOneWay(board));
        return isLedAll && isSetAll;
    }

    private boolean isSetOneWay(Board board) {
        BoardType type = index.typeOf(board);
        return !type.isTimedByOutput()
                && type.startDelaySeconds().size() == 1
                && type.stepSeconds().size() == 1;
    }

    private void said(List<Assignment> seats, Map<String, Double> ratings, boolean statesControl) {
        notes.add(seats.size() + " breakers of the schedule feed loads"
                + (spares.isEmpty()
                        ? "."
                        : "; spare: "
                                + named(spares.stream()
                                        .map(row -> row.panel() + " " + row.slots())
                                        .toList())
                                + "."));
        if (!ratings.isEmpty()) {
            notes.add("Of another rating on the schedule than in the project: " + named(List.copyOf(ratings.keySet()))
                    + ".");
        }
        if (!statesControl) {
            notes.add(BuiltSchedule.WITHOUT_CONTROL);
        }
        List<String> missing = project.loads().stream()
                .map(Load::id)
                .filter(id -> seats.stream().map(Assignment::load).noneMatch(it -> Objects.equals(it, id)))
                .toList();
        if (!missing.isEmpty()) {
            notes.add("Not on the schedule, so taken for new: " + named(missing) + ".");
        }
    }

    private static String named(List<String> ids) {
        return Phrase.quoted(ids, MOST_NAMED);
    }
}
