package evenrise.model.review;

import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

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
    static Optional<MotorStarting> alone(Layout layout, List<Placement> fed) {
        MotorStarting worst = null;
        Map<Phase, Double> running = running(fed);
        for (Placement each : fed) {
            OptionalDouble lockedRotor = lockedRotorAmps(layout, each);
            for (Phase phase : each.phases()) {
                if (lockedRotor.isPresent()) {
                    double amps = running.get(phase) - useAmps(each.load()) + lockedRotor.getAsDouble();
                    worst = worst == null || amps > worst.amps() ? new MotorStarting(each.id(), phase, amps) : worst;
                }
            }
        }
        return Optional.ofNullable(worst);
    }

    /** All motors at once; empty where there are less than two. */
    static Optional<MotorStarting> together(Layout layout, List<Placement> fed) {
        List<Placement> motors = new ArrayList<>();
        Map<Phase, Double> sums = running(fed);
        for (Placement each : fed) {
            lockedRotorAmps(layout, each).ifPresent(amps -> {
                motors.add(each);
                each.phases().forEach(phase -> sums.merge(phase, amps - useAmps(each.load()), Double::sum));
            });
        }
        return motors.size() < 2
                ? Optional.empty()
                : sums.entrySet().stream()
                        .filter(each ->
                                motors.stream().anyMatch(motor -> motor.phases().contains(each.getKey())))
                        .max(Map.Entry.comparingByValue())
                        .map(most -> new MotorStarting(motors.get(0).id(), most.getKey(), most.getValue()));
    }

    static OptionalDouble lockedRotorAmps(Layout layout, Placement placement) {
        return MotorDuty.of(layout.project(), placement.load())
                .map(motor -> motor.lockedRotorAmps(layout.project()))
                .orElse(OptionalDouble.empty());
    }

    private static Map<Phase, Double> running(List<Placement> fed) {
        Map<Phase, Double> sums = new EnumMap<>(Phase.class);
        fed.forEach(each -> each.phases().forEach(phase -> sums.merge(phase, useAmps(each.load()), Double::sum)));
        return sums;
    }

    private static double useAmps(Load load) {
        return Math.max(load.runningAmps(), load.idleAmps());
    }
}
