package evenrise.model.observation;

import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LineCurrents;
import evenrise.model.electrical.Phasor;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.rules.NodeLoads;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * How well samples about a moment fit what is to come on, surges, tails and angles included, and how much better if
 * something were otherwise. Steps are found blindly; this is a second look, which knows what was to come.
 */
final class Hindsight {
    /** Seconds about a moment that are looked at. */
    static final double BEFORE = 0.5;

    static final double AFTER = 0.8;

    /** Surges depend on where in a period a switch closes: they may be anything up to what is stated, and more. */
    private static final double SURGE_SPREAD = 0.7;

    /** A load without stated surge may have one of so much of its current. */
    private static final double LEAST_SURGE = 0.3;

    /** A load of which nothing is known may draw so often what is stated, and so often its surge. */
    private static final double ANY_TIMES = 10;

    private static final double ANY_SURGE_TIMES = 3;

    /** What no plan knows may draw about so much, and surge by so much. */
    private static final double ANY_AMPS = 20;

    private static final double ANY_SURGE_AMPS = 1000;

    /** Of what nothing is known surges halve in about that (common practice, no source). */
    private static final double ANY_HALF_SECONDS = 0.02;

    /** Standard deviation of that, of its logarithm; and of a stated one. */
    private static final double ANY_HALF_SPREAD = 1.2;

    private static final double HALF_SPREAD = 0.3;

    private static final double MILLIS = 1000;

    /** A tail of less than so many standard deviations of a sample is nothing. */
    private static final double NOTHING = 0.2;

    /** What falls by less, in variances, is not fitted again from where the other ended. */
    private static final double DECISIVE = 4;

    /** No better, and not understood: by that nothing is said or taken back. */
    private static final Gain NOT_LOOKED_AT = new Gain(0, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY);

    /** Some three to six times what the start of a plant of 300 loads with one fault takes. */
    private static final int MOST_FITS = 8_000;

    private final Map<Phase, double[]> amps;
    private final Map<Phase, Double> sigmas;
    private final double[] seconds;
    private final double interval;
    private final PhaseSystem system;
    private final List<NodeLoads.Seen> running = new ArrayList<>();
    private final List<Comer> comers = new ArrayList<>();
    private int fits;

    /** What comes on, and when by the logger's clock. */
    private record Comer(NodeLoads.Seen seen, String id, double seconds) {
        boolean isOn(Phase phase) {
            return seen.parts()[phase.ordinal()] > 0;
        }
    }

    /**
     * Samples of a phase beside what may have flown.
     *
     * @param cost squared deviations, in variances
     * @param perSample the same of a sample, on average
     * @param fitted null where nothing is to be seen
     * @param of what its parts are
     */
    private record Fit(double cost, double perSample, PhasorFit fitted, List<String> of) {
        Fit(PhasorFit fitted, List<String> of) {
            this(fitted.cost(), fitted.perSample(), fitted, of);
        }

        /** The better of this and what is found from where another ended, which may be a better valley. */
        Fit orFrom(Fit other) {
            if (fitted == null || other.fitted() == null) {
                return this;
            }
            List<double[]> begin = new ArrayList<>();
            for (int k = 0; k < of.size(); k++) {
                int there = other.of().indexOf(of.get(k));
                begin.add(there < 0 ? fitted.figures(k) : other.fitted().figures(there));
            }
            Fit again = new Fit(fitted.from(other.fitted().before(), begin), of);
            return again.cost() < cost ? again : this;
        }
    }

    /**
     * By how much everything about some moments is likelier if something is otherwise.
     *
     * @param costs squared deviations that are saved, in variances
     * @param perSample squared deviation of a sample of the phase that fits worst, if it is otherwise
     * @param perSampleNow the same if it is not
     */
    record Gain(double costs, double perSample, double perSampleNow) {}

    /**
     * @param amps of each phase, as they are when clamps are put right
     * @param sigmas noise of a sample of each
     */
    Hindsight(MatchedStarts reading, double[] seconds, Map<Phase, double[]> amps, Map<Phase, Double> sigmas) {
        this.seconds = seconds;
        this.amps = amps;
        this.sigmas = sigmas;
        this.interval = reading.sight().intervalSeconds();
        int point = reading.sight().point();
        this.system = reading.layout().distribution().points().get(point).system();
        Set<String> starting = new HashSet<>();
        reading.expected().forEach(each -> starting.addAll(each.loads()));
        for (NodeLoads.Seen each : reading.layout().nodeLoads().seen(point)) {
            String id = each.placement().id();
            if (starting.contains(id)) {
                double on = each.placement().onSeconds().orElseThrow();
                comers.add(new Comer(each, id, reading.clock().logger(on)));
            } else {
                running.add(each);
            }
        }
    }

    /** About moments of the logger's clock, beside what is otherwise in any case. */
    Gain gain(Set<Double> moments, Otherwise anyway, Otherwise asked) {
        if (isSpent()) {
            return NOT_LOOKED_AT;
        }
        Otherwise both = anyway.and(asked);
        Set<Double> touched = new HashSet<>(both.moved().values());
        touched.addAll(both.unknown());
        double costs = 0;
        double perSample = 0;
        double perSampleNow = 0;
        for (double[] span : spans(moments)) {
            for (Phase phase : amps.keySet()) {
                if (!asked.unknown().isEmpty() || changes(phase, asked)) {
                    Fit now = fit(phase, span, anyway, touched);
                    Fit then = fit(phase, span, both, touched);
                    if (now.cost() > then.cost() + DECISIVE) {
                        fits++;
                        now = now.orFrom(then);
                    } else if (then.cost() > now.cost() + DECISIVE) {
                        fits++;
                        then = then.orFrom(now);
                    }
                    double scatter = Math.max(1, Math.min(now.perSample(), then.perSample()));
                    costs += (now.cost() - then.cost()) / scatter;
                    perSample = Math.max(perSample, then.perSample());
                    perSampleNow = Math.max(perSampleNow, now.perSample());
                }
            }
        }
        return new Gain(costs, perSample, perSampleNow);
    }

