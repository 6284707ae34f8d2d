package evenrise.solver.rework;

import evenrise.model.plan.Cautions;
import evenrise.model.plan.Plan;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/**
 * Reads what a clamp meter or a logger gave: a table (RFC 4180, or with semicolons or tabs) with a row a load and phase.
 * Columns may stand in any order and be called by several names; others are left alone. Reports every bad row in one pass.
 */
public final class MeasuredCsv {
    private static final double MOST_AMPS = 6300;

    /** No meter reads less; what is nearer to 0 is a slip. */
    private static final double LEAST_AMPS = 1e-6;

    /** After so many problems the rest of the table is not looked at: it would say nothing new. */
    private static final int MOST_PROBLEMS = 200;

    /** What a column says; it may be called by any of its names, the first of which is the one that we write. */
    public enum Column {
        LOAD(true, "Load, by its id in the project", "load", "load_id", "id", "circuit", "breaker"),
        PHASE(false, "Phase that was read: its letter, or its number from 1", "phase", "line", "leg", "conductor"),
        RUNNING(
                false,
                "Rms line current at full design use, in ampere",
                "running_a",
                "running",
                "running_current",
                "current_a",
                "current",
                "amps",
                "amp",
                "measured_a",
                "full_a"),
        IDLE(
                false,
                "Rms line current right after power-up, before the show, in ampere",
                "idle_a",
                "idle",
                "idle_current",
                "standby_a",
                "standby",
                "quiescent_a");

        private final boolean isNeeded;
        private final String meaning;
        private final List<String> names;

        Column(boolean isNeeded, String meaning, String... names) {
            this.isNeeded = isNeeded;
            this.meaning = meaning;
            this.names = List.of(names);
        }

        /** Whether every row has to say it. */
        public boolean isNeeded() {
            return isNeeded;
        }

        public String meaning() {
            return meaning;
        }

        /** Without regard to case, units in brackets, and what joins words. */
        public List<String> names() {
            return names;
        }

        /** The most that may stand in it; empty where it is no number. */
        public OptionalDouble mostAmps() {
            return this == RUNNING || this == IDLE ? OptionalDouble.of(MOST_AMPS) : OptionalDouble.empty();
        }
    }

    private final Project project;
    private final Map<String, Load> loads = new LinkedHashMap<>();
    /** Ids by what is left of an id or a name without signs. */
    private final Map<String, String> byBareId = new HashMap<>();

