package evenrise.model.event;

import evenrise.model.electrical.PhaseAngle;
import evenrise.model.electrical.Phasor;
import evenrise.model.electrical.TransformerDraw;
import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Upstream;
import java.util.List;

/**
 * What feeds what at one instant, and the voltage of each phase of each point, of its nominal one. Behind a transformer
 * that has lost a primary line the voltage depends on how: {@link #least} takes the line to be open, {@link #most} to be
 * at earth. Elsewhere the two are the same.
 */
final class Grid {
    private static final int PHASES = Phase.values().length;
    /** A winding in series with another that is like it. */
    private static final double HALF_PERCENT = 50;

    final Distribution distribution;
    private final Upstream upstream;
    private final double[][] least;
    private final double[][] most;
    /** What reaches each point's feeder: of a transformer its primary, behind whatever protects it. */
    private final double[][] incoming;

    private final Phasor[][] volts;
    private final boolean[] openLoads;

    /**
     * @param percent of each point and phase: of a source its voltage, of any other what its feeder passes on
     * @param openLoads loads whose breaker has tripped
     */
    Grid(Distribution distribution, Upstream upstream, double[][] percent, boolean[] openLoads) {
        this.distribution = distribution;
        this.upstream = upstream;
        this.openLoads = openLoads.clone();
        int count = distribution.points().size();
        least = new double[count][PHASES];
        most = new double[count][PHASES];
        incoming = new double[count][PHASES];
        volts = new Phasor[count][];
        for (int at : distribution.topDown()) {
            energise(distribution.points().get(at), percent[at]);
        }
    }

    List<Upstream.At> path(int point) {
        return upstream.from(point);
    }

    /** Least voltage of a phase of a point, in percent. */
    double least(int point, int phase) {
        return least[point][phase];
    }

    /** Most voltage of a phase of a point, in percent. */
    double most(int point, int phase) {
        return most[point][phase];
    }

    /** Least voltage of a phase of what feeds a point, behind the point's own protection. */
    double incoming(int point, int phase) {
        return incoming[point][phase];
    }

    /** Whether the load's breaker has tripped. */
    boolean isOpen(int load) {
        return openLoads[load];
    }

    /** Whether no phase of a point is alive. */
    boolean isDead(int point) {
        return distribution.points().get(point).system().phases().stream()
                .noneMatch(phase -> most[point][phase.ordinal()] > 0);
    }

    private void energise(Point point, double[] percent) {
        int at = point.index();
        double[] low = new double[PHASES];
        double[] high = new double[PHASES];
        Phasor[] fed = new Phasor[PHASES];
        for (int phase = 0; phase < PHASES; phase++) {
            boolean isRoot = point.parent() < 0;
            low[phase] = isRoot ? percent[phase] : least[point.parent()][phase] * (percent[phase] / 100);
            high[phase] = isRoot ? percent[phase] : most[point.parent()][phase] * (percent[phase] / 100);
            fed[phase] = isRoot
                    ? Phasor.polar(percent[phase] / 100, PhaseAngle.radians(point.system(), Phase.values()[phase]))
                    : volts[point.parent()][phase].times(percent[phase] / 100);
        }
        incoming[at] = low;
        if (point.transformer().isEmpty()) {
            least[at] = low;
            most[at] = high;
            volts[at] = fed;
            return;
        }
        TransformerDraw transformer = point.transformer().get();
        volts[at] = transformer.voltages(fed);
        Phasor[] lowest = transformer.voltages(scaled(fed, low));
        for (Phase phase : point.system().phases()) {
            int p = phase.ordinal();
            most[at][p] = percent(volts[at][p]);
            least[at][p] =
                    Math.min(Math.min(most[at][p], percent(lowest[p])), throughOpenLines(transformer, phase, low));
        }
    }

    private static Phasor[] scaled(Phasor[] volts, double[] percent) {
        Phasor[] scaled = new Phasor[PHASES];
        for (int phase = 0; phase < PHASES; phase++) {
            double length = volts[phase].length();
            scaled[phase] = length > 0 ? volts[phase].times(percent[phase] / 100 / length) : Phasor.ZERO;
        }
        return scaled;
    }

    /** What is left of a phase behind lines that are open instead of at earth; no bound where none is. */
    private static double throughOpenLines(TransformerDraw transformer, Phase phase, double[] low) {
        long dead = transformer.windingPhases(phase).stream()
                .filter(each -> low[each.ordinal()] <= 0)
                .count();
        if (dead == 0) {
            return Double.POSITIVE_INFINITY;
        }
        long deadInAll = transformer.primaryPhases().stream()
                .filter(each -> low[each.ordinal()] <= 0)
                .count();
        return transformer.isDelta() && deadInAll == 1 ? HALF_PERCENT : 0;
    }

    /** Cleared of what computing with angles leaves. */
    private static double percent(Phasor volts) {
        return Math.round(volts.length() * 100 * 1e9) / 1e9;
    }
}
