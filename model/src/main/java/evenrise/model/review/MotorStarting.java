package evenrise.model.review;

import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLoads;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * What one line of a node carries when motors start while all else runs: locked-rotor currents and the others' greater of
 * running and idle current, rms, added as numbers; an upper bound at nominal voltage, without the offset that an unlucky
 * closing angle adds in the first cycles.
 *
 * @param motor the one that starts; of several the first
 */
record MotorStarting(String motor, Phase phase, double amps) {
    /** The crest of a sine. */
    double peakAmps() {
        return Math.sqrt(2) * amps;
    }

    /** The worst start of a single motor; empty where no motor's locked-rotor current is known. */
    static Optional<MotorStarting> alone(Layout layout, List<NodeLoads.Seen> fed) {
        MotorStarting worst = null;
        Map<Phase, Double> running = running(fed);
        for (NodeLoads.Seen seen : fed) {
            Placement each = seen.placement();
            OptionalDouble lockedRotor = lockedRotorAmps(layout, each);
            for (Phase phase : phases(seen)) {
                if (lockedRotor.isPresent()) {
                    double part = seen.parts()[phase.ordinal()];
                    double amps = running.get(phase) - part * useAmps(each.load()) + part * lockedRotor.getAsDouble();
                    worst = worst == null || amps > worst.amps() ? new MotorStarting(each.id(), phase, amps) : worst;
                }
            }
        }
        return Optional.ofNullable(worst);
    }

    /** All motors at once; empty where there are less than two. */
    static Optional<MotorStarting> together(Layout layout, List<NodeLoads.Seen> fed) {
        List<NodeLoads.Seen> motors = new ArrayList<>();
        Map<Phase, Double> sums = running(fed);
        for (NodeLoads.Seen each : fed) {
            lockedRotorAmps(layout, each.placement()).ifPresent(amps -> {
                motors.add(each);
                double more = amps - useAmps(each.placement().load());
                phases(each).forEach(phase -> sums.merge(phase, each.parts()[phase.ordinal()] * more, Double::sum));
            });
        }
        return motors.size() < 2
                ? Optional.empty()
                : sums.entrySet().stream()
                        .filter(each ->
                                motors.stream().anyMatch(motor -> phases(motor).contains(each.getKey())))
                        .max(Map.Entry.comparingByValue())
                        .map(most -> new MotorStarting(motors.get(0).placement().id(), most.getKey(), most.getValue()));
    }

    static OptionalDouble lockedRotorAmps(Layout layout, Placement placement) {
        return MotorDuty.of(layout, placement.load())
                .map(motor -> motor.lockedRotorAmps(layout))
                .orElse(OptionalDouble.empty());
    }

    private static Map<Phase, Double> running(List<NodeLoads.Seen> fed) {
        Map<Phase, Double> sums = new EnumMap<>(Phase.class);
        fed.forEach(each -> phases(each)
                .forEach(phase -> sums.merge(
                        phase,
                        each.parts()[phase.ordinal()] * useAmps(each.placement().load()),
                        Double::sum)));
        return sums;
    }

    /** At the node: those of its poles in their order, or those that a transformer draws from. */
    private static List<Phase> phases(NodeLoads.Seen seen) {
        return Stream.concat(seen.placement().phases().stream(), Stream.of(Phase.values()))
                .distinct()
                .filter(phase -> seen.parts()[phase.ordinal()] > 0)
                .toList();
    }

    private static double useAmps(Load load) {
        return Math.max(load.runningAmps(), load.idleAmps());
    }
}
