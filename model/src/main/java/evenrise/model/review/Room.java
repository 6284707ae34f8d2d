package evenrise.model.review;

import evenrise.model.electrical.Lag;
import evenrise.model.electrical.NeutralCurrent;
import evenrise.model.electrical.PhaseCurrents;
import evenrise.model.electrical.WorstNeutral;
import evenrise.model.electrical.breaker.ContinuousLoad;
import evenrise.model.project.Feeder;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.project.Supply;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NeutralUse;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What the loads of one node leave free under each limit of the node and of its feeder: of each line by sums of
 * magnitudes, of the neutral at the worst use of its loads and the one more.
 */
final class Room {
    private static final int HALVINGS = 40;

    private final PhaseSystem system;
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

    private Room(Layout layout, List<Placement> fed, List<Limit> lineLimits, List<Limit> neutralLimits) {
        this.system = layout.project().supply().system();
        this.lines = new PhaseCurrents(system);
        fed.forEach(each -> lines.add(each.phases(), lineAmps(layout, each.load())));
        this.neutral = WorstNeutral.of(NeutralUse.shares(system, fed));
        this.lineLimits = lineLimits;
        this.neutralLimits = neutralLimits;
    }

    static Room ofSupply(Layout layout) {
        Supply supply = layout.project().supply();
        return new Room(
                layout,
                layout.placements().stream().filter(Placement::fits).toList(),
                List.of(new Limit("the supply's rating", supply.continuousAmps())),
                List.of(new Limit("the supply's neutral", supply.neutralAmps())));
    }

    /** Under the panel's own limits and those of its feeder, as far as they are stated. */
    static Room of(Layout layout, Panel panel) {
        List<Limit> lines = new ArrayList<>();
        List<Limit> neutrals = new ArrayList<>();
        lines.add(new Limit("the panel's rating", panel.ratedAmps() * ContinuousPart.judged(layout, panel)));
        neutrals.add(new Limit("the panel's neutral", panel.neutralAmps()));
        panel.feeder()
                .ifPresent(feeder ->
                        lines.add(new Limit("the feeder's device", deviceAmps(layout, feeder, panel.ratedAmps()))));
        FeederCable.of(layout, panel).ifPresent(cable -> {
            lines.add(new Limit("the feeder's cable", cable.lineAmps()));
            neutrals.add(new Limit("the neutral of the feeder's cable", cable.neutralAmps()));
        });
        return new Room(layout, layout.in(panel), lines, neutrals);
    }

    /** Of a motor by NEC practice no less than the full load that its circuit is sized by (430.6(A)(1), 430.24). */
    private static double lineAmps(Layout layout, Load load) {
        double sized = FeederCable.practices(layout).contains(Practice.NEC)
                ? MotorDuty.of(layout.project(), load)
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

    /** What one more load on these phases may draw on each; of one pole at power factor 1, without harmonics. */
    Limit left(List<Phase> phases) {
        Limit line = new Limit(
                line().of(), phases.stream().mapToDouble(this::leftAmps).min().orElse(0));
        if (phases.size() > 1 || line.amps() <= 0) {
            return line;
        }
        Limit beside = byNeutral.computeIfAbsent(phases.get(0), phase -> byNeutral(phase, line.amps()));
        return beside.amps() < line.amps() ? beside : line;
    }

    /** @param mostAmps beyond which it need not be known */
    private Limit byNeutral(Phase phase, double mostAmps) {
        Limit limit = Limit.least(neutralLimits);
        NeutralCurrent.Share one = NeutralCurrent.share(system, phase, 1, Lag.NONE, 0);
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
