package evenrise.solver.document;

import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.Role;
import evenrise.model.project.SwitchedBy;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import evenrise.model.rules.Rotation;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/**
 * One load on its breaker, as every table that lists loads has it.
 *
 * @param slots all of its breaker: {@code 7, 9, 11}, which no spreadsheet takes for a date
 * @param phases letters of those slots
 * @param board empty, as the output and both times, for what is not switched, and for what is but has no output
 * @param onSeconds from the command to switch on, of its system where systems have commands of their own
 * @param offSeconds from the command to switch off, likewise
 * @param turns whether it turns the wrong way where phases are swapped
 * @param system whose command switches it, where the project has systems
 * @param comesWith load behind whose contactor it is
 * @param carries loads behind its contactor, in the plan's order
 * @param offAfterSeconds how much later than the mirror image it goes off
 * @param setSeconds what its output is set to, counted from its board's start, where each output has a time of its own
 */
public record PlannedCircuit(
        String load,
        String name,
        Role role,
        Optional<String> group,
        boolean isSwitched,
        boolean isMotor,
        boolean turns,
        String panel,
        String slots,
        String phases,
        int poles,
        double breakerAmps,
        double idleAmps,
        double runningAmps,
        Optional<String> board,
        OptionalInt output,
        OptionalDouble onSeconds,
        OptionalDouble offSeconds,
        Optional<String> system,
        boolean byContactor,
        Optional<String> comesWith,
        List<String> carries,
        Optional<String> rack,
        double offAfterSeconds,
        OptionalDouble setSeconds) {
    /** Stands for the time of what is not switched. */
    private static final String ALWAYS_ON = "always on";
    /** Stands for the time of what is switched, but has no output in a plan that breaks rules. */
    private static final String NOT_ASSIGNED = "not assigned";

    static final String NO_OUTPUT = "no output switches it";

    /** All that a plan places, as somebody walks along the panels: in the project's order, then by slot. */
    static List<PlannedCircuit> along(Layout layout) {
        Map<String, Integer> panels = new LinkedHashMap<>();
        layout.project().panels().forEach(panel -> panels.put(panel.id(), panels.size()));
        return layout.placements().stream()
                .sorted(Comparator.comparingInt((Placement each) ->
                                panels.getOrDefault(each.assignment().panel(), panels.size()))
                        .thenComparingInt(each -> each.assignment().slot()))
                .map(each -> of(layout, each))
                .toList();
    }

    /** Names the loads that a plan has nowhere, which no table of circuits has a row for; empty where there are none. */
    static String leftOut(Layout layout) {
        List<String> loads = layout.project().loads().stream()
                .map(Load::id)
                .filter(id -> layout.placement(id).isEmpty())
                .toList();
        return loads.isEmpty()
                ? ""
                : Plain.text(
                        "The plan leaves out, with no breaker and no output: " + String.join(", ", loads) + ".", 2000);
    }

    static PlannedCircuit of(Layout layout, Placement it) {
        Load load = it.load();
        return new PlannedCircuit(
                it.id(),
                load.name(),
                load.role(),
                load.shutdownGroup(),
                load.switched(),
                load.isMotor(),
                Rotation.matters(load),
                it.assignment().panel(),
                slots(it),
                it.phases().stream().map(Phase::name).collect(Collectors.joining()),
                load.poles(),
                load.breakerAmps(),
                load.idleAmps(),
                load.runningAmps(),
                it.board().map(Board::id),
                it.isSequenced() ? it.assignment().output() : OptionalInt.empty(),
                it.onSeconds(),
                it.isSequenced()
                        ? OptionalDouble.of(
                                layout.clocks().offSeconds(load, it.onSeconds().getAsDouble()))
                        : OptionalDouble.empty(),
                load.system(),
                load.switchedBy() == SwitchedBy.CONTACTOR,
                load.comesWith(),
                layout.behind(it.id()),
                load.rack(),
                it.isSequenced() ? layout.clocks().offAfterSeconds(load) : 0,
                setSeconds(layout, it));
    }

    private static OptionalDouble setSeconds(Layout layout, Placement it) {
        return it.board()
                .filter(board -> layout.index().typeOf(board).isTimedByOutput())
                .map(board -> OptionalDouble.of(
                        it.onSeconds().orElseThrow() - layout.times().beginSeconds(board.id())))
                .orElse(OptionalDouble.empty());
    }

    private static String slots(Placement it) {
        return it.fits()
                ? it.slots().stream().map(String::valueOf).collect(Collectors.joining(", "))
                : String.valueOf(it.assignment().slot());
    }

    /** Panel and slots. */
    public String place() {
        return panel + " " + slots;
    }

    /** The first slot of its breaker, by which rows sort along a panel. */
    public int slot() {
        return Integer.parseInt(slots.split(",", 2)[0]);
    }

    /** {@code 6.3/2}: rating in ampere over poles. */
    public String breaker() {
        return Unrounded.breaker(poles, breakerAmps);
    }

    /** How its breaker is switched, and what is behind it; empty for a switched breaker by itself. */
    String contactor() {
        if (comesWith.isPresent()) {
            return "behind the contactor of " + comesWith.get();
        }
        if (!byContactor) {
            return "";
        }
        return carries.isEmpty() ? "contactor" : "contactor, with " + String.join(", ", carries);
    }

    /** Whether it is to be switched and the plan has no output for it, or none for the load that it comes with. */
    public boolean isWithoutOutput() {
        return isSwitched && onSeconds.isEmpty();
    }

    /** When it comes on, or why there is no such time. */
    Object on() {
        return onSeconds.isPresent() ? (Object) onSeconds.getAsDouble() : untimed(isSwitched);
    }

    /** Stands for the time of a load that has none. */
    static String untimed(boolean isSwitched) {
        return isSwitched ? NOT_ASSIGNED : ALWAYS_ON;
    }

    /** Its board, or what it comes with; empty for what is not switched. */
    String switchedWith() {
        return isWithoutOutput()
                ? NOT_ASSIGNED
                : comesWith.map(lead -> "with " + lead).or(() -> board).orElse("");
    }

    /** Which lead switches it. */
    String control() {
        if (isWithoutOutput()) {
            return comesWith.map(lead -> "with " + lead + "; ").orElse("") + NO_OUTPUT;
        }
        if (comesWith.isPresent()) {
            return "with " + comesWith.get();
        }
        return onSeconds.isPresent()
                ? board.orElse("") + " output " + (output.isPresent() ? output.getAsInt() : "")
                : ALWAYS_ON;
    }
}