    private final Map<String, String> byBareName = new HashMap<>();
    private final Map<String, List<Phase>> phases = new HashMap<>();
    private final Map<Column, Integer> columns = new EnumMap<>(Column.class);
    private final Map<String, Measured.Current> currents = new LinkedHashMap<>();
    private final Map<String, Set<Phase>> read = new LinkedHashMap<>();
    private final Map<String, List<ReadingWarnings.Row>> rows = new LinkedHashMap<>();
    private final List<String> problems = new ArrayList<>();
    private final List<String> notes = new ArrayList<>();
    private boolean hasDecimalComma;

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
        it.read((text.startsWith("\ufeff") ? text.substring(1) : text) + "\n"); // its last line is one, too
        return new Measured(it.currents, it.problems, it.notes);
    }

    private void read(String text) {
        String head = text.lines().findFirst().orElse("");
        char delimiter = head.contains(";") ? ';' : head.contains("\t") ? '\t' : ',';
        hasDecimalComma = delimiter != ',';
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setDelimiter(delimiter)
                .setIgnoreSurroundingSpaces(true)
                .setIgnoreEmptyLines(true)
                .get();
        long line = 1;
        try (CSVParser parser = CSVParser.parse(text, format)) {
            for (CSVRecord record : parser) {
                // The parser stands at the end of the record, which in these tables is its only line.
                line = parser.getCurrentLineNumber();
                if (Cautions.isComment(record.get(0))) {
                    continue;
                }
                if (record.getRecordNumber() == 1) {
                    header(record);
                    if (!problems.isEmpty()) {
                        return;
                    }
                } else {
                    row(record, line);
                }
                if (problems.size() >= MOST_PROBLEMS) {
                    problems.add(
                            "after line " + line + ": the rest was not looked at. Maybe cure the first ones first.");
                    return;
                }
            }
        } catch (IOException | UncheckedIOException | IllegalStateException e) {
            problems.add("after line " + line + ": this is no table. Maybe a quote is not closed, or text follows a"
                    + " closing one. Save the readings as CSV, a row a line.");
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

    private void header(CSVRecord record) {
        for (int i = 0; i < record.size(); i++) {
            String word = record.get(i)
                    .toLowerCase(Locale.ROOT)
                    .replaceAll("[(\\[][^(\\[)\\]]*+[)\\]]", "")
                    .strip()
                    .replaceAll("[\\s.-]+", "_");
            for (Column column : Column.values()) {
                if (column.names.contains(word) && columns.putIfAbsent(column, i) != null) {
                    problems.add("line 1: column '" + record.get(i)
                            + "' means the same as an earlier one. Keep one of the" + " two.");
                }
            }
        }
        for (Column column : Column.values()) {
            if (column.isNeeded && !columns.containsKey(column)) {
                problems.add("line 1: no column says which load a row is about. Name it 'load'; it may be called "
                        + String.join(", ", column.names) + ".");
            }
        }
        if (!columns.containsKey(Column.RUNNING) && !columns.containsKey(Column.IDLE)) {
            problems.add("line 1: no column has currents. Name them 'running_a' and 'idle_a'; they may be called "
                    + String.join(", ", Column.RUNNING.names) + ", and " + String.join(", ", Column.IDLE.names)
                    + ".");
        }
    }

    private String cell(CSVRecord record, Column column) {
        Integer at = columns.get(column);
        return at == null || at >= record.size() ? "" : record.get(at).strip();
    }

    private void row(CSVRecord record, long line) {
        int before = problems.size();
        String id = cell(record, Column.LOAD);
        String place = "line " + line + ": ";
        Load load = loads.get(id);
        if (load == null) {
            problems.add(place + "load '" + id + "' is not in the project." + closest(id));
            return;
        }
        Optional<Phase> phase = phase(record, load, place);
        OptionalDouble running = amps(record, Column.RUNNING, load, place);
        OptionalDouble idle = amps(record, Column.IDLE, load, place);
        if (problems.size() > before) {
            return;
        }
        if (running.isEmpty() && idle.isEmpty()) {
            problems.add(place + "load '" + id + "' has no reading. Fill in running_a or idle_a, or delete the row.");
        } else if (running.isPresent() && idle.isPresent() && idle.getAsDouble() > running.getAsDouble()) {
            problems.add(place + "load '" + id + "' draws more idle (" + idle.getAsDouble() + " A) than running ("
                    + running.getAsDouble() + " A). Maybe the two columns are exchanged.");
        } else {
            keep(load, phase, running, idle, line);
        }
    }

    private String closest(String id) {
        String bare = bare(id);
        return Optional.ofNullable(byBareId.get(bare))
                .or(() -> Optional.ofNullable(byBareName.get(bare)))
                .map(found -> " Maybe it is '" + found + "'.")
                .orElse(" Give the load's id as in the project, or delete the row.");
    }

    private static String bare(String id) {
        return id.toLowerCase(Locale.ROOT).replaceAll("[^\\p{L}\\p{N}]", "");
    }

    private Optional<Phase> phase(CSVRecord record, Load load, String place) {
        String word = cell(record, Column.PHASE).toUpperCase(Locale.ROOT).replaceFirst("^L(?=[1-3]$)", "");
        if (word.isEmpty()) {
            return Optional.empty();
        }
        List<Phase> all = project.supply().system().phases();
        Optional<Phase> found = all.stream()
                .filter(each -> each.name().equals(word) || word.equals(Integer.toString(all.indexOf(each) + 1)))
                .findFirst();
        String allowed = all.stream().map(Phase::name).collect(Collectors.joining(", "));
        if (found.isEmpty()) {
            problems.add(place + "phase '" + cell(record, Column.PHASE) + "' of load '" + load.id()
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

    private OptionalDouble amps(CSVRecord record, Column column, Load load, String place) {
        String word = cell(record, column);
        if (word.isEmpty()) {
            return OptionalDouble.empty();
        }
        String number = word.replaceFirst("\\s*[aA]$", "");
        if (hasDecimalComma) {
            number = number.replace(',', '.');
        }
        String name = column == Column.RUNNING ? "running_a" : "idle_a";
        if (!number.matches("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d{1,3})?")) {
            problems.add(place + name + " of load '" + load.id() + "' is '" + word
                    + "', expected a number of ampere such as 12.4.");
            return OptionalDouble.empty();
        }
        double amps = Double.parseDouble(number);
        if (!(amps == 0 || amps >= LEAST_AMPS && amps <= MOST_AMPS)) {
            problems.add(place + name + " of load '" + load.id() + "' is " + word + ", expected 0 to " + (int) MOST_AMPS
                    + " A. Maybe it is in milliampere, or the clamp was the wrong way round.");
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(amps);
    }

    private void keep(Load load, Optional<Phase> phase, OptionalDouble running, OptionalDouble idle, long line) {
        Set<Phase> seen = read.computeIfAbsent(load.id(), any -> new LinkedHashSet<>());
        if (phase.isPresent() && !seen.add(phase.get())) {
            notes.add("line " + line + ": load '" + load.id() + "' was read on phase " + phase.get()
                    + " before; the greater reading counts.");
        }
        running.ifPresent(amps ->
                rows.computeIfAbsent(load.id(), any -> new ArrayList<>()).add(new ReadingWarnings.Row(line, amps)));
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