    private boolean changes(Phase phase, Otherwise asked) {
        return comers.stream()
                .anyMatch(each -> each.isOn(phase)
                        && (asked.dead().contains(each.id())
                                || asked.free().contains(each.id())
                                || asked.moved().containsKey(each.id())));
    }

    private static List<double[]> spans(Set<Double> moments) {
        List<double[]> spans = new ArrayList<>();
        moments.stream().sorted().forEach(each -> {
            double[] last = spans.isEmpty() ? null : spans.get(spans.size() - 1);
            if (last != null && each - BEFORE <= last[1]) {
                last[1] = each + AFTER;
            } else {
                spans.add(new double[] {each - BEFORE, each + AFTER});
            }
        });
        return spans;
    }

    /** Whether so much was looked at that what is said should stay as it is: of a recording with very many faults. */
    boolean isSpent() {
        return fits >= MOST_FITS;
    }

    private Fit fit(Phase phase, double[] span, Otherwise otherwise, Set<Double> touched) {
        fits++;
        Phasor before = before(phase, span[0]);
        List<PhasorFit.Part> parts = new ArrayList<>();
        List<String> ids = new ArrayList<>();
        Set<Double> starts = new HashSet<>(touched);
        for (Comer each : comers) {
            if (each.isOn(phase)) {
                double on = otherwise.moved().getOrDefault(each.id(), each.seconds());
                starts.add(each.seconds());
                if (on < span[1] && !otherwise.dead().contains(each.id())) {
                    part(each, on, phase, span[0], before, otherwise.free().contains(each.id()), parts);
                    if (parts.size() > ids.size()) {
                        ids.add(each.id());
                    }
                }
            }
        }
        for (double each : otherwise.unknown()) {
            if (each < span[1] && each > span[0]) {
                ids.add("at " + each);
                parts.add(
                        new PhasorFit.Part(each, 0, ANY_AMPS, 0, ANY_SURGE_AMPS, ANY_HALF_SECONDS, ANY_HALF_SPREAD, 0));
            }
        }
        int[] rows = rows(span, starts);
        double[] times = new double[rows.length];
        double[] values = new double[rows.length];
        for (int k = 0; k < rows.length; k++) {
            times[k] = seconds[rows[k]] - interval / 2;
            values[k] = amps.get(phase)[rows[k]];
        }
        if (rows.length == 0) {
            return new Fit(0, 1, null, List.of());
        }
        PhasorFit fit = new PhasorFit(times, values, sigmas.get(phase), values[0], parts);
        return new Fit(fit, ids);
    }

    private void part(
            Comer comer,
            double on,
            Phase phase,
            double from,
            Phasor before,
            boolean isFree,
            List<PhasorFit.Part> parts) {
        Load load = comer.seen().placement().load();
        double idle = load.idleAmps();
        double surge = Math.max(0, load.inrushPeakAmps().orElse(0) / Math.sqrt(2) - idle);
        double half = load.inrushHalfMillis() / MILLIS;
        boolean isBefore = on < from;
        double longest = half * Math.exp(2 * HALF_SPREAD);
        if (isBefore && surge * Math.pow(2, -(from - on) / longest) < NOTHING * sigmas.get(phase)) {
            return;
        }
        LineCurrents alone = new LineCurrents(system);
        alone.add(comer.seen().placement().phases(), 1, Lag.of(load));
        double radians = before.length() > 0 ? alone.line(phase).angleRadians() - before.angleRadians() : 0;
        double least = NOTHING * sigmas.get(phase);
        parts.add(new PhasorFit.Part(
                on,
                isBefore ? 0 : idle,
                isBefore ? least : Math.max(least, (isFree ? ANY_TIMES : Likeness.SPREAD) * idle),
                surge,
                Math.max(
                        least,
                        (isFree ? ANY_SURGE_TIMES : SURGE_SPREAD) * surge + (isFree ? ANY_TIMES : LEAST_SURGE) * idle),
                half,
                HALF_SPREAD,
                radians));
    }

    /** What is planned to flow. */
    private Phasor before(Phase phase, double from) {
        LineCurrents lines = new LineCurrents(system);
        running.forEach(each -> add(lines, each));
        comers.stream().filter(each -> each.seconds() < from).forEach(each -> add(lines, each.seen()));
        return lines.line(phase);
    }

    private static void add(LineCurrents lines, NodeLoads.Seen seen) {
        Load load = seen.placement().load();
        lines.add(seen.placement().phases(), load.idleAmps(), Lag.of(load));
    }

    /** Samples within which nothing comes on. */
    private int[] rows(double[] span, Set<Double> starts) {
        int first = Arrays.binarySearch(seconds, span[0]);
        List<Integer> rows = new ArrayList<>();
        for (int i = first < 0 ? -first - 1 : first; i < seconds.length && seconds[i] <= span[1]; i++) {
            double at = seconds[i];
            boolean isClear =
                    starts.stream().noneMatch(each -> at > each - 0.5 * interval && at < each + 1.5 * interval);
            if (isClear) {
                rows.add(i);
            }
        }
        return rows.stream().mapToInt(each -> each).toArray();
    }
}
