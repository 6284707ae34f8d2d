package evenrise.model.validation;

import evenrise.model.electrical.motor.FullLoadCurrent;
import evenrise.model.electrical.motor.MotorBranch;
import evenrise.model.electrical.motor.MotorFeeder;
import java.util.List;

/** Outside values of circuits of motors. */
final class MotorChecks extends CheckList {
    private static final String CIRCUITS = "Circuits of motors";
    private static final String FORUM =
            "worked on an inspectors' forum, thread 53887 (NEC 430.22, 430.24, 430.52, 430.62)";
    private static final String EXAMINATION = "worked on an examination page (NEC 430.22, 430.24, 430.52)";
    private static final String ANNEX = "NEC annex D8, recalled; arithmetic by hand";
    private static final String BY_HAND = "table 430.250, read in five copies; computed by hand from the percentage";

    static List<Check> all() {
        MotorChecks table = new MotorChecks();
        table.branches();
        table.feeders();
        return List.copyOf(table.checks);
    }

    private void branches() {
        branch("5 hp, 230 V, one phase", FullLoadCurrent.singlePhaseAmps(5, 230).getAsDouble(), 35, 70, EXAMINATION);
        branch("100 hp, 460 V", FullLoadCurrent.threePhaseAmps(100, 460).getAsDouble(), 155, 350, FORUM);
        branch("10 hp, 208 V", FullLoadCurrent.threePhaseAmps(10, 208).getAsDouble(), 38.5, 80, BY_HAND);
        branch("3 hp, 208 V", FullLoadCurrent.threePhaseAmps(3, 208).getAsDouble(), 13.25, 30, BY_HAND);
        one(
                "largest breaker at all",
                "10 hp, 208 V, 400 %",
                123.2,
                MotorBranch.utmostBreakerAmps(30.8, false),
                BY_HAND);
        one("overload setting", "nameplate 32 A, service factor 1.15", 40, MotorBranch.overloadAmps(32, 1.15), ANNEX);
        one("overload setting", "nameplate 38 A, service factor 1.15", 47.5, MotorBranch.overloadAmps(38, 1.15), ANNEX);
    }

    private void feeders() {
        MotorFeeder annex = new MotorFeeder();
        annex.addMotor(34, 110);
        annex.addMotor(40, 60);
        annex.addMotor(40, 60);
        String fuses = "25 hp with a fuse of 110 A, two wound rotors of 30 hp, 460 V";
        one("feeder's conductor", fuses, 124, annex.conductorAmps(), ANNEX);
        one("feeder's device", fuses, 175, annex.standardDeviceAmps(), ANNEX);
        MotorFeeder forum = new MotorFeeder();
        forum.addMotor(124, MotorBranch.breakerAmps(124, false));
        forum.addMotor(124, MotorBranch.breakerAmps(124, false));
        forum.addMotor(77, MotorBranch.breakerAmps(77, false));
        forum.addMotor(11, MotorBranch.breakerAmps(11, false));
        String motors = "124, 124, 77 and 11 A";
        one("feeder's conductor", motors, 367, forum.conductorAmps(), FORUM);
        one("feeder's device", motors, 500, forum.standardDeviceAmps(), FORUM);
    }

    private void branch(String inputs, double fullLoad, double conductor, double breaker, String source) {
        one("conductor", inputs, conductor, MotorBranch.conductorAmps(fullLoad), source);
        one("breaker", inputs, breaker, MotorBranch.breakerAmps(fullLoad, false), source);
    }

    private void one(String quantity, String inputs, double expected, double ours, String source) {
        number(CIRCUITS, quantity, inputs, expected, 1e-6, "A", ours, source);
    }
}
