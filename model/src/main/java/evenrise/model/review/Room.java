package evenrise.model.review;

import evenrise.model.electrical.Lag;
import evenrise.model.electrical.NeutralCurrent;
import evenrise.model.electrical.PhaseCurrents;
import evenrise.model.electrical.TransformerDraw;
import evenrise.model.electrical.WorstNeutral;
import evenrise.model.electrical.breaker.ContinuousLoad;
import evenrise.model.project.Feeder;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.Practice;
import evenrise.model.project.Supply;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NeutralUse;
import evenrise.model.rules.UseCurrents;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * What the loads of one node leave free under each limit of the node and of its feeder: of each line by sums of
 * magnitudes, of the neutral at the worst use of its loads and the one more.
 */
final class Room {
    private static final int HALVINGS = 40;

    private final Point point;
    private final PhaseCurrents lines;
    private final WorstNeutral neutral;
    private final List<Limit> lineLimits;
    private final List<Limit> neutralLimits;
    private final Map<Phase, Limit> byNeutral = new EnumMap<>(Phase.class);

    /**
     * @param of what allows no more, in words
     * @param amps in all; of what is left, how much
     */
    record Limit(String of, double amps) {
        static Limit least(List<Limit> limits) {
            return limits.stream().min(Comparator.comparingDouble(Limit::amps)).orElseThrow();
        }
    }

    /** One more load as a point sees it: parts of its current by phase, and what returns by the neutral as of one pole. */
    record Asked(double[] parts, Optional<Phase> returns, double returnedPart) {
        static Asked of(List<Phase> phases) {
            double[] parts = new double[Phase.values().length];
            phases.forEach(phase -> parts[phase.ordinal()] = 1);
            return new Asked(parts, phases.size() == 1 ? Optional.of(phases.get(0)) : Optional.empty(), 1);
        }

        /** Before a transformer, with no credit for angles. */
        Asked before(TransformerDraw transformer) {
            double[] drawn = transformer.envelope(parts);
            if (transformer.returnsByNeutral()) {
                Phase phase = transformer.primaryPhases().get(0);
                return new Asked(drawn, Optional.of(phase), drawn[phase.ordinal()]);
            }
            return transformer.passesNeutralOn()
                    ? new Asked(drawn, returns, transformer.ratio() * returnedPart)
                    : new Asked(drawn, Optional.empty(), 0);
        }
    }

    private Room(Layout layout, Point point, UseCurrents use, List<Limit> lineLimits, List<Limit> neutralLimits) {
        this(
                point,
                use.running(point),
                WorstNeutral.of(NeutralUse.shares(point, layout.nodeLoads().returning(point.index()))),
                lineLimits,
                neutralLimits);
    }

    private Room(
            Point point, PhaseCurrents lines, WorstNeutral neutral, List<Limit> lineLimits, List<Limit> neutralLimits) {
        this.point = point;
        this.lines = lines;
        this.neutral = neutral;
        this.lineLimits = lineLimits;
        this.neutralLimits = neutralLimits;
    }

    /**
     * The rooms of a plant.
     *
     * @param at of every point: the supply, the panels, further nodes
     * @param before of the feeders of transformers on their primary sides, by the transformer's place
     */
    record All(List<Room> at, Map<Integer, Room> before) {}

    static All all(Layout layout) {
        UseCurrents use = UseCurrents.of(layout, load -> lineAmps(layout, load));
        Map<Integer, Room> before = new HashMap<>();
        List<Room> at = new ArrayList<>();
        for (Point point : layout.distribution().points()) {
            at.add(point.isSupply() ? ofSupply(layout, point, use) : of(layout, point, use));
            if (point.transformer().isPresent()) {
                primary(layout, point, use).ifPresent(room -> before.put(point.index(), room));
            }
        }
        return new All(at, before);
    }

    /** Of a transformer's feeder, its neutral not counted. */
    private static Optional<Room> primary(Layout layout, Point point, UseCurrents use) {
        List<Limit> limits = new ArrayList<>(feederLimits(layout, point));
        if (limits.isEmpty()) {
            return Optional.empty();
        }
        Point above = layout.distribution().points().get(point.parent());
        PhaseCurrents lines = new PhaseCurrents(above.system());
        use.feederAmps(point).forEach((phase, amps) -> lines.add(List.of(phase), amps));
        return Optional.of(new Room(
                above,
                lines,
                WorstNeutral.of(List.of()),
                limits,
                List.of(new Limit("no neutral", Double.POSITIVE_INFINITY))));
    }

