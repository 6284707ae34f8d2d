package evenrise.solver.app;

import evenrise.model.contract.Words;
import evenrise.solver.report.OrderText;
import evenrise.solver.report.PanelPicture;
import evenrise.solver.report.StageRow;
import evenrise.solver.report.WorkSheet;
import evenrise.solver.report.WorkSheets;
import evenrise.solver.rework.Breach;
import evenrise.solver.rework.Downstream;
import evenrise.solver.rework.OrderCost;
import evenrise.solver.rework.WorkStage;
import evenrise.solver.rework.WorkStep;
import evenrise.solver.rework.WorkStepKind;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * An order of work as somebody looks at it before it is written.
 *
 * @param isByHand whether somebody has laid it out; else it is the program's own
 * @param proven what is known of every other order of these changes, in words
 * @param headline how long it takes and how it ends
 * @param isAlarm whether the headline is a warning
 * @param changes every single change, in words, by the numbers that stages name
 * @param systemOffs stages in which a system is off, each system counted
 * @param isolations panels and boards that are isolated, over all stages
 * @param outages shutdown groups of which a load is off, over all stages
 * @param nights as they are stated; none where nobody states any
 * @param left numbers of stages for which no night is left
 * @param out who is out, the longest first
 * @param obstacles why stages are not smaller
 * @param cautions what whoever works has to know
 * @since 0.1.0
 */
