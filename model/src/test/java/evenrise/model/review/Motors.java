package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;

import evenrise.model.LoadBuilder;
import evenrise.model.project.Equipment;
import evenrise.model.project.Load;
import evenrise.model.project.Motor;
import evenrise.model.project.MotorBuilder;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Loads that are motors, for tests. */
final class Motors {
    private Motors() {}

    /** Three poles at 208 V, unswitched. */
    static LoadBuilder threePhase(String id, MotorBuilder motor) {
        return motor(aLoad(id).threePole(), motor.build());
    }

    static LoadBuilder motor(LoadBuilder load, Motor motor) {
        return load.unswitched().equipment(Equipment.builder().motor(motor).build());
    }

    static MotorBuilder horsepower(double horsepower) {
        return Motor.builder().horsepower(horsepower);
    }

    /** The same plan, where every second load is a motor that draws so many times its running current at standstill. */
    static Layout everySecond(Layout layout, double times, double powerFactor) {
        List<Load> loads = new ArrayList<>();
        for (Load each : layout.project().loads()) {
            Motor motor = Motor.builder()
                    .lockedRotorAmps(times * each.runningAmps())
                    .lockedRotorPowerFactor(powerFactor)
                    .build();
            loads.add(
                    loads.size() % 2 == 0
                            ? each.withEquipment(
                                    Optional.of(Equipment.builder().motor(motor).build()))
                            : each);
        }
        return Layout.of(layout.project().withLoads(loads), layout.plan());
    }
}
