package evenrise.solver.engine.state;

import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.PanelBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.project.Equipment;
import evenrise.model.project.Motor;
import evenrise.model.project.MotorRotation;
import evenrise.model.project.Phase;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** P turns a motor forward, Q (A C B) backwards. */
class RotationKeptTest {
    private static final PanelBuilder Q = aPanel("Q").phaseRotation(Phase.A, Phase.C, Phase.B);

    private static LoadBuilder motor(String id) {
        return motor(id, Optional.empty());
    }

    private static LoadBuilder motor(String id, Optional<MotorRotation> stated) {
        return aLoad(id)
                .threePole()
                .runningAmps(9)
                .equipment(Equipment.builder()
                        .motor(Motor.builder().rotation(stated).build())
                        .build());
    }

    private static int[] allowed(ProjectBuilder project, int load) {
        return new CompiledProject(project.build()).allowedPanels[load].stream().toArray();
    }

    @Test
    void leavesOutAPanelInWhichAMotorTurnsBackwards() {
        assertThat(allowed(aProject().panels(aPanel("P"), Q).loads(motor("hoist")), 0))
                .containsExactly(0);
        assertThat(allowed(
                        aProject().panels(aPanel("P"), Q).loads(motor("hoist", Optional.of(MotorRotation.REVERSE))), 0))
                .containsExactly(1);
        assertThat(allowed(aProject().panels(aPanel("P"), Q).loads(motor("hoist", Optional.of(MotorRotation.ANY))), 0))
                .containsExactly(0, 1);
    }

    @Test
    void leavesWhatIsNoMotorAlone() {
        assertThat(allowed(
                        aProject().panels(aPanel("P"), Q).loads(aLoad("heater").threePole()), 0))
                .containsExactly(0, 1);
    }

    @Test
    void leavesAMotorThatHasNoOtherPanelWhereItMaySit() {
        ProjectBuilder project =
                aProject().panels(aPanel("P"), Q).loads(motor("hoist").panels("Q"));
        CompiledProject compiled = new CompiledProject(project.build());

        assertThat(compiled.allowedPanels[0].stream().toArray()).containsExactly(1);
        assertThat(compiled.mayTake(0, compiled.placeAt[1][1][3])).isTrue();
    }

    /** Rows A B C B A C: slots 1, 3, 5 lie on A B C, slots 7, 9, 11 on B A C. */
    @Test
    void leavesOutSlotsInAPanelOfBothOrders() {
        PanelBuilder mixed = aPanel("M").slots(12).phaseRotation(Phase.A, Phase.B, Phase.C, Phase.B, Phase.A, Phase.C);
        CompiledProject compiled = new CompiledProject(
                aProject().panels(mixed).loads(motor("hoist")).build());

        assertThat(compiled.mayTake(0, compiled.placeAt[0][1][3])).isTrue();
        assertThat(compiled.mayTake(0, compiled.placeAt[0][7][3])).isFalse();
    }

    @Test
    void breaksNoRuleForIt() {
        // P has six slots, three of which a fixed heater takes: one motor fits, two do not.
        ProjectBuilder tight = aProject()
                .panels(aPanel("P").slots(6), Q)
                .loads(aLoad("heater").threePole().panels("P"), motor("one"), motor("two"));

        assertThat(allowed(tight, 1)).containsExactly(0, 1);
    }

    @Test
    void countsCurrentAsRoomToo() {
        // 0.8 · 20 A = 16 A a phase carry one motor of 9 A.
        ProjectBuilder tight = aProject().panels(aPanel("P").ratedAmps(20), Q).loads(motor("one"), motor("two"));

        assertThat(allowed(tight, 0)).containsExactly(0, 1);
    }

    @Test
    void keepsAGroupOfOnePanelTogether() {
        ProjectBuilder project = aProject()
                .panels(aPanel("P"), Q)
                .groups(aGroup("lifts").samePanel())
                .loads(motor("one").group("lifts"), motor("two").group("lifts").panels("Q"));

        assertThat(allowed(project, 0)).containsExactly(1);
    }
}
