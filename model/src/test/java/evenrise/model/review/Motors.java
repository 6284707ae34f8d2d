package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;

import evenrise.model.LoadBuilder;
import evenrise.model.project.Equipment;
import evenrise.model.project.Motor;
import evenrise.model.project.MotorBuilder;

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
}
