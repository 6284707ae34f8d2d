package evenrise.solver.rework;

import evenrise.model.check.Nearest;
import evenrise.model.plan.Plan;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import evenrise.solver.table.Amount;
import evenrise.solver.table.HeaderWords;
import evenrise.solver.table.ReadTable;
import evenrise.solver.table.TextTable;
import java.io.IOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * Reads what a clamp meter or a logger gave: a table (RFC 4180, or with semicolons or tabs) with a row a load and phase.
 * Columns may stand in any order and be called by several names; others are left alone. Reports every bad row in one pass.
 */
public final class MeasuredCsv {
    static final double MOST_AMPS = 6300;

    /** No meter reads less; what is nearer to 0 is a slip. */
    private static final double LEAST_AMPS = 1e-6;

    /** No list of readings is longer; bounds the memory that a hostile file takes. */
    private static final int MOST_CELLS = 2_000_000;

    /** What stands in brackets behind a current and is no unit. */
    private static final Set<String> QUALITIES = Set.of("ac", "rms", "eff");

    /** After so many problems the rest of the table is not looked at: it would say nothing new. */
    private static final int MOST_PROBLEMS = 200;

    private final Project project;
    private final Map<String, Load> loads = new LinkedHashMap<>();
    /** Ids by what is left of an id or a name without signs. */
    private final Map<String, String> byBareId = new HashMap<>();

    private final Map<String, String> byBareName = new HashMap<>();
    private final Map<String, List<Phase>> phases = new HashMap<>();
    private final Map<MeasuredColumn, Integer> columns = new EnumMap<>(MeasuredColumn.class);
    private final Map<String, Measured.Current> currents = new LinkedHashMap<>();
    private final Map<String, Set<Phase>> read = new LinkedHashMap<>();
    private final Map<String, List<ReadingWarnings.Row>> rows = new LinkedHashMap<>();
    private final List<String> problems = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private final Map<MeasuredColumn, String> units = new EnumMap<>(MeasuredColumn.class);
    private boolean hasDecimalComma;
    private char delimiter;

    private MeasuredCsv(Project project, Plan built) {
        this.project = project;
        for (Load load : project.loads()) {
            loads.put(load.id(), load);
            byBareId.putIfAbsent(bare(load.id()), load.id());
            byBareName.putIfAbsent(bare(load.name()), load.id());
        }
        for (Placement each : Layout.of(project, built).placements()) {
            phases.put(each.id(), each.phases());
        }
    }

    /**
     * Reads a whole file.
     *
     * @param built tells on which phases each load is
     */
    public static Measured read(String text, Project project, Plan built) {
        MeasuredCsv it = new MeasuredCsv(project, built);
        it.read(TextTable.bare(text));
        return new Measured(it.currents, it.problems, it.notes);
    }

    private void read(String text) {
        try {
            TextTable read = TextTable.of(text, MOST_CELLS);
            delimiter = read.delimiter();
            read(read.table());
        } catch (IOException e) {
            problems.add(e.getMessage() + ". Save the readings as CSV, a row a line.");
        }
        if (columns.isEmpty() && problems.isEmpty()) {
            problems.add(
                    "line 1: the table is empty. Its first row names the columns: load, phase, running_a, idle_a.");
        } else if (problems.isEmpty() && currents.isEmpty()) {
            problems.add("the table has no readings below its header. Add a row a load and phase.");
        }
        read.forEach((load, measured) -> {
            int touched = phases.getOrDefault(load, List.of()).size();
            if (measured.size() < touched && !measured.isEmpty()) {
                notes.add("load '" + load + "' was read on " + measured.size() + " of its " + touched
                        + " phases; the greatest reading counts for all.");
            }
        });
        notes.addAll(0, ReadingWarnings.of(loads, rows));
    }

    private void read(ReadTable table) {
        for (ReadTable.Row row : table.rows()) {
            if (columns.isEmpty()) {
                header(row);
                if (!problems.isEmpty()) {
                    return;
                }
                hasDecimalComma = table.hasDecimalComma(Stream.of(MeasuredColumn.RUNNING, MeasuredColumn.IDLE)
                        .map(columns::get)
                        .filter(Objects::nonNull)
                        .toList());
            } else {
                row(row);
            }
            if (problems.size() >= MOST_PROBLEMS) {
                problems.add("after line " + row.number()
                        + ": the rest was not looked at. Maybe cure the first ones first.");
                return;
            }
        }
    }

    private void header(ReadTable.Row row) {
        String place = "line " + row.number() + ": ";
        for (int i = 0; i < row.cells().size(); i++) {
            String header = row.cell(i).text();
            for (MeasuredColumn column : MeasuredColumn.values()) {
                if (column.isHeadedBy(header) && columns.putIfAbsent(column, i) != null) {
                    problems.add(
                            place + "column '" + header + "' means the same as an earlier one. Keep one of the two.");
                } else if (column.isHeadedBy(header)) {
                    units.put(
                            column,
                            HeaderWords.unit(header)
                                    .filter(unit -> !QUALITIES.contains(unit))
                                    .orElse("a"));
                }
            }
        }
        for (MeasuredColumn column : MeasuredColumn.values()) {
            if (column.isNeeded() && !columns.containsKey(column)) {
                problems.add(place + "no column says which load a row is about. Name it 'load'; it may be called "
                        + String.join(", ", column.names()) + ".");
            }
        }
        if (!columns.containsKey(MeasuredColumn.RUNNING) && !columns.containsKey(MeasuredColumn.IDLE)) {
            problems.add(place + "no column has currents. Name them 'running_a' and 'idle_a'; they may be called "
                    + String.join(", ", MeasuredColumn.RUNNING.names()) + ", and "
                    + String.join(", ", MeasuredColumn.IDLE.names())
                    + ".");
        }
    }

