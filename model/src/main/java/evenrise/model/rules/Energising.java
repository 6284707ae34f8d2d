package evenrise.model.rules;

import evenrise.model.project.Phase;
import evenrise.model.project.Transformer;
import evenrise.model.rules.Distribution.Point;

/** What transformers draw by themselves when they are energised, all at once, as the points that feed them see it. */
public final class Energising {
    private final Distribution distribution;
    private final Upstream upstream;

    private Energising(Distribution distribution) {
        this.distribution = distribution;
        this.upstream = Upstream.of(distribution);
    }

    /** Time and space: points and how deep they are nested. */
    public static Energising of(Distribution distribution) {
        return new Energising(distribution);
    }

    /** By phase, what transformers below a point draw of it, some time after they were energised. */
    public double[] amps(int point, double afterSeconds) {
        double[] amps = new double[Phase.values().length];
        for (Point each : distribution.points()) {
            if (each.transformer().isEmpty()) {
                continue;
            }
            Transformer it = each.node().orElseThrow().transformer().orElseThrow();
            double left = it.energisingAmps(afterSeconds);
            for (Upstream.At at : upstream.from(each.parent())) {
                for (int phase = 0; at.point() == point && phase < amps.length; phase++) {
                    for (Phase drawn : each.transformer().get().primaryPhases()) {
                        amps[phase] += at.parts()[phase][drawn.ordinal()] * left;
                    }
                }
            }
        }
        return amps;
    }
}
