package evenrise.model.rules;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.plan.Plan;
import evenrise.model.project.Equipment;
import evenrise.model.project.Load;
import evenrise.model.project.Motor;
import evenrise.model.project.MotorRotation;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RotationTest {
    private static LoadBuilder motor(Optional<MotorRotation> stated) {
        return aLoad("hoist")
                .threePole()
                .unswitched()
                .equipment(Equipment.builder()
                        .motor(Motor.builder().rotation(stated).build())
                        .build());
    }

    private static List<Phase> phases(String letters) {
        return Arrays.stream(letters.split(" ")).map(Phase::valueOf).toList();
    }

    /** The six orders of three phases: three even permutations of A B C, three odd. */
    @ParameterizedTest
    @CsvSource({
        "A B C, FORWARD",
        "B C A, FORWARD",
        "C A B, FORWARD",
        "B A C, REVERSE",
        "A C B, REVERSE",
        "C B A, REVERSE"
    })
    void isOddOrEven(String order, MotorRotation rotation) {
        assertThat(Rotation.of(phases(order))).contains(rotation);
    }

    @Test
    void isNoneOfFewerPhases() {
        assertThat(Rotation.of(phases("A B"))).isEmpty();
        assertThat(Rotation.of(phases("A B A"))).isEmpty();
    }

    @Test
    void countsAgainstABCWhereNoneIsStated() {
        Load silent = motor(Optional.empty()).build();

        assertThat(Rotation.isReversed(silent, phases("B C A"))).isFalse();
        assertThat(Rotation.isReversed(silent, phases("B A C"))).isTrue();
    }

    @Test
    void countsAgainstWhatIsStated() {
        Load reverse = motor(Optional.of(MotorRotation.REVERSE)).build();
        Load any = motor(Optional.of(MotorRotation.ANY)).build();

        assertThat(Rotation.isReversed(reverse, phases("B A C"))).isFalse();
        assertThat(Rotation.isReversed(reverse, phases("A B C"))).isTrue();
        assertThat(Rotation.isReversed(any, phases("B A C"))).isFalse();
    }

    @Test
    void mattersToMotorsAlone() {
        assertThat(Rotation.isReversed(aLoad("heater").threePole().build(), phases("B A C")))
                .isFalse();
    }

    @Test
    void isThatOfTheSlotsOrOfTheOrderInWhichThePlanWritesThePhases() {
        Project project = aProject()
                .panels(aPanel("P1"), aPanel("Q").phaseRotation(Phase.A, Phase.C, Phase.B))
                .loads(motor(Optional.empty()))
                .build();

        assertThat(reversed(project, at("P1", Phase.A, Phase.B, Phase.C))).isFalse();
        assertThat(reversed(project, at("P1", Phase.B, Phase.A, Phase.C))).isTrue();
        assertThat(reversed(project, at("Q", Phase.A, Phase.B, Phase.C))).isTrue();
        assertThat(reversed(project, at("Q", Phase.A, Phase.C, Phase.B))).isTrue();
    }

    @Test
    void isAsBuiltWhereAnEarlierPlanTellsAndTheProjectDoesNot() {
        Project project = aProject()
                .panels(aPanel("P1"), aPanel("Q").phaseRotation(Phase.A, Phase.C, Phase.B))
                .loads(motor(Optional.empty()))
                .build();
        Plan built = at("Q", Phase.A, Phase.C, Phase.B);

        Project known = Rotation.asBuilt(project, built);

        assertThat(reversed(known, built)).isFalse();
        assertThat(reversed(known, at("P1", Phase.A, Phase.B, Phase.C))).isTrue();
        assertThat(Rotation.asBuilt(known, at("P1", Phase.A, Phase.B, Phase.C))).isSameAs(known);
    }

    private static Plan at(String panel, Phase... phases) {
        return aPlan().assignments(anAssignment("hoist").at(panel, 1, phases)).build();
    }

    private static boolean reversed(Project project, Plan plan) {
        return Rotation.isReversed(Layout.of(project, plan).placement("hoist").orElseThrow());
    }
}