    private String cell(ReadTable.Row row, MeasuredColumn column) {
        Integer at = columns.get(column);
        return at == null ? "" : row.cell(at).text();
    }

    private void row(ReadTable.Row row) {
        int before = problems.size();
        String id = cell(row, MeasuredColumn.LOAD);
        String place = "line " + row.number() + ": ";
        Load load = loads.get(id);
        if (load == null) {
            problems.add(place + "load '" + id + "' is not in the project." + closest(id));
            return;
        }
        Optional<Phase> phase = phase(row, load, place);
        OptionalDouble running = amps(row, MeasuredColumn.RUNNING, load, place);
        OptionalDouble idle = amps(row, MeasuredColumn.IDLE, load, place);
        if (problems.size() > before) {
            return;
        }
        if (running.isEmpty() && idle.isEmpty()) {
            problems.add(place + "load '" + id + "' has no reading. Fill in running_a or idle_a, or delete the row.");
        } else if (running.isPresent() && idle.isPresent() && idle.getAsDouble() > running.getAsDouble()) {
            problems.add(place + "load '" + id + "' draws more idle (" + idle.getAsDouble() + " A) than running ("
                    + running.getAsDouble() + " A). Maybe the two columns are exchanged.");
        } else {
            keep(load, phase, running, idle, row.number());
        }
    }

    private String closest(String id) {
        String bare = bare(id);
        return Optional.ofNullable(byBareId.get(bare))
                .or(() -> Optional.ofNullable(byBareName.get(bare)))
                .or(() -> Nearest.to(id, loads.keySet()))
                .map(found -> " Maybe it is '" + found + "'.")
                .orElse(" Give the load's id as in the project, or delete the row.");
    }

    private static String bare(String id) {
        return id.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]", "");
    }

    private Optional<Phase> phase(ReadTable.Row row, Load load, String place) {
        String word = cell(row, MeasuredColumn.PHASE).toUpperCase(Locale.ROOT).replaceFirst("^L(?=[1-3]$)", "");
        if (word.isEmpty()) {
            return Optional.empty();
        }
        List<Phase> all = project.supply().system().phases();
        Optional<Phase> found = all.stream()
                .filter(each -> each.name().equals(word) || word.equals(Integer.toString(all.indexOf(each) + 1)))
                .findFirst();
        String allowed = all.stream().map(Phase::name).collect(Collectors.joining(", "));
        if (found.isEmpty()) {
            problems.add(place + "phase '" + cell(row, MeasuredColumn.PHASE) + "' of load '" + load.id()
                    + "' is none of the supply's: " + allowed + " (or 1 to " + all.size() + ").");
        } else if (phases.containsKey(load.id())
                && !phases.get(load.id()).isEmpty()
                && !phases.get(load.id()).contains(found.get())) {
            problems.add(place + "load '" + load.id() + "' is not on phase " + found.get() + " but on "
                    + phases.get(load.id()).stream().map(Phase::name).collect(Collectors.joining(", "))
                    + " in the plan as built. Check which conductor was read, or correct the plan.");
        }
        return found;
    }

    private OptionalDouble amps(ReadTable.Row row, MeasuredColumn column, Load load, String place) {
        String word = cell(row, column);
        if (word.isEmpty()) {
            return OptionalDouble.empty();
        }
        String name = column.names().get(0);
        Optional<Double> read = amps(word, units.get(column));
        if (read.isEmpty()) {
            problems.add(place + name + " of load '" + load.id() + "' is '" + word
                    + "', expected a number of ampere such as 12.4.");
            return OptionalDouble.empty();
        }
        double amps = read.get();
        if (!(amps == 0 || amps >= LEAST_AMPS && amps <= MOST_AMPS)) {
            problems.add(place + name + " of load '" + load.id() + "' is " + word + ", expected 0 to " + (int) MOST_AMPS
                    + " A. Maybe it is in milliampere, or the clamp was the wrong way round.");
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(amps);
    }

    /** Empty for what is no current, and for what can be read in two ways: a thousand times too much harms as too little. */
    private Optional<Double> amps(String word, String headerUnit) {
        boolean isLoneComma = word.contains(",") && !word.contains(".");
        if (isLoneComma && delimiter == ',' && !hasDecimalComma || hasDecimalComma && word.matches("[^,]*\\.[^,]*")) {
            return Optional.empty();
        }
        return Amount.of(word, isLoneComma || hasDecimalComma)
                .flatMap(amount -> Amount.scale(amount.unit().isEmpty() ? headerUnit : amount.unit(), "a")
                        .map(scale -> scale * amount.value()));
    }

    private void keep(Load load, Optional<Phase> phase, OptionalDouble running, OptionalDouble idle, long line) {
        Set<Phase> seen = read.computeIfAbsent(load.id(), any -> new LinkedHashSet<>());
        if (phase.isPresent() && !seen.add(phase.get())) {
            notes.add("line " + line + ": load '" + load.id() + "' was read on phase " + phase.get()
                    + " before; the greater reading counts.");
        }
        running.ifPresent(amps -> rows.computeIfAbsent(load.id(), any -> new ArrayList<>())
                .add(new ReadingWarnings.Row("line " + line, amps)));
        currents.merge(
                load.id(),
                new Measured.Current(running, idle),
                (one, other) -> new Measured.Current(
                        greater(one.runningAmps(), other.runningAmps()), greater(one.idleAmps(), other.idleAmps())));
    }

    private static OptionalDouble greater(OptionalDouble one, OptionalDouble other) {
        if (one.isEmpty() || other.isEmpty()) {
            return one.isEmpty() ? other : one;
        }
        return OptionalDouble.of(Math.max(one.getAsDouble(), other.getAsDouble()));
    }
}
