package evenrise.solver.report;

import evenrise.model.plan.Assignment;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.rules.Rotation;
import evenrise.solver.rework.WorkStep;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Says a step of work in words, with where things are and where they go. Keeps account, so steps come in their order. */
final class StepText {
    private final Map<String, Load> loads = new HashMap<>();
    private final Map<String, String> slots = new HashMap<>();
    private final Map<String, String> outputs = new HashMap<>();
    private final Map<String, List<Phase>> built = new HashMap<>();

    StepText(List<Load> loads, List<Assignment> built) {
        loads.forEach(load -> this.loads.put(load.id(), load));
        for (Assignment each : built) {
            slots.put(each.load(), slot(each.panel(), each.slot()));
            this.built.put(each.load(), each.phases());
            each.board()
                    .ifPresent(board ->
                            outputs.put(each.load(), output(board, each.output().orElse(0))));
        }
    }

    private static String slot(String panel, int slot) {
        return "panel " + panel + " slot " + slot;
    }

    private static String output(String board, int output) {
        return "board " + board + " output " + output;
    }

    /** @param after the plant after the stage, for phases and times */
    String say(WorkStep step, Map<String, Assignment> after) {
        String id = step.load().orElse("");
        return switch (step.kind()) {
            case SYSTEM_OFF -> "Give the off command. Wait until everything that boards switch is off.";
            case SWITCH_OFF -> "Switch off " + who(id) + "; it needs a load that goes off next. Nobody works on it.";
            case LOCK_OUT ->
                !slots.containsKey(id)
                        ? "Keep " + who(id)
                                + " off; it has no breaker yet. Isolate, lock out and tag where it will be; prove"
                                + " dead."
                        : "Switch off " + who(id) + ", " + slots.get(id) + ". Isolate, lock out and tag; prove dead.";
            case PARK -> {
                String to = slot(step.panel().orElseThrow(), step.slot().orElseThrow());
                yield moved("Park the breaker of ", id, slots, to) + ". It stays locked out there.";
            }
            case TAKE_OUT ->
                "Take out the breaker of " + who(id) + ", " + slots.remove(id) + "; cap and tag its conductors.";
            case RE_TERMINATE -> {
                String to = slot(step.panel().orElseThrow(), step.slot().orElseThrow());
                String before = slots.getOrDefault(id, "");
                boolean leaves = !before.isEmpty()
                        && !before.startsWith("panel " + step.panel().get() + " slot ");
                yield moved("Re-terminate ", id, slots, to)
                        + phases(after.get(id))
                        + (leaves ? "; its conductors must reach that panel." : ".");
            }
            case LIFT_LEAD -> "Lift the control lead of " + who(id) + ", " + outputs.remove(id) + "; tag it.";
            case RE_LAND ->
                step.board().isEmpty()
                        ? "Take away the control lead of " + who(id) + "."
                        : moved(
                                        "Re-land the control lead of ",
                                        id,
                                        outputs,
                                        output(step.board().get(), step.output().orElse(0)))
                                + ".";
            case SET_BOARD ->
                "Set board " + step.board().orElseThrow() + ": start delay "
                        + Numbers.seconds(step.startDelaySeconds()) + " s, step " + Numbers.seconds(step.stepSeconds())
                        + " s. It counts from the next on command.";
            case CHECK_ROTATION -> rotation(id, after.get(id));
            case UNLOCK -> "Take the lock and tag off " + who(id) + ", " + slots.get(id) + ". It stays off.";
            case ENERGISE ->
                "Take the lock and tag off " + who(id) + ", " + slots.get(id)
                        + ", and switch it on; wait until it has settled" + settle(id) + ".";
            case SWITCH_ON -> "Switch " + who(id) + " on again" + settle(id) + ".";
            case SYSTEM_ON -> "Give the on command. Watch the sequence to its end.";
        };
    }

    /** Whether the order of the phases is the same as built, or the reverse. */
    private String rotation(String id, Assignment seat) {
        List<Phase> before = built.getOrDefault(id, List.of());
        List<Phase> now = seat == null ? List.of() : seat.phases();
        boolean isReversed = Rotation.of(before).isPresent()
                && Rotation.of(now).isPresent()
                && !Rotation.of(before).equals(Rotation.of(now));
        return "Check rotation before coupling: keep " + who(id)
                + " uncoupled, or what it moves secured, until it is seen to turn the right way when it is next on"
                + (before.isEmpty() || now.isEmpty()
                        ? "."
                        : "; its poles were on " + letters(before) + " and are on " + letters(now)
                                + (isReversed
                                        ? ", the REVERSE order: exchange two of its conductors."
                                        : ", the same order."));
    }

    private static String letters(List<Phase> phases) {
        return phases.stream().map(Phase::name).collect(Collectors.joining(" "));
    }

    private String settle(String id) {
        double seconds = loads.containsKey(id) ? loads.get(id).settleSeconds() : 0;
        return seconds > 0 ? " (" + Numbers.seconds(seconds) + " s)" : "";
    }

    private String moved(String what, String id, Map<String, String> places, String to) {
        String from = places.put(id, to);
        return what + who(id) + (from == null ? "" : " from " + from) + " to " + to;
    }

    private static String phases(Assignment seat) {
        return seat == null ? "" : ", phase " + letters(seat.phases());
    }

    private String who(String id) {
        Load load = loads.get(id);
        return load == null || load.name().equals(id) ? id : id + " (" + load.name() + ")";
    }
}
