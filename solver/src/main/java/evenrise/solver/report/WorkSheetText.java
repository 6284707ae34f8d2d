package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Plan;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.ProjectIndex;
import evenrise.solver.rework.BuiltPlant;
import evenrise.solver.rework.SpareBreaker;
import evenrise.solver.rework.SpareBreakers;
import evenrise.solver.rework.WorkOrder;
import evenrise.solver.rework.WorkStage;
import evenrise.solver.rework.WorkStep;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** The sheets that go to the panel: one a stage, plain, to be printed and ticked off. */
public final class WorkSheetText {
    private static final String LOCK_OUT =
            "A panel is dead while a breaker in it is worked on, and a control board while a lead on it is: switch"
                    + " off, isolate, lock and tag what feeds it, and test for the absence of voltage with a tester proven"
                    + " before and after. Breakers that are merely off leave the bus live. What stays live is named above;"
                    + " keep covers on it.";

    private WorkSheetText() {}

    /** Every sheet, each begun by a form feed but the first, so that a printer takes a new page. */
    public static String pages(BuiltPlant plant, WorkOrder order) {
        return pages(plant, order, List.of());
    }

    /** @param notes what else whoever works has to know, on every sheet */
    public static String pages(BuiltPlant plant, WorkOrder order, List<String> notes) {
        WorkStepText words = new WorkStepText(plant.project(), plant.plan().assignments());
        List<String> pages = new ArrayList<>();
        Plan before = plant.plan();
        List<SpareBreaker> spares = plant.spares();
        for (WorkStage each : order.stages()) {
            List<String> picture =
                    PanelPictureText.lines(plant, new ProjectIndex(plant.project()), before, spares, each);
            pages.add(String.join("\n", sheet(plant, order, notes, before, each, pages.size() + 1, words, picture))
                    + "\n");
            spares = SpareBreakers.after(plant, spares, each);
            before = each.after();
        }
        return pages.isEmpty()
                ? "Nothing is to be done.\n\n" + String.join("\n", CautionText.lines(Cautions.ALL, Paint.NONE)) + "\n"
                : String.join("\f", pages);
    }

    private static List<String> sheet(
            BuiltPlant plant,
            WorkOrder order,
            List<String> notes,
            Plan before,
            WorkStage stage,
            int number,
            WorkStepText words,
            List<String> picture) {
        Project project = plant.at(stage.after());
        List<List<String>> sections = new ArrayList<>();
        Section head = new Section(
                Paint.NONE,
                project.name() + ": stage " + number + " of " + order.stages().size());
        head.text(isOff(stage));
        head.text(dead(project, stage));
        if (stage.minutes() > 0) {
            head.text("About " + Math.round(stage.minutes())
                    + " min for one crew, by minutes of each kind of work; beside each step stands the minute at which"
                    + " it begins. Begun at ________ Done at ________");
        }
        if (!stage.outages().isEmpty()) {
            head.text("Out meanwhile, wholly or in part: " + groups(stage.outages())
                    + ". Tell whoever uses or runs it, before the first step and when all is on again: name"
                    + " ____________________ told at ________ again at ________");
        }
        sections.add(head.lines());
        Section caution = new Section(Paint.NONE, "Caution").text(LOCK_OUT);
        notes.forEach(caution::text);
        sections.add(caution.lines());
        words.begin(stage);
        Section steps = new Section(Paint.NONE, "Steps");
        List<String> lines = new ArrayList<>(steps.lines());
        int count = 0;
        double clock = 0;
        for (WorkStep step : stage.steps()) {
            String at = stage.stepMinutes().isEmpty() ? "" : String.format(Locale.ROOT, "%4d ", Math.round(clock));
            clock += stage.stepMinutes().isEmpty() ? 0 : stage.stepMinutes().get(count);
            lines.addAll(Wrap.lines(String.format(Locale.ROOT, "  [ ] %2d %s ", ++count, at), words.say(step)));
        }
        sections.add(lines);
        if (order.breaches().stream().anyMatch(breach -> breach.stage() == number)) {
            Section broken = new Section(Paint.NONE, "Broken on the way");
            order.breaches().stream()
                    .filter(breach -> breach.stage() == number)
                    .forEach(breach ->
                            broken.item((breach.step() > 0 ? "After step " + breach.step() + ": " : "After the stage: ")
                                    + breach.message()));
            sections.add(broken.lines());
        }
        Section back = new Section(Paint.NONE, "If a step fails");
        WayBackText.into(back, before, stage);
        sections.add(back.lines());
        if (!picture.isEmpty()) {
            sections.add(picture);
        }
        Evaluation after = Evaluation.of(Layout.of(project, stage.after()));
        sections.add(StageCurrents.lines(after, before, stage));
        Section end = new Section(Paint.NONE, "After this stage");
        StageEndText.into(end, after, number == order.stages().size());
        end.text("Done by ____________________   Checked by ____________________   Date ____________");
        sections.add(end.lines());
        sections.add(CautionText.lines(Cautions.ALL, Paint.NONE));
        return Sections.joined(sections);
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

    static String groups(List<String> outages) {
        return String.join(
                ", ",
                outages.stream()
                        .map(group -> group.isEmpty() ? "loads without a group" : "group " + group)
                        .toList());
    }
}
