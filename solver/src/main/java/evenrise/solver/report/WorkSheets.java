package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.solver.rework.BuiltPlant;
import evenrise.solver.rework.NightLimits;
import evenrise.solver.rework.Nights;
import evenrise.solver.rework.SpareBreaker;
import evenrise.solver.rework.SpareBreakers;
import evenrise.solver.rework.WorkOrder;
import evenrise.solver.rework.WorkStage;
import evenrise.solver.rework.WorkStep;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/**
 * What the sheets of an order of work say, a sheet a stage, and when each is due.
 *
 * @param project as it is to be
 * @param nights as they are stated; none where nobody states any
 * @param left numbers of stages for which no night is left
 */
public record WorkSheets(
        Project project, WorkOrder order, List<WorkSheet> sheets, List<WorkNight> nights, List<Integer> left) {
    public WorkSheets {
        sheets = List.copyOf(sheets);
        nights = List.copyOf(nights);
        left = List.copyOf(left);
    }

    /**
     * Says all of it.
     *
     * @param notes what else whoever works has to know, on every sheet
     */
    public static WorkSheets of(BuiltPlant plant, WorkOrder order, List<String> notes, NightLimits limits) {
        WorkStepText words = new WorkStepText(plant.project(), plant.plan().assignments());
        Nights.Layout layout = Nights.of(order, limits.windowsMinutes());
        Map<Integer, Due> due = due(order, layout);
        List<WorkSheet> sheets = new ArrayList<>();
        Plan before = plant.plan();
        List<SpareBreaker> spares = plant.spares();
        for (WorkStage each : order.stages()) {
            int number = sheets.size() + 1;
            words.begin(each);
            sheets.add(
                    sheet(plant, order, notes, before, spares, number, due.getOrDefault(number, new Due(0, 0)), words));
            spares = SpareBreakers.after(plant, spares, each);
            before = each.after();
        }
        List<WorkNight> nights = layout.nights().stream()
                .map(each -> new WorkNight(
                        each.number(),
                        each.windowMinutes(),
                        each.stages(),
                        each.minutes(),
                        each.stages().isEmpty()
                                ? "as before"
                                : sheets.get(each.stages().get(each.stages().size() - 1) - 1)
                                        .end()
                                        .inShort()))
                .toList();
        return new WorkSheets(
                plant.planned(), order, sheets, nights, limits.windowsMinutes().isEmpty() ? List.of() : layout.left());
    }

    /** A line a stage. */
    public List<StageRow> rows() {
        return StageRow.of(order.stages());
    }

    /** Who is out, the longest first. */
    public List<OrderText.Outage> outages() {
        return OrderText.longestOut(order);
    }

    /** The night of a stage, and how many of its minutes are over when the stage begins. */
    private record Due(int night, double minutes) {}

    private static Map<Integer, Due> due(WorkOrder order, Nights.Layout layout) {
        Map<Integer, Due> due = new HashMap<>();
        for (Nights.Night night : layout.nights()) {
            double over = 0;
            for (int number : night.stages()) {
                due.put(number, new Due(night.number(), over));
                over += order.stages().get(number - 1).minutes();
            }
        }
        return due;
    }

    private static WorkSheet sheet(
            BuiltPlant plant,
            WorkOrder order,
            List<String> notes,
            Plan before,
            List<SpareBreaker> spares,
            int number,
            Due due,
            WorkStepText words) {
        WorkStage stage = order.stages().get(number - 1);
        Project project = plant.at(stage.after());
        Evaluation after = Evaluation.of(Layout.of(project, stage.after()));
        return new WorkSheet(
                number,
                order.stages().size(),
                isOff(stage),
                dead(project, stage),
                stage.minutes(),
                due.night(),
                due.minutes(),
                stage.outages().stream().map(WorkSheets::group).toList(),
                notes,
                locks(stage, before),
                steps(stage, before, words),
                order.breaches().stream()
                        .filter(breach -> breach.stage() == number)
                        .map(breach -> (breach.step() > 0 ? "After step " + breach.step() + ": " : "After the stage: ")
                                + breach.message())
                        .toList(),
                PanelPictures.of(plant, before, spares, stage),
                StageCurrents.of(after, before, stage),
                StageEnd.of(after, number == order.stages().size()));
    }

    private static List<WorkSheet.Line> steps(WorkStage stage, Plan before, WorkStepText words) {
        List<Optional<String>> back = WayBack.of(before, stage);
        List<WorkSheet.Line> lines = new ArrayList<>();
        boolean hasMinutes = !stage.stepMinutes().isEmpty();
        double clock = 0;
        for (WorkStep step : stage.steps()) {
            int index = lines.size();
            lines.add(new WorkSheet.Line(
                    index + 1,
                    hasMinutes ? OptionalDouble.of(clock) : OptionalDouble.empty(),
                    words.say(step),
                    back.get(index)));
            clock += hasMinutes ? stage.stepMinutes().get(index) : 0;
        }
        return lines;
    }

    private static List<WorkSheet.Lock> locks(WorkStage stage, Plan before) {
        List<WorkSheet.Lock> locks = new ArrayList<>();
        stage.deadPanels().forEach(panel -> locks.add(new WorkSheet.Lock("panel " + panel, "with the boards in it")));
        stage.deadBoards().forEach(board -> locks.add(new WorkSheet.Lock("board " + board, "its feed and outputs")));
        Map<String, Assignment> seats = new HashMap<>();
        before.assignments().forEach(seat -> seats.put(seat.load(), seat));
        stage.lockedOut()
                .forEach(load -> locks.add(new WorkSheet.Lock(
                        load,
                        Optional.ofNullable(seats.get(load))
                                .map(seat -> WorkStepText.slot(seat.panel(), seat.slot()))
                                .orElseGet(() -> toBe(load, stage)))));
        return locks;
    }

    private static String toBe(String load, WorkStage stage) {
        return stage.after().assignments().stream()
                .filter(seat -> seat.load().equals(load))
                .map(seat -> WorkStepText.slot(seat.panel(), seat.slot()) + ", where its breaker is to be")
                .findFirst()
                .orElse("no breaker");
    }

    private static String isOff(WorkStage stage) {
        if (stage.lockedOut().isEmpty()) {
            return "No load goes off; boards are set only.";
        }
        String locked = Phrase.counted(stage.lockedOut().size(), "load") + " locked out";
        if (stage.isSystemOff()) {
            return "THE WHOLE SYSTEM IS OFF during this stage; " + locked + besides(stage)
                    + ". Other loads that no board switches stay live.";
        }
        if (!stage.systemsOff().isEmpty()) {
            return "SYSTEMS OFF during this stage: " + String.join(", ", stage.systemsOff()) + "; " + locked
                    + besides(stage) + ". Other systems stay on where no panel or board is isolated.";
        }
        return (stage.deadPanels().isEmpty() && stage.deadBoards().isEmpty()
                        ? "The system stays on; "
                        : "The system stays on where no panel or board is isolated; ")
                + locked + besides(stage) + ".";
    }

    private static String besides(WorkStage stage) {
        return stage.standingBy().isEmpty()
                ? ""
                : ", " + Phrase.counted(stage.standingBy().size(), "more load")
                        + " off by their panel, their board or what they need";
    }

    /** Which panels and boards are dead, and which that are worked on are live. */
    private static String dead(Project project, WorkStage stage) {
        List<String> dead = new ArrayList<>();
        stage.deadPanels().forEach(panel -> dead.add("panel " + panel + " with the boards in it"));
        stage.deadBoards().forEach(board -> dead.add("board " + board));
        String fed = stage.deadBelow().isEmpty()
                ? ""
                : ". DEAD with them, which they feed: " + String.join(", ", stage.deadBelow());
        String live = project.panels().stream()
                .map(Panel::id)
                .filter(id ->
                        !stage.deadPanels().contains(id) && !stage.deadBelow().contains(id))
                .collect(Collectors.joining(", "));
        return (dead.isEmpty() ? "Nothing is isolated as a whole" : "ISOLATED: " + String.join("; ", dead) + fed)
                + (live.isEmpty()
                        ? "."
                        : ". LIVE: every " + (dead.isEmpty() ? "" : "other ") + "panel and board (panels " + live
                                + ").");
    }

    static String group(String outage) {
        return outage.isEmpty() ? "loads without a group" : "group " + outage;
    }
}
