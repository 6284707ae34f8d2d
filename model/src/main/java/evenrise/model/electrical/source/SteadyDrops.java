package evenrise.model.electrical.source;

import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;

/**
 * What the steady loads of one panel drop at every point, as lengths that are added: kept from step to step, and changed by
 * what comes on.
 */
public final class SteadyDrops {
    /** Of no loads. */
    public static final SteadyDrops NONE = new SteadyDrops(new double[0], Set.of());

    private final double[] volts;
    private final Set<Terminals> used;

    private SteadyDrops(double[] volts, Set<Terminals> used) {
        this.volts = volts;
        this.used = used;
    }

    static SteadyDrops of(UnitDrops units, List<Drawn> known) {
        SteadyDrops sum = NONE;
        for (Drawn each : known) {
            sum = sum.plus(units, each);
        }
        return sum;
    }

    /** With a load more. */
    public SteadyDrops plus(UnitDrops units, Drawn more) {
        UnitDrops.Unit unit = units.of(more.panel(), more.phases());
        double amps = DipBound.star(more) * more.amps();
        double[] sums = new double[units.places()];
        for (int i = 0; i < sums.length; i++) {
            sums[i] = (isNone() ? 0 : volts[i]) + amps * unit.byZones()[i];
        }
        if (used.containsAll(unit.own())) {
            return new SteadyDrops(sums, used);
        }
        Set<Terminals> all = new LinkedHashSet<>(used);
        all.addAll(unit.own());
        return new SteadyDrops(sums, all);
    }

    boolean isNone() {
        return volts.length == 0;
    }

    /** Of none there is nothing to add. */
    void add(double part, double[] sums) {
        for (int i = 0; i < sums.length; i++) {
            sums[i] += part * volts[i];
        }
    }

    /** Terminals that its loads are fed from. */
    Set<Terminals> used() {
        return used;
    }
}