    private static List<Limit> feederLimits(Layout layout, Point point) {
        List<Limit> limits = new ArrayList<>();
        String what = point.transformer().isPresent() ? " of its transformer" : "";
        point.feeder()
                .ifPresent(feeder -> limits.add(
                        new Limit("the feeder's device" + what, deviceAmps(layout, feeder, Feeders.ratedAmps(point)))));
        FeederCable.of(layout, point)
                .ifPresent(cable -> limits.add(new Limit("the feeder's cable" + what, cable.lineAmps())));
        return limits;
    }

    private static Room ofSupply(Layout layout, Point point, UseCurrents use) {
        Supply supply = layout.project().supply();
        return new Room(
                layout,
                point,
                use,
                List.of(new Limit("the supply's rating", supply.continuousAmps())),
                List.of(new Limit("the supply's neutral", supply.neutralAmps())));
    }

    /** Under its own limits, those of its transformer and those of its feeder, as far as they are stated. */
    private static Room of(Layout layout, Point point, UseCurrents use) {
        List<Limit> lines = new ArrayList<>();
        List<Limit> neutrals = new ArrayList<>();
        String whose = point.panel().isPresent() ? "the panel's" : "the distribution point's";
        lines.add(new Limit(whose + " rating", point.ratedAmps() * ContinuousPart.judged(layout, point)));
        neutrals.add(new Limit(whose + " neutral", point.ratedAmps() * point.neutralFactor()));
        RatedTransformer.of(point)
                .ifPresent(it -> lines.add(new Limit("the rating of its transformer", it.secondaryAmps())));
        if (point.transformer().isEmpty()) {
            lines.addAll(feederLimits(layout, point));
            FeederCable.of(layout, point)
                    .ifPresent(
                            cable -> neutrals.add(new Limit("the neutral of the feeder's cable", cable.neutralAmps())));
        }
        return new Room(layout, point, use, lines, neutrals);
    }

    /** Of a motor by NEC practice no less than the full load that its circuit is sized by (430.6(A)(1), 430.24). */
    private static double lineAmps(Layout layout, Load load) {
        double sized = FeederCable.practices(layout).contains(Practice.NEC)
                ? MotorDuty.of(layout, load)
                        .filter(motor -> motor.fullLoadAmps().isPresent())
                        .map(MotorDuty::lineAmps)
                        .orElse(0.0)
                : 0;
        return Math.max(load.runningAmps(), sized);
    }

    private static double deviceAmps(Layout layout, Feeder feeder, double ratedAmps) {
        boolean isNec = FeederCable.practices(layout).contains(Practice.NEC);
        double rating = feeder.breakerAmps().orElse(ratedAmps);
        return rating / ContinuousLoad.necAmps(1, isNec, feeder.fullyRated());
    }

    /** What limits every line. */
    Limit line() {
        return Limit.least(lineLimits);
    }

    /** What is left on one line; below 0 where it carries too much. */
    double leftAmps(Phase phase) {
        return line().amps() - lines.amps(phase);
    }

    /** What one more load may draw, in its own current; of one pole at power factor 1, without harmonics. */
    Limit left(Asked asked) {
        double least = Double.POSITIVE_INFINITY;
        for (Phase phase : point.system().phases()) {
            double part = asked.parts()[phase.ordinal()];
            least = part > 0 ? Math.min(least, leftAmps(phase) / part) : least;
        }
        Limit line = new Limit(line().of(), least);
        if (asked.returns().isEmpty() || line.amps() <= 0) {
            return line;
        }
        double part = asked.returnedPart();
        Limit beside = byNeutral.computeIfAbsent(
                asked.returns().get(), phase -> byNeutral(phase, Math.max(0, leftAmps(phase))));
        return beside.amps() / part < line.amps() ? new Limit(beside.of(), beside.amps() / part) : line;
    }

    /** @param mostAmps beyond which it need not be known */
    private Limit byNeutral(Phase phase, double mostAmps) {
        Limit limit = Limit.least(neutralLimits);
        NeutralCurrent.Share one = NeutralCurrent.share(point.system(), phase, 1, Lag.NONE, 0);
        if (neutral.with(one, mostAmps).isWithin(limit.amps())) {
            return new Limit(limit.of(), mostAmps);
        }
        double kept = 0;
        double over = mostAmps;
        for (int i = 0; i < HALVINGS; i++) {
            double middle = (kept + over) / 2;
            if (neutral.with(one, middle).isWithin(limit.amps())) {
                kept = middle;
            } else {
                over = middle;
            }
        }
        return new Limit(limit.of(), kept);
    }
}
