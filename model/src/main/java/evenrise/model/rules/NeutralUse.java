package evenrise.model.rules;

import evenrise.model.electrical.Lag;
import evenrise.model.electrical.NeutralCurrent;
import evenrise.model.electrical.WorstNeutral;
import evenrise.model.project.Load;
import evenrise.model.rules.Distribution.Point;
import java.util.Collection;
import java.util.List;

/** What loads may bring to the neutral of a point, each by itself on or off. */
public final class NeutralUse {
    private NeutralUse() {}

    /** Each at the most that it draws. */
    public static List<NeutralCurrent.Share> shares(Point point, Collection<NodeLoads.Returned> returning) {
        return returning.stream()
                .map(each -> NeutralCurrent.share(
                        point.system(),
                        each.phase(),
                        each.part() * mostAmps(each.placement().load()),
                        Lag.of(each.placement().load()),
                        each.placement().load().harmonicRatio()))
                .toList();
    }

    /** At their worst use, as {@link WorstNeutral} gives it. */
    public static double worstAmps(Point point, Collection<NodeLoads.Returned> returning) {
        return WorstNeutral.of(shares(point, returning)).amps();
    }

    private static double mostAmps(Load load) {
        return Math.max(load.runningAmps(), load.idleAmps());
    }
}
