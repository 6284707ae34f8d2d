package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Assignment;
import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.Rotation;
import evenrise.solver.rework.WorkStage;
import evenrise.solver.rework.WorkStep;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/** Says a step of work in words, with where things are and where they go. Keeps account, so steps come in their order. */
final class WorkStepText {
    private final Project project;
    private final Map<String, Load> loads = new HashMap<>();
    private final Map<String, String> slots = new HashMap<>();
    private final Map<String, String> outputs = new HashMap<>();
    private final Map<String, String> boardOf = new HashMap<>();
    private final Map<String, List<Phase>> built = new HashMap<>();
    private final Map<String, Assignment> after = new HashMap<>();
    private final TreeText tree;
    private WorkStage stage;

    WorkStepText(Project project, List<Assignment> built) {
        this.project = project;
        this.tree = new TreeText(project);
        project.loads().forEach(load -> this.loads.put(load.id(), load));
        for (Assignment each : built) {
            slots.put(each.load(), slot(each.panel(), each.slot()));
            this.built.put(each.load(), each.phases());
            each.board().ifPresent(board -> {
                outputs.put(each.load(), output(board, each.output().orElse(0)));
                boardOf.put(each.load(), board);
            });
        }
    }

    /** Every step until the next call belongs to this stage. */
    void begin(WorkStage next) {
        stage = next;
        after.clear();
        next.after().assignments().forEach(each -> after.put(each.load(), each));
    }

    static String slot(String panel, int slot) {
        return "panel " + panel + " slot " + slot;
    }

    static String output(String board, int output) {
        return "board " + board + " output " + output;
    }

