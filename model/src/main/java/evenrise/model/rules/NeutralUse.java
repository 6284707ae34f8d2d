package evenrise.model.rules;

import evenrise.model.electrical.Lag;
import evenrise.model.electrical.NeutralCurrent;
import evenrise.model.electrical.WorstNeutral;
import evenrise.model.project.Load;
import evenrise.model.project.PhaseSystem;
import java.util.Collection;
import java.util.List;

/** What one-pole loads may bring to a neutral, each by itself on or off. */
public final class NeutralUse {
    private NeutralUse() {}

    /** Each of them at the most that it draws. */
    public static List<NeutralCurrent.Share> shares(PhaseSystem system, Collection<Placement> fed) {
        return fed.stream()
                .filter(each -> each.load().poles() == 1 && each.fits())
                .map(each -> share(system, each))
                .toList();
    }

    /** At their worst use, as {@link WorstNeutral} gives it. */
    public static double worstAmps(PhaseSystem system, Collection<Placement> fed) {
        return WorstNeutral.of(shares(system, fed)).amps();
    }

    /** Of all that returns by the neutral of a node, at its worst use. */
    static double worstAmps(Distribution.Point point, Collection<NodeLoads.Returned> returning) {
        return WorstNeutral.of(returning.stream()
                        .map(each -> NeutralCurrent.share(
                                point.system(),
                                each.phase(),
                                each.part() * mostAmps(each.placement().load()),
                                Lag.of(each.placement().load()),
                                each.placement().load().harmonicRatio()))
                        .toList())
                .amps();
    }

    private static double mostAmps(Load load) {
        return Math.max(load.runningAmps(), load.idleAmps());
    }

    private static NeutralCurrent.Share share(PhaseSystem system, Placement placement) {
        Load load = placement.load();
        return NeutralCurrent.share(
                system, placement.phases().get(0), mostAmps(load), Lag.of(load), load.harmonicRatio());
    }
}
