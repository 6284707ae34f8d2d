package evenrise.model.rules;

import evenrise.model.plan.Plan;
import evenrise.model.project.Equipment;
import evenrise.model.project.Load;
import evenrise.model.project.Motor;
import evenrise.model.project.MotorRotation;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import java.util.List;
import java.util.Optional;

/**
 * Which way a three-phase motor turns: the order in which its poles touch the phases is an even permutation of A B C or an
 * odd one, and exchanging any two conductors changes one into the other.
 */
public final class Rotation {
    private Rotation() {}

    /** Whether the load is a three-pole motor for which the order counts. */
    public static boolean matters(Load load) {
        return load.poles() == 3
                && motor(load).isPresent()
                && motor(load).flatMap(Motor::rotation).stream().noneMatch(MotorRotation.ANY::equals);
    }

    public static boolean isStated(Load load) {
        return motor(load).flatMap(Motor::rotation).isPresent();
    }

    /**
     * Whether a motor on these phases turns backwards: against what it states, else against A B C.
     *
     * @param phases of its poles, in their order
     */
    public static boolean isReversed(Load load, List<Phase> phases) {
        MotorRotation wanted = motor(load).flatMap(Motor::rotation).orElse(MotorRotation.FORWARD);
        return matters(load) && of(phases).filter(each -> each != wanted).isPresent();
    }

    /** Of three different phases; empty of any other. */
    public static Optional<MotorRotation> of(List<Phase> phases) {
        if (phases.size() != 3 || phases.stream().distinct().count() != 3) {
            return Optional.empty();
        }
        int step = Math.floorMod(phases.get(1).ordinal() - phases.get(0).ordinal(), 3);
        return Optional.of(step == 1 ? MotorRotation.FORWARD : MotorRotation.REVERSE);
    }

    /**
     * Whether a motor turns backwards where a plan has it: by its slots, or by the order in which the plan writes its
     * phases, where that is the order of landing.
     */
    public static boolean isReversed(Placement placement) {
        return isReversed(placement.load(), placement.phases())
                || isReversed(placement.load(), placement.assignment().phases());
    }

    /** The project with the rotation that its motors have as built, where it states none: those turn the right way. */
    public static Project asBuilt(Project project, Plan built) {
        Layout layout = Layout.of(project, built);
        List<Load> loads = project.loads().stream()
                .map(load -> layout.placement(load.id())
                        .filter(Placement::fits)
                        .filter(placement -> matters(load) && !isStated(load))
                        .flatMap(placement -> of(placement.phases()))
                        .map(rotation -> turning(load, rotation))
                        .orElse(load))
                .toList();
        return loads.equals(project.loads()) ? project : project.withLoads(loads);
    }

    private static Load turning(Load load, MotorRotation rotation) {
        Equipment equipment = load.equipment().orElseThrow();
        Motor motor = equipment.motor().orElseThrow();
        return load.withEquipment(
                Optional.of(equipment.withMotor(Optional.of(motor.withRotation(Optional.of(rotation))))));
    }

    private static Optional<Motor> motor(Load load) {
        return load.equipment().flatMap(Equipment::motor);
    }
}
