package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Cautions;
import evenrise.model.project.Project;
import evenrise.solver.rework.Front;
import evenrise.solver.rework.FrontPoint;
import evenrise.solver.rework.MoveKind;
import evenrise.solver.rework.NightCost;
import evenrise.solver.rework.NightLimits;
import evenrise.solver.rework.OrderChoice;
import evenrise.solver.rework.OtherOrders;
import evenrise.solver.rework.WorkOrder;
import java.util.ArrayList;
import java.util.List;

/** What a rework comes to, for the screen. */
public final class ReworkText {
    private ReworkText() {}

    /**
     * @param notes what was taken from the readings, and what else is to be known
     * @param others orders for more loads at once than the least, with what they cost
     */
    public static List<String> lines(
            Project project,
            List<String> notes,
            Front front,
            FrontPoint chosen,
            WorkSheets sheets,
            OtherOrders others,
            NightLimits night,
            Paint paint) {
        WorkOrder order = sheets.order();
        List<List<String>> sections = new ArrayList<>();
        Section head = new Section(paint, "Rework of " + project.name());
        head.text(front.asBuilt().violations() == 0 ? Tone.GOOD : Tone.BAD, state(front));
        notes.forEach(head::item);
        sections.add(head.lines());
        sections.add(front(front, chosen, paint));
        sections.add(order(project, chosen, order, others, night, paint));
        if (!night.windowsMinutes().isEmpty() && !order.stages().isEmpty()) {
            sections.add(NightsText.lines(sheets, paint));
        }
        sections.add(CautionText.lines(Cautions.ALL, paint));
        return Sections.joined(sections);
    }

    /** What the plan as built breaks and what was found to cure it. */
    public static String state(Front front) {
        int now = front.asBuilt().violations();
        int then = front.cureOnly().violations();
        String cure = Phrase.counted(front.cureOnly().moves(), "move");
        if (front.isGiven()) {
            return "The plan as built breaks hard rules in " + Phrase.counted(now, "place") + ", the plan given in "
                    + Phrase.counted(then, "place") + ". Nothing was searched for: fewer moves may do as much."
                    + atLeast(front);
        }
        if (now == 0) {
            return "The plan as built keeps every hard rule; moves only make it better.";
        } else if (then == 0) {
            return "The plan as built breaks hard rules in " + Phrase.counted(now, "place") + ". " + cure
                    + (front.cureOnly().moves() == 1 ? " cures" : " cure")
                    + " all of them" + fewer(front);
        } else if (then == now) {
            return "The plan as built breaks hard rules in " + Phrase.counted(now, "place")
                    + ". No plan was found that breaks fewer and nothing else.";
        }
        return "The plan as built breaks hard rules in " + Phrase.counted(now, "place")
                + ". No plan was found that keeps them all; with " + cure + " " + Phrase.counted(then, "place")
                + " stay broken.";
    }

    private static String fewer(Front front) {
        FrontPoint fewest = front.fewestMoves();
        return (fewest.moves() < front.cureOnly().moves()
                        ? "; " + fewest.moves() + " would, too, and cost more of a night."
                        : "; nothing less was found to do so.")
                + atLeast(front);
    }

    /** What is proven beside what was found. */
    private static String atLeast(Front front) {
        if (front.leastMoves() == 0) {
            return "";
        }
        return front.isFewestProven()
                ? " Proven: at least " + Phrase.counted(front.leastMoves(), "move") + ", so no plan takes fewer."
                : " Proven: at least " + Phrase.counted(front.leastMoves(), "move")
                        + ", whatever the plan that keeps every rule.";
    }

    private static List<String> front(Front front, FrontPoint chosen, Paint paint) {
        Section section = new Section(paint, "What a night costs, against the objective");
        Table table = new Table()
                .words("")
                .number("moves")
                .number("breakers")
                .number("leads")
                .number("set")
                .number("dead")
                .number("off")
                .number("min")
                .number("broken")
                .number("object.")
                .number("spare %")
                .words("plan");
        row(table, "built", front.asBuilt(), "-", isAsBuilt(chosen));
        PlanNames names = PlanNames.of(front, chosen);
        for (FrontPoint each : PlanNames.shown(front, chosen)) {
            if (!isAsBuilt(each)) {
                row(table, label(front, each), each, names.of(each).replace(".json", ""), each == chosen);
            }
        }
        section.table(table);
        section.text(
                "Moves are breakers (in their panel + to another + new) and control leads; set are boards and outputs;"
                        + " dead are panels and boards, off systems, min minutes, for all of it in one go. Spare is what the"
                        + " fullest line has left. > marks the plan chosen; --per-move and --max-moves choose another.");
        return section.lines();
    }

    /** What a plan of the front is in it, in a word or two; empty for what lies between. */
    public static String label(Front front, FrontPoint point) {
        if (front.isGiven()) {
            return "given";
        }
        if (point == front.cureOnly() && point.moves() > 0) {
            return "cure";
        }
        if (point == front.fewestMoves()) {
            return "fewest moves";
        }
        return point == front.points().get(front.points().size() - 1) ? "best found" : "";
    }