public record DraftedWork(
        boolean isByHand,
        String proven,
        String headline,
        boolean isAlarm,
        List<String> changes,
        int systemOffs,
        int isolations,
        int mostLockedOut,
        int outages,
        double minutes,
        int refused,
        List<Stage> stages,
        List<Night> nights,
        List<Integer> left,
        List<Out> out,
        List<String> obstacles,
        List<String> cautions) {
    public DraftedWork {
        changes = List.copyOf(changes);
        stages = List.copyOf(stages);
        nights = List.copyOf(nights);
        left = List.copyOf(left);
        out = List.copyOf(out);
        obstacles = List.copyOf(obstacles);
        cautions = List.copyOf(cautions);
    }

    /** How long somebody is out, over all stages, and in which. */
    public record Out(String group, double minutes, String stages) {}

    /** A night: its stages, the minutes that they take, and how the plant stands in the morning. */
    public record Night(int number, double windowMinutes, List<Integer> stages, double minutes, String morning) {}

    /**
     * A stage.
     *
     * @param changes numbers of those that it makes
     * @param system whether it is on, or which systems are off
     * @param below panels and nodes that are dead with the panels, since these feed them
     * @param lockedOut loads that are worked on
     * @param standingBy loads that are off besides, by no command
     * @param outages shutdown groups of which a load is off, in words
     * @param night that it is laid out in, from 1; 0 where no nights are stated or none is left
     * @param beginMinutes of the whole order, without nights, that are over when it begins
     * @param brokenAfter limits that the plant breaks then
     * @param refused what is broken on the way that belongs to no step
     */
    public record Stage(
            int number,
            List<Integer> changes,
            String system,
            List<String> deadPanels,
            List<String> deadBoards,
            List<String> below,
            List<String> lockedOut,
            List<String> standingBy,
            List<String> outages,
            double minutes,
            int night,
            double nightMinutes,
            double beginMinutes,
            int brokenAfter,
            String end,
            List<String> refused,
            List<Step> steps,
            List<Drawn> panels) {}

    /**
     * A step.
     *
     * @param atMinutes of the stage that are over when it begins
     * @param back how it is undone; empty where the steps that bring all back on undo it
     * @param dead panels and boards that are isolated when it is done
     * @param below panels and nodes that are dead with them then, since these feed them
     * @param refused what the referee has against the plant as the step leaves it; none where it allows it
     */
    public record Step(
            int number,
            String kind,
            OptionalDouble atMinutes,
            double minutes,
            String text,
            Optional<String> back,
            List<String> dead,
            List<String> below,
            List<String> refused) {}

    /** A panel as the stage leaves it. */
    public record Drawn(String panel, boolean isTwoSided, List<Slot> slots) {}

    /**
     * A slot of it.
     *
     * @param now what is in it
     * @param first slot of the breaker where this is a further pole of it; empty else
     * @param was what was in it before
     * @param changes where what is here came from, and where what was here went
     */
    public record Slot(
            int number,
            String line,
            String now,
            String first,
            String was,
            boolean isChanged,
            boolean isLeadChanged,
            String control,
            List<String> changes) {}

    /**
     * Draws one up.
     *
     * @param sets which changes each stage makes
     */
    static DraftedWork of(WorkSheets sheets, List<String> changes, List<List<Integer>> sets, boolean isByHand) {
        OrderCost cost = sheets.order().cost();
        List<Stage> stages = new ArrayList<>();
        double begin = 0;
        for (WorkSheet sheet : sheets.sheets()) {
            Stage stage = stage(sheets, sheet, sets.get(stages.size()), begin);
            stages.add(stage);
            begin += stage.minutes();
        }
        return new DraftedWork(
                isByHand,
                isByHand ? OrderText.bounds(sheets.order()) : OrderText.proven(sheets.order()),
                OrderText.headline(sheets),
                OrderText.isAlarm(sheets),
                changes,
                cost.systemOffs(),
                cost.isolations(),
                cost.mostLockedOut(),
                cost.outages(),
                sheets.order().minutes(),
                sheets.order().breaches().size(),
                stages,
                sheets.nights().stream()
                        .map(each -> new Night(
                                each.number(), each.windowMinutes(), each.stages(), each.minutes(), each.morning()))
                        .toList(),
                sheets.left(),
                sheets.outages().stream()
                        .map(each -> new Out(each.group(), each.minutes(), each.stages()))
                        .toList(),
                sheets.order().obstacles(),
                sheets.sheets().stream()
                        .flatMap(each -> each.notes().stream())
                        .distinct()
                        .toList());
    }

    private static Stage stage(WorkSheets sheets, WorkSheet sheet, List<Integer> set, double begin) {
        WorkStage stage = sheets.order().stages().get(sheet.number() - 1);
        StageRow row = sheets.rows().get(sheet.number() - 1);
        return new Stage(
                sheet.number(),
                set,
                row.system(),
                stage.deadPanels(),
                stage.deadBoards(),
                stage.deadBelow(),
                stage.lockedOut(),
                stage.standingBy(),
                sheet.told(),
                stage.minutes(),
                sheet.night(),
                sheet.nightMinutes(),
                begin,
                sheet.end().limitsBroken(),
                sheet.end().sentence(),
                refused(sheets, sheet.number(), 0),
                steps(sheets, sheet, stage),
                sheet.pictures().stream().map(DraftedWork::drawn).toList());
    }

    private static List<Step> steps(WorkSheets sheets, WorkSheet sheet, WorkStage stage) {
        List<Step> steps = new ArrayList<>();
        Set<String> dead = new LinkedHashSet<>();
        for (WorkSheet.Line line : sheet.steps()) {
            WorkStep step = stage.steps().get(steps.size());
            isolate(step, dead);
            steps.add(new Step(
                    line.number(),
                    Words.word(step.kind()),
                    line.atMinute(),
                    stage.stepMinutes().get(steps.size()),
                    line.text(),
                    line.back(),
                    List.copyOf(dead),
                    List.copyOf(Downstream.below(sheets.project(), dead)),
                    refused(sheets, sheet.number(), line.number())));
        }
        return steps;
    }

    private static void isolate(WorkStep step, Set<String> dead) {
        String what = step.panel().or(step::board).orElse("");
        if (step.kind() == WorkStepKind.ISOLATE_PANEL || step.kind() == WorkStepKind.ISOLATE_BOARD) {
            dead.add(what);
        }
        if (step.kind() == WorkStepKind.ENERGISE_PANEL || step.kind() == WorkStepKind.ENERGISE_BOARD) {
            dead.remove(what);
        }
    }

    private static List<String> refused(WorkSheets sheets, int stage, int step) {
        return sheets.order().breaches().stream()
                .filter(each -> each.stage() == stage && each.step() == step)
                .map(Breach::message)
                .distinct()
                .toList();
    }

    private static Drawn drawn(PanelPicture picture) {
        return new Drawn(
                picture.panel(),
                picture.isTwoSided(),
                picture.positions().stream()
                        .map(each -> new Slot(
                                each.number(),
                                each.line(),
                                each.now(),
                                each.first(),
                                each.was(),
                                each.isChanged(),
                                each.isControlChanged(),
                                each.control(),
                                each.changes()))
                        .toList());
    }
}