    String say(WorkStep step) {
        String id = step.load().orElse("");
        return switch (step.kind()) {
            case SYSTEM_OFF -> CommandText.off(step.system());
            case SWITCH_OFF -> "Switch off " + who(id) + "; " + whyOff(id) + ". Nobody works on it.";
            case LOCK_OUT ->
                !slots.containsKey(id)
                        ? "Keep " + who(id)
                                + " off; it has no breaker yet. Lock out and tag where it will be; test that no voltage"
                                + " is there."
                        : "Switch off " + who(id) + ", " + slots.get(id)
                                + ". Open, lock and tag its breaker; test that no voltage is behind it.";
            case ISOLATE_PANEL -> isolatePanel(step.panel().orElseThrow());
            case ISOLATE_BOARD ->
                "Isolate board " + step.board().orElseThrow()
                        + ": switch off, lock and tag what feeds it and its outputs."
                        + " Test that no voltage is on its terminals, with a tester proven before and after."
                        + housing(step.board().get());
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
                        + (leaves ? "; its conductors must reach that panel" : "")
                        + ". Tighten to the torque that the maker states: ______ N·m."
                        + live(step.panel().get());
            }
            case PUT_IN -> {
                String to = slot(step.panel().orElseThrow(), step.slot().orElseThrow());
                slots.put(id, to);
                yield "Put in the breaker of " + who(id) + breaker(id) + ", " + to + phases(after.get(id))
                        + ". Draw its conductors to it, label both ends, and leave the far ends capped until the load is"
                        + " on them. Tighten to the torque that the maker states: ______ N·m."
                        + live(step.panel().get());
            }
            case REMOVE -> {
                String from = slot(step.panel().orElseThrow(), step.slot().orElseThrow());
                slots.remove(id);
                yield "Take out the breaker of " + who(id) + " for good, " + from
                        + ": lift its conductors, cap both ends and tag them as out of use. Close the slot with a blank"
                        + " where nothing else goes into it."
                        + live(step.panel().get());
            }
            case LEAVE_SPARE -> {
                String at = slot(step.panel().orElseThrow(), step.slot().orElseThrow());
                slots.remove(id);
                yield "Leave the breaker of " + who(id) + " as a spare in " + at
                        + ": lift its conductors off it, cap both ends and tag them as out of use. It stays open and"
                        + " locked."
                        + live(step.panel().get());
            }
            case REMOVE_SPARE ->
                "Take out the spare breaker in "
                        + slot(step.panel().orElseThrow(), step.slot().orElseThrow())
                        + ", whose slot is wanted."
                        + live(step.panel().get());
            case USE_SPARE -> {
                String to = slot(step.panel().orElseThrow(), step.slot().orElseThrow());
                slots.put(id, to);
                yield "Use the spare breaker in " + to + " for " + who(id)
                        + ": see that it is what is asked for" + breaker(id) + phases(after.get(id))
                        + "; draw its conductors and label both ends. Tighten to the torque that the maker states:"
                        + " ______ N·m."
                        + live(step.panel().get());
            }
            case REMOVE_LEAD -> {
                String from = output(step.board().orElseThrow(), step.output().orElse(0));
                outputs.remove(id);
                yield "Take the control lead of " + who(id) + " off " + from + " for good; cap and tag it."
                        + boards(id);
            }
            case LIFT_LEAD ->
                "Lift the control lead of " + who(id) + ", " + outputs.remove(id) + "; tag it." + boards(id);
            case RE_LAND ->
                step.board().isEmpty()
                        ? "Take away the control lead of " + who(id) + "." + boards(id)
                        : landed(
                                id,
                                output(step.board().get(), step.output().orElse(0)),
                                step.board().get());
            case SET_BOARD ->
                "Set board " + step.board().orElseThrow() + ": start delay "
                        + Numbers.seconds(step.startDelaySeconds()) + " s, step " + Numbers.seconds(step.stepSeconds())
                        + " s. It counts from the next on command.";
            case SET_OUTPUT ->
                "Set the time of "
                        + output(step.board().orElseThrow(), step.output().orElse(0)) + ", "
                        + who(id) + ": " + Numbers.seconds(step.timeSeconds())
                        + " s from the begin of its board. It counts from the next on command.";
            case CHECK_ROTATION -> rotation(id, after.get(id));
            case MAKE_READY ->
                "Make ready before anything comes on: test what was moved for continuity, insulation and polarity, no"
                        + " fault found: ______ MΩ; every terminal at the maker's torque; tools out, covers on and closed;"
                        + " people clear and told.";
            case ENERGISE_PANEL ->
                "With every breaker in panel " + step.panel().orElseThrow()
                        + " open, take lock and tag off what feeds it and switch it on; read the voltage of each line.";
            case ENERGISE_BOARD ->
                "Take lock and tag off what feeds board " + step.board().orElseThrow()
                        + " and switch it on; no output may close by itself.";
            case FUNCTION_TEST -> functionTest(id);
            case RELABEL ->
                "Change the labels of breakers, conductors and leads and the schedule in each panel: "
                        + String.join(", ", stage.lockedOut()) + ".";
            case UNLOCK -> "Take the lock and tag off " + who(id) + ", " + slots.get(id) + ". It stays off.";
            case ENERGISE ->
                "Take the lock and tag off " + who(id) + ", " + slots.get(id)
                        + ", and switch it on; wait until it has settled" + settle(id) + ".";
            case SWITCH_ON -> "Switch " + who(id) + " on again" + settle(id) + ".";
            case SYSTEM_ON -> CommandText.on(step.system());
        };
    }

    private String whyOff(String id) {
        Optional<Assignment> seat = stageSeat(id);
        if (seat.filter(at -> stage.deadPanels().contains(at.panel())).isPresent()) {
            return "its panel is isolated next";
        }
        if (seat.filter(at -> stage.deadBelow().contains(at.panel())).isPresent()) {
            return "what feeds its panel is isolated next";
        }
        if (seat.flatMap(Assignment::board).filter(this::isDead).isPresent()) {
            return "its board is isolated next";
        }
        Optional<String> feeding = seat.flatMap(Assignment::board).flatMap(this::feeding);
        if (feeding.isPresent()) {
            return "its board has its supply from " + who(feeding.get()) + ", which goes off next, or it needs a load"
                    + " that does";
        }
        Optional<String> lead = Optional.ofNullable(loads.get(id)).flatMap(Load::comesWith);
        if (lead.isPresent()) {
            return "it is behind the contactor of " + who(lead.get()) + ", or needs a load that goes off next";
        }
        return "it needs a load that goes off next";
    }

    /** A load that nobody works on is where it will be. */
    private Optional<Assignment> stageSeat(String id) {
        return Optional.ofNullable(after.get(id));
    }

    private boolean isDead(String board) {
        return stage.deadBoards().contains(board)
                || panelOf(board)
                        .filter(panel -> stage.deadPanels().contains(panel)
                                || stage.deadBelow().contains(panel))
                        .isPresent();
    }

    /** The load that a board has its supply from, where it is one that is off in this stage. */
    private Optional<String> feeding(String board) {
        return project.boards().stream()
                .filter(each -> each.id().equals(board))
                .flatMap(each -> each.fedBy().stream())
                .filter(load ->
                        stage.lockedOut().contains(load) || stage.standingBy().contains(load))
                .findFirst();
    }

    private Optional<String> panelOf(String board) {
        return project.boards().stream()
                .filter(each -> each.id().equals(board))
                .map(Board::panel)
                .findFirst();
    }

    private String isolatePanel(String panel) {
        List<String> boards = project.boards().stream()
                .filter(board -> board.panel().equals(panel))
                .map(Board::id)
                .toList();
        return "Isolate panel " + panel + ": with every breaker in it open, switch off, lock and tag what feeds it"
                + (boards.isEmpty()
                        ? ""
                        : ", and whatever feeds the boards in it from elsewhere (" + String.join(", ", boards) + ")")
                + ". Test that no voltage is there, between lines, to neutral and to earth, with a tester proven"
                + " before and after." + tree.below(panel);
    }

    private String live(String panel) {
        return project.panels().stream()
                .filter(each -> each.id().equals(panel))
                .findFirst()
                .flatMap(Panel::withdrawableUnderLoad)
                .map(source -> " Panel " + panel + " stays LIVE; its maker says that this may be done under load: "
                        + source + ".")
                .orElse("");
    }

    /** For each board whose lead is touched, whether it is live or isolated. */
    private String boards(String id) {
        Set<String> touched = new LinkedHashSet<>();
        Optional.ofNullable(boardOf.get(id)).ifPresent(touched::add);
        stageSeat(id).flatMap(Assignment::board).ifPresent(board -> {
            touched.add(board);
            boardOf.put(id, board);
        });
        return touched.stream()
                .map(board -> isDead(board)
                        ? " Board " + board + " is isolated."
                        : " Board " + board + " stays LIVE" + volts(board) + ": its other outputs run; touch no other"
                                + " terminal." + housing(board))
                .collect(Collectors.joining());
    }

    private String volts(String board) {
        OptionalDouble volts = project.boards().stream()
                .filter(each -> each.id().equals(board))
                .map(Board::outputVolts)
                .findFirst()
                .orElse(OptionalDouble.empty());
        return volts.isPresent() ? ", at most " + Numbers.amps(volts.getAsDouble()) + " V to earth by its maker" : "";
    }

    private String housing(String board) {
        return panelOf(board)
                .filter(panel -> !stage.deadPanels().contains(panel)
                        && !stage.deadBelow().contains(panel))
                .map(panel ->
                        " Panel " + panel + ", which houses it, stays LIVE: if a cover over live parts must come off,"
                                + " isolate that panel, too.")
                .orElse("");
    }

    private String functionTest(String id) {
        return "Function test of " + who(id) + ": its breaker opens and closes by hand, the voltage at it is right, its"
                + " current is as planned" + amps(id)
                + (outputs.containsKey(id)
                        ? ", and " + outputs.get(id) + " switches it and nothing else (watch it at the next off and on"
                                + " commands where it may not go off alone)."
                        : ".");
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

    /** A lead on another output, or on its own where its breaker has left the panel that it reached. */
    private String landed(String id, String to, String board) {
        String from = outputs.get(id);
        String moved = to.equals(from)
                ? "Draw the control lead of " + who(id) + " anew on " + to + ", since its breaker is in another panel"
                : moved((from == null ? "Land" : "Re-land") + " the control lead of ", id, outputs, to);
        return moved + runs(id, board) + "." + boards(id);
    }

    /** Where a lead runs that leaves the panel of its board. */
    private String runs(String id, String board) {
        Optional<String> breaker = stageSeat(id).map(Assignment::panel);
        return panelOf(board)
                .filter(panel -> breaker.filter(its -> !its.equals(panel)).isPresent())
                .map(panel -> "; it runs from panel " + panel + " to " + slots.get(id))
                .orElse("");
    }

    /** What it is to draw, with room to write what it does. */
    private String amps(String id) {
        Load load = loads.get(id);
        return load == null
                ? ""
                : " (" + Numbers.amps(load.idleAmps()) + " A idle, at most " + Numbers.amps(load.runningAmps())
                        + " A at full use; read ______ A)";
    }

    private String breaker(String id) {
        Load load = loads.get(id);
        return load == null
                ? ""
                : " (" + Phrase.counted(load.poles(), "pole") + ", " + Numbers.amps(load.breakerAmps()) + " A"
                        + load.curve().map(curve -> ", curve " + curve.name()).orElse("") + ")";
    }

    private static String phases(Assignment seat) {
        return seat == null ? "" : ", phase " + letters(seat.phases());
    }

    private String who(String id) {
        Load load = loads.get(id);
        return load == null || load.name().equals(id) ? id : id + " (" + load.name() + ")";
    }
}
