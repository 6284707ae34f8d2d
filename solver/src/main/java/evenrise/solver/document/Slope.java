package evenrise.solver.document;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * A figure as a part of its limit, before and now.
 *
 * @param percentBefore above 100 where the limit is exceeded, as {@code percentNow}
 */
public record Slope(String place, String figure, double percentBefore, double percentNow) {
    private static final int MOST = 14;
    /** In percent: less is not seen. */
    private static final double SAME = 0.05;

    /** Those that changed, the tightest of either time first. */
    static List<Slope> of(PlanState before, PlanState now) {
        Map<List<String>, Margin> had = new LinkedHashMap<>();
        before.tables().margins().rows().forEach(each -> had.putIfAbsent(List.of(each.place(), each.what()), each));
        return now.tables().margins().rows().stream()
                .filter(each -> had.containsKey(List.of(each.place(), each.what())))
                .map(each -> new Slope(
                        each.place(),
                        each.what(),
                        had.get(List.of(each.place(), each.what())).usedPercent(),
                        each.usedPercent()))
                .filter(each -> Math.abs(each.percentNow - each.percentBefore) >= SAME)
                .sorted(Comparator.comparingDouble(Slope::most).reversed())
                .limit(MOST)
                .toList();
    }

    private double most() {
        return Math.max(percentBefore, percentNow);
    }

    public boolean isTighter() {
        return percentNow > percentBefore;
    }
}
