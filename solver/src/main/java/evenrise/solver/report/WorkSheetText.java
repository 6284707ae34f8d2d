package evenrise.solver.report;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Plan;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLimits;
import evenrise.solver.rework.WorkOrder;
import evenrise.solver.rework.WorkStage;
import evenrise.solver.rework.WorkStep;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;

/** The sheets that go to the panel: one a stage, plain, to be printed and ticked off. */
public final class WorkSheetText {
    private static final String LOCK_OUT =
            "Lock out before you touch: switch off, isolate, lock and tag each breaker named here, and prove dead with"
                + " a tester proven before and after. The panel's bus stays live while only breakers are off: isolate"
                + " the panel itself before a breaker is taken out or put in, unless it is made for that and the law"
                + " allows it.";

    private WorkSheetText() {}

    /** Every sheet, each begun by a form feed but the first, so that a printer takes a new page. */
    public static String pages(Project project, Plan built, WorkOrder order) {
        StepText words = new StepText(project.loads(), built.assignments());
        List<String> pages = new ArrayList<>();
        Plan before = built;
        for (WorkStage each : order.stages()) {
            pages.add(String.join("\n", sheet(project, order, before, each, pages.size() + 1, words)) + "\n");
            before = each.after();
        }
        return pages.isEmpty() ? "Nothing is to be done.\n" : String.join("\f", pages);
    }

    private static List<String> sheet(
            Project project, WorkOrder order, Plan before, WorkStage stage, int number, StepText words) {
        List<List<String>> sections = new ArrayList<>();
        Section head = new Section(
                Paint.NONE,
                project.name() + ": stage " + number + " of " + order.stages().size());
        head.text(isOff(stage));
        if (!stage.outages().isEmpty()) {
            head.text("Out meanwhile, wholly or in part: " + groups(stage.outages()) + ".");
        }
        sections.add(head.lines());
        sections.add(new Section(Paint.NONE, "Caution").text(LOCK_OUT).lines());
        Map<String, Assignment> after = new HashMap<>();
        stage.after().assignments().forEach(each -> after.put(each.load(), each));
        Section steps = new Section(Paint.NONE, "Steps");
        List<String> lines = new ArrayList<>(steps.lines());
        int count = 0;
        for (WorkStep step : stage.steps()) {
            lines.addAll(Wrap.lines(String.format(Locale.ROOT, "  [ ] %2d  ", ++count), words.say(step, after)));
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
        sections.add(currents(project, before, stage));
        Section end = new Section(Paint.NONE, "After this stage");
        end.text("The plant is whole and may run; the next stage can wait. "
                + (stage.brokenAfter() == 0
                        ? "It keeps every hard rule."
                        : "It still breaks hard rules in " + Numbers.counted(stage.brokenAfter(), "place")
                                + ", no more than before the work."));
        end.text("Done by ____________________   Checked by ____________________   Date ____________");
        sections.add(end.lines());
        sections.add(CautionText.lines(Cautions.ALL, Paint.NONE));
        return Sections.joined(sections);
    }

    private static String isOff(WorkStage stage) {
        if (stage.lockedOut().isEmpty()) {
            return "No load goes off; boards are set only.";
        }
        String locked = Numbers.counted(stage.lockedOut().size(), "load") + " locked out";
        if (stage.isSystemOff()) {
            return "THE WHOLE SYSTEM IS OFF during this stage; " + locked
                    + ". Loads that no board switches stay live unless they are among these.";
        }
        return "The system stays on; " + locked
                + (stage.standingBy().isEmpty()
                        ? "."
                        : ", " + Numbers.counted(stage.standingBy().size(), "more load")
                                + " off because of what they need.");
    }

    static String groups(List<String> outages) {
        return String.join(
                ", ",
                outages.stream()
                        .map(group -> group.isEmpty() ? "loads without a group" : "group " + group)
                        .toList());
    }

    /** What a clamp meter must not find more than, where something was moved. */
    private static List<String> currents(Project project, Plan before, WorkStage stage) {
        Set<String> nodes = new LinkedHashSet<>(List.of(NodeFigures.SUPPLY));
        Stream.concat(before.assignments().stream(), stage.after().assignments().stream())
                .filter(each -> stage.lockedOut().contains(each.load()))
                .map(Assignment::panel)
                .forEach(nodes::add);
        Section section = new Section(Paint.NONE, "Check afterwards: running current at full use, A, no more than");
        Table table = new Table().words("where");
        List<Phase> phases = project.supply().system().phases();
        phases.forEach(phase -> table.number(phase.name()));
        table.number("neutral, whatever is on").number("allowed a phase");
        List<NodeLimits> limits = NodeLimits.of(project);
        Layout after = Layout.of(project, stage.after());
        List<NodeFigures> figures = after.nodes();
        for (int i = 0; i < figures.size(); i++) {
            NodeFigures node = figures.get(i);
            if (i == 0 || nodes.contains(node.node())) {
                List<String> cells = new ArrayList<>(List.of(i == 0 ? "supply" : "panel " + node.node()));
                phases.forEach(
                        phase -> cells.add(Numbers.amps(node.runningAmps().get(phase))));
                cells.add(Numbers.amps(after.worstNeutralAmps().get(i)));
                cells.add(Numbers.amps(limits.get(i).continuousAmps()));
                table.row(cells.toArray(String[]::new));
            }
        }
        return section.table(table).lines();
    }
}
