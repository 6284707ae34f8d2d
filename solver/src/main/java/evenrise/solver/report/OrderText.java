package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.project.Project;
import evenrise.solver.rework.MoveKind;
import evenrise.solver.rework.OrderCost;
import evenrise.solver.rework.WorkMinutes;
import evenrise.solver.rework.WorkOrder;
import evenrise.solver.rework.WorkStage;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.function.ToIntFunction;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** Sentences about an order of work as a whole. */
public final class OrderText {
    private static final int MOST_OUT = 5;
    private static final String NONE_CHEAPER =
            "No order of these changes has fewer stages with the system off, then fewer"
                    + " panels and boards isolated, fewer loads locked out at once, fewer outages";

    private static final List<ToIntFunction<OrderCost>> BY_WEIGHT =
            List.of(OrderCost::systemOffs, OrderCost::isolations, OrderCost::mostLockedOut, OrderCost::outages);

    private OrderText() {}

    /** In one line: how long, and how it ends. */
    public static String headline(WorkSheets sheets) {
        List<WorkSheet> all = sheets.sheets();
        if (all.isEmpty()) {
            return "Nothing is to be done.";
        }
        WorkOrder order = sheets.order();
        StageEnd end = all.get(all.size() - 1).end();
        String broken = order.breaches().isEmpty()
                ? "nothing is broken on the way that was whole before"
                : "BROKEN ON THE WAY in " + Phrase.counted(order.breaches().size(), "place") + ": see the sheets";
        return Phrase.counted(all.size(), "stage") + ", " + Math.round(order.minutes()) + " min for one crew; " + broken
                + "; "
                + (sheets.left().isEmpty()
                        ? ""
                        : "NO NIGHT LEFT for " + Phrase.counted(sheets.left().size(), "stage") + "; ")
                + (end.isWhole() ? "whole at the end." : "NOT WHOLE at the end: " + end.inShort() + ".");
    }

    /** Whether the headline is a warning. */
    public static boolean isAlarm(WorkSheets sheets) {
        List<WorkSheet> all = sheets.sheets();
        return !sheets.order().breaches().isEmpty()
                || !sheets.left().isEmpty()
                || !all.isEmpty() && !all.get(all.size() - 1).end().isWhole();
    }

    static String replayed(WorkOrder order) {
        return order.breaches().isEmpty()
                ? "Replayed step by step by the referee: nothing is broken on the way that was whole before."
                : "Replayed step by step by the referee: broken on the way, since no order was found that"
                        + " breaks nothing and keeps within the night:";
    }

    /** What is known of other orders of the same changes. */
    public static String proven(WorkOrder order) {
        if (order.isProven()) {
            return NONE_CHEAPER + ": every one was looked at.";
        }
        if (isLeast(order, 4)) {
            return "Found by rules of thumb, and proven by what each change takes off by itself: "
                    + NONE_CHEAPER.toLowerCase(Locale.ROOT) + ".";
        }
        return "Found by rules of thumb; a better order may exist. " + bounds(order);
    }

    /** What is proven of every order of these changes, beside what this one comes to. */
    public static String bounds(WorkOrder order) {
        OrderCost cost = order.cost();
        OrderCost least = order.least();
        return "Proven of every order of these changes" + (least.stages() > 1 ? " in stages as short" : "")
                + ": at least " + Phrase.counted(least.systemOffs(), "stage")
                + " with a system off (here " + cost.systemOffs() + "), "
                + Phrase.counted(least.isolations(), "isolation") + " of panels and boards (here " + cost.isolations()
                + "), " + Phrase.counted(least.outages(), "outage") + " of groups (here " + cost.outages() + ")"
                + (isLeast(order, 2)
                        ? "; where the first two are as few, at least " + Phrase.counted(least.mostLockedOut(), "load")
                                + " locked out at once (here " + cost.mostLockedOut() + ")."
                        : ".");
    }

    /** Whether no order has less of the first so many figures that orders are compared by. */
    private static boolean isLeast(WorkOrder order, int figures) {
        OrderCost cost = order.cost();
        OrderCost least = order.least();
        return BY_WEIGHT.stream()
                .limit(figures)
                .allMatch(figure -> figure.applyAsInt(cost) == figure.applyAsInt(least));
    }

    /** How long it takes, who is out longest, and which minutes nobody has stated. */
    static String duration(Project project, WorkOrder order) {
        String out = longestOut(order).stream()
                .limit(MOST_OUT)
                .map(each -> each.group() + " " + Math.round(each.minutes()) + " min")
                .collect(Collectors.joining(", "));
        return "One crew takes " + Math.round(order.minutes()) + " min" + (out.isEmpty() ? "" : "; longest out: " + out)
                + "." + usual(project);
    }

    private static String usual(Project project) {
        WorkMinutes minutes = WorkMinutes.of(project);
        return Stream.of(MoveKind.values()).anyMatch(kind -> !minutes.isStated(kind))
                ? " Minutes by kind that the project does not state in work are usual values, no source."
                : "";
    }

    /** What a cover says below the order. */
    public static List<String> remarks(WorkSheets sheets) {
        return Stream.of(
                        replayed(sheets.order()),
                        proven(sheets.order()),
                        "Minutes are for one crew, by kinds of work." + usual(sheets.project()))
                .toList();
    }

    /** A shutdown group, in words, how long it is out over all stages, and in which. */
    public record Outage(String group, double minutes, String stages) {
        public long rounded() {
            return Math.round(minutes);
        }
    }

    /** Who is out, the longest first. */
    static List<Outage> longestOut(WorkOrder order) {
        return order.outMinutes().entrySet().stream()
                .sorted(Map.Entry.<String, Double>comparingByValue()
                        .reversed()
                        .thenComparing(Map.Entry.comparingByKey()))
                .map(each -> new Outage(
                        WorkSheets.group(each.getKey()), each.getValue(), stages(order.stages(), each.getKey())))
                .toList();
    }

    private static String stages(List<WorkStage> stages, String group) {
        return IntStream.range(0, stages.size())
                .filter(i -> stages.get(i).outages().contains(group))
                .mapToObj(i -> Integer.toString(i + 1))
                .collect(Collectors.joining(", "));
    }
}
