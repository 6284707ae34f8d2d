package evenrise.model.review;

import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Grade;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Remark;
import evenrise.model.project.MotorRotation;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class RotationCheckTest {
    private static List<Remark> said(Optional<MotorRotation> stated) {
        return Reviews.of(
                        new RotationCheck(),
                        aProject()
                                .panels(aPanel("Q").phaseRotation(Phase.A, Phase.C, Phase.B))
                                .loads(Motors.threePhase(
                                        "hoist", Motors.horsepower(3).rotation(stated)))
                                .build(),
                        aPlan().assignments(anAssignment("hoist").at("Q", 1, Phase.A, Phase.C, Phase.B))
                                .build())
                .remarks();
    }

    @Test
    void breaksWhereAMotorTurnsBackwards() {
        assertThat(said(Optional.empty())).singleElement().satisfies(remark -> {
            assertThat(remark.grade()).isEqualTo(Grade.BREAKS);
            assertThat(remark.place()).isEqualTo("hoist");
            assertThat(remark.message()).contains("'Q'", "A C B", "backwards", "check the rotation before coupling");
        });
    }

    @Test
    void isSilentWhereItTurnsAsItStates() {
        assertThat(said(Optional.of(MotorRotation.REVERSE))).isEmpty();
        assertThat(said(Optional.of(MotorRotation.ANY))).isEmpty();
    }

    @Test
    void breaksWhereAMotorTurnsTheOtherWayThanInAnEarlierPlan() {
        Project project = aProject()
                .panels(aPanel("P1"), aPanel("Q").phaseRotation(Phase.A, Phase.C, Phase.B))
                .loads(Motors.threePhase("hoist", Motors.horsepower(3)))
                .build();
        Plan inQ = aPlan().assignments(anAssignment("hoist").at("Q", 1, Phase.A, Phase.C, Phase.B))
                .build();
        Plan inP = aPlan().assignments(anAssignment("hoist").at("P1", 1, Phase.A, Phase.B, Phase.C))
                .build();

        assertThat(rotations(project, inP, Optional.empty())).isEmpty();
        assertThat(rotations(project, inP, Optional.of(inP))).isEmpty();
        assertThat(rotations(project, inP, Optional.of(inQ)))
                .singleElement()
                .satisfies(remark -> assertThat(remark.message()).contains("the earlier plan"));
        assertThat(rotations(project, inQ, Optional.of(inP))).hasSize(1);
    }

    private static List<Remark> rotations(Project project, Plan plan, Optional<Plan> earlier) {
        return ElectricalReview.of(Layout.of(project, plan), earlier).remarks().stream()
                .filter(remark -> remark.check().equals("rotation"))
                .toList();
    }
}