    private static boolean isAsBuilt(FrontPoint point) {
        return point.moves() == 0
                && point.changes().settingsInAll() == 0
                && point.changes().removals().isEmpty();
    }

    private static void row(Table table, String label, FrontPoint point, String plan, boolean isChosen) {
        NightCost night = point.night();
        table.row(
                isChosen ? Tone.HEADING : Tone.PLAIN,
                (isChosen ? "> " : "  ") + label,
                Integer.toString(point.moves()),
                night.count(MoveKind.SAME_PANEL) + "+" + night.count(MoveKind.OTHER_PANEL) + "+"
                        + night.count(MoveKind.NEW_CIRCUIT),
                Integer.toString(point.changes().leads()),
                Integer.toString(point.changes().settingsInAll()),
                Integer.toString(night.count(MoveKind.ISOLATION)),
                Integer.toString(night.count(MoveKind.SHUTDOWN)),
                Long.toString(Math.round(point.minutes())),
                Integer.toString(point.violations()),
                Numbers.amps(point.objective()),
                Numbers.amps(point.marginPercent()),
                plan);
    }

    private static List<String> order(
            Project project, FrontPoint chosen, WorkOrder order, OtherOrders others, NightLimits night, Paint paint) {
        Section section = new Section(
                paint, "Order of work for the plan chosen (" + Phrase.counted(chosen.moves(), "move") + ")");
        if (order.stages().isEmpty()) {
            return section.text("Nothing is to be done.").lines();
        }
        Table table = new Table()
                .number("stage")
                .words("system")
                .number("locked out")
                .number("off besides")
                .words("isolated")
                .number("steps")
                .number("min")
                .number("broken after")
                .text("out meanwhile");
        for (StageRow each : StageRow.of(order.stages())) {
            table.row(
                    Integer.toString(each.number()),
                    each.system(),
                    Integer.toString(each.lockedOut()),
                    each.besides(),
                    each.isolated(),
                    Integer.toString(each.steps()),
                    Long.toString(each.minutes()),
                    Integer.toString(each.brokenAfter()),
                    each.outInShort());
        }
        section.table(table);
        section.text(OrderText.duration(project, order));
        section.text(order.breaches().isEmpty() ? Tone.GOOD : Tone.BAD, OrderText.replayed(order));
        order.breaches().stream()
                .limit(10)
                .forEach(breach -> section.item("stage " + breach.stage()
                        + (breach.step() > 0 ? ", step " + breach.step() : "") + ": " + breach.message()));
        section.text(OrderText.proven(order));
        if (order.cost().systemOffs() > 0) {
            section.text("--keep-running looks for plans that leave alone what needs the system off.");
        }
        if (!order.obstacles().isEmpty()) {
            section.text("Why a stage is not smaller:");
            order.obstacles().forEach(section::item);
        }
        others.inOneGo().ifPresent(whole -> {
            section.text("No stage is longer than a shift of " + Math.round(OrderChoice.SHIFT_MINUTES)
                    + " min (common practice, no source; --night states others), and each leaves the plant no worse than it"
                    + " was. In one go, which counts as cheaper since the system, a panel or a board is off less often"
                    + " (--night " + Math.round(Math.ceil(whole.longestMinutes()))
                    + "), it would be as in the second row:");
            section.table(costs(List.of(order, whole)));
        });
        boolean isInParts = others.inOneGo().isPresent() || others.leastStages() > 1;
        if (isInParts && order.breaches().isEmpty()) {
            section.text(
                    others.leastStages() >= order.stages().size()
                            ? "Proven by minutes: no order whose stages are as short has fewer stages."
                            : "Proven by minutes: at least " + Phrase.counted(others.leastStages(), "stage")
                                    + " as short as that.");
        }
        if (others.inOneGo().isEmpty()
                && night.windowsMinutes().isEmpty()
                && order.longestMinutes() > OrderChoice.SHIFT_MINUTES) {
            section.text("A stage is longer than a shift of " + Math.round(OrderChoice.SHIFT_MINUTES)
                    + " min (common practice, no source). No order with shorter stages was found that leaves the plant no"
                    + " worse than it was after each.");
        }
        if (!others.moreAtOnce().isEmpty()) {
            section.text("With more loads locked out at once (--dead-at-once):");
            List<WorkOrder> all = new ArrayList<>(List.of(order));
            all.addAll(others.moreAtOnce());
            section.table(costs(all));
        }
        return section.lines();
    }

    private static Table costs(List<WorkOrder> orders) {
        Table table = new Table()
                .number("locked out at once")
                .number("stages")
                .number("longest, min")
                .number("system off")
                .number("isolations")
                .number("outages of groups");
        orders.forEach(each -> table.row(cost(each)));
        return table;
    }

    private static String[] cost(WorkOrder order) {
        return new String[] {
            Integer.toString(order.cost().mostLockedOut()),
            Integer.toString(order.cost().stages()),
            Long.toString(Math.round(order.longestMinutes())),
            Integer.toString(order.cost().systemOffs()),
            Integer.toString(order.cost().isolations()),
            Integer.toString(order.cost().outages())
        };
    }
}
