package evenrise.model.review;

import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.MotorRotation;
import evenrise.model.project.Phase;
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
}
