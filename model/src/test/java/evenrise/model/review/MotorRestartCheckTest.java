package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.Behaviour;
import evenrise.model.project.Equipment;
import evenrise.model.project.Motor;
import evenrise.model.project.Resume;
import java.util.List;
import org.junit.jupiter.api.Test;

class MotorRestartCheckTest {
    private static List<Remark> remarks(Behaviour behaviour) {
        Equipment motor = Equipment.builder().motor(Motor.builder().build()).build();
        return Reviews.of(
                        new MotorRestartCheck(),
                        aProject()
                                .behaviour(behaviour)
                                .loads(aLoad("hoist").equipment(motor), aLoad("desk"))
                                .build(),
                        aPlan().build())
                .remarks();
    }

    @Test
    void isNotCheckedWhereNothingIsStated() {
        assertThat(remarks(Behaviour.DEFAULT)).singleElement().satisfies(remark -> {
            assertThat(remark.grade()).isEqualTo(Grade.NOT_CHECKED);
            assertThat(remark.place()).isEqualTo("hoist");
            assertThat(remark.message()).contains("1 motor ('hoist')", "behaviour.motors_resume");
        });
    }

    @Test
    void breaksWhereMotorsComeBackUnasked() {
        assertThat(remarks(Behaviour.builder().motorsResume(Resume.SEQUENCE).build()))
                .extracting(Remark::grade)
                .containsExactly(Grade.BREAKS);
    }

    @Test
    void asksForTheTestWhereTheyAreStatedToStayOff() {
        assertThat(remarks(Behaviour.builder().motorsResume(Resume.STAY_OFF).build()))
                .singleElement()
                .satisfies(remark -> {
                    assertThat(remark.grade()).isEqualTo(Grade.NOTE);
                    assertThat(remark.message()).endsWith("Test it before use.");
                });
    }

    @Test
    void saysNothingWhereThereIsNoMotor() {
        assertThat(Reviews.of(
                                new MotorRestartCheck(),
                                aProject().loads(aLoad("desk")).build(),
                                aPlan().build())
                        .remarks())
                .isEmpty();
    }
}
