package evenrise.model.review;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.LoadBuilder;
import evenrise.model.plan.Grade;
import evenrise.model.project.CodeLetter;
import evenrise.model.project.Equipment;
import evenrise.model.project.Motor;
import org.junit.jupiter.api.Test;

class MotorStartCheckTest {
    private static LoadBuilder hoist(double inrushPeakAmps, Motor motor) {
        return aLoad("hoist")
                .unswitched()
                .inrushPeakAmps(inrushPeakAmps)
                .equipment(Equipment.builder().heatPercent(100).motor(motor).build());
    }

    private static Reviews reviewed(LoadBuilder load) {
        return Reviews.of(new MotorStartCheck(), aProject().loads(load).build(), aPlan().build());
    }

    private static final Motor LETTER_L =
            Motor.builder().horsepower(1).codeLetter(CodeLetter.L).build();

    @Test
    void takesTheUpperEndOfTheLetter() {
        // 9.99 kVA/hp · 1 hp at 120 V = 83.25 A
        assertThat(reviewed(hoist(200, LETTER_L)).figure("hoist", "locked-rotor current"))
                .isCloseTo(83.25, within(1e-9));
    }

    @Test
    void saysThatAStatedInrushIsLessThanTheCrest() {
        assertThat(reviewed(hoist(117, LETTER_L)).remarks()).singleElement().satisfies(remark -> {
            assertThat(remark.grade()).isEqualTo(Grade.EXCEEDS_RECOMMENDATION);
            assertThat(remark.message()).contains("'hoist'", "83.25 A rms", "117.73 A", "117.00 A");
        });
        assertThat(reviewed(hoist(118, LETTER_L)).remarks()).isEmpty();
    }

    @Test
    void saysWhatItLacks() {
        Motor bare = Motor.builder().codeLetter(CodeLetter.L).build();

        assertThat(reviewed(hoist(100, bare)).remarks())
                .singleElement()
                .satisfies(remark -> assertThat(remark.grade()).isEqualTo(Grade.NOT_CHECKED));
    }
}
