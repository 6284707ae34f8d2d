package evenrise.model.review;

import evenrise.model.electrical.LockedRotor;
import evenrise.model.electrical.motor.FullLoadCurrent;
import evenrise.model.electrical.motor.MotorBranch;
import evenrise.model.project.Circuit;
import evenrise.model.project.Electrical;
import evenrise.model.project.Equipment;
import evenrise.model.project.Load;
import evenrise.model.project.Motor;
import evenrise.model.project.Practice;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A load that is one motor, or several equal ones behind one breaker.
 *
 * @param fullLoadAmps of one of them, as its circuit is sized; empty where neither horsepower with a table nor nameplate is
 *     stated
 */
record MotorDuty(Load load, Motor motor, int count, OptionalDouble fullLoadAmps) {
    static Optional<MotorDuty> of(Layout layout, Load load) {
        return load.equipment()
                .flatMap(Equipment::motor)
                .map(motor -> new MotorDuty(
                        load,
                        motor,
                        load.circuit().map(Circuit::devices).orElse(1),
                        fullLoadAmps(layout, load, motor)));
    }

    /** Whether motor rules go before the general ones for this load. */
    static boolean hasMotorRules(Load load, Practice practice) {
        Optional<Motor> motor = load.equipment().flatMap(Equipment::motor);
        return motor.isPresent()
                && (practice == Practice.NEC || motor.get().overloadAmps().isPresent());
    }

    /** Whether the feeder of a panel or node follows the rules of feeders with motors. */
    static boolean hasMotors(Layout layout, Point point, Practice practice) {
        return practice == Practice.NEC
                && point.transformer().isEmpty()
                && layout.nodeLoads().direct(point.index()).stream()
                        .anyMatch(each -> each.load()
                                .equipment()
                                .flatMap(Equipment::motor)
                                .isPresent());
    }

    /** Rms line current of all of them at standstill; empty where too little is stated. */
    OptionalDouble lockedRotorAmps(Layout layout) {
        if (motor.lockedRotorAmps().isPresent()) {
            return OptionalDouble.of(count * motor.lockedRotorAmps().getAsDouble());
        }
        if (motor.codeLetter().isEmpty() || motor.horsepower().isEmpty()) {
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(count
                * LockedRotor.greatestAmps(
                        motor.codeLetter().get(),
                        motor.horsepower().getAsDouble(),
                        Demand.voltAmpsPerAmp(layout, load)));
    }

    /** What the load draws with all of them at full load, and no less than it is stated to run at. */
    double lineAmps() {
        return Math.max(count * fullLoadAmps.orElse(0), load.runningAmps());
    }

    /** NEC 430.22 and 430.24, of a hoist 610.14(E): least ampacity of its conductor. */
    double conductorAmps() {
        double one = lineAmps() / count;
        return (motor.hoist() ? one : MotorBranch.conductorAmps(one)) + (count - 1) * one;
    }

    /** Largest breaker by NEC table 430.52; of several motors by 430.53(C), with the other motors. */
    double breakerAmps() {
        return ownBreakerAmps() + (count - 1) * fullLoadAmps.orElseThrow();
    }

    /** The same if one of them were alone. */
    double ownBreakerAmps() {
        return MotorBranch.breakerAmps(fullLoadAmps.orElseThrow(), motor.woundRotor());
    }

    double utmostBreakerAmps() {
        double one = fullLoadAmps.orElseThrow();
        return MotorBranch.utmostBreakerAmps(one, motor.woundRotor()) + (count - 1) * one;
    }

    /**
     * By the table, which is of NEC practice; a nameplate above it is that of a motor for low speed or high torque, for which 430.6(A)(1) takes the
     * nameplate. A hoist goes by its nameplate (610.14(E)) where one is stated.
     */
    private static OptionalDouble fullLoadAmps(Layout layout, Load load, Motor motor) {
        if (motor.hoist() && motor.nameplateAmps().isPresent()) {
            return motor.nameplateAmps();
        }
        boolean hasTable = motor.horsepower().isPresent()
                && layout.project().electrical().flatMap(Electrical::practice).stream()
                        .anyMatch(Practice.NEC::equals);
        OptionalDouble table = !hasTable
                ? OptionalDouble.empty()
                : load.poles() == 3
                        ? FullLoadCurrent.threePhaseAmps(
                                motor.horsepower().getAsDouble(), Demand.voltAmpsPerAmp(layout, load) / Math.sqrt(3))
                        : FullLoadCurrent.singlePhaseAmps(
                                motor.horsepower().getAsDouble(), Demand.voltAmpsPerAmp(layout, load));
        if (table.isEmpty() || motor.nameplateAmps().isEmpty()) {
            return table.isPresent() ? table : motor.nameplateAmps();
        }
        return OptionalDouble.of(
                Math.max(table.getAsDouble(), motor.nameplateAmps().getAsDouble()));
    }
}
