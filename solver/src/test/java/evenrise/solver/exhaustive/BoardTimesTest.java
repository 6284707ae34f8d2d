package evenrise.solver.exhaustive;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import java.util.Arrays;
import org.junit.jupiter.api.Test;

class BoardTimesTest {
    private static BoardTimes times(LoadBuilder load) {
        return new BoardTimes(new SmallProject(aProject()
                .panels(aPanel("P").slots(12))
                .boardTypes(
                        aBoardType("T").outputs(4).startDelaySeconds(0, 1, 4).stepSeconds(0.5, 1))
                .boards(aBoard("B1").type("T").in("P"))
                .loads(load)
                .build()));
    }

    @Test
    void leaveOutASettingWhoseTimesAnotherHasToo() {
        assertThat(times(aLoad("a")).of(0, 2_000_000))
                .extracting(option -> option.setting().delaySeconds() + " by "
                        + option.setting().betweenSeconds())
                .as("0 by 1 has 0, 1, 2; 1 by 0.5 has 1, 1.5, 2; 1 by 1 has 1, 2")
                .containsExactly("0.0 by 0.5", "0.0 by 1.0", "1.0 by 0.5");
    }

    @Test
    void leaveOutNoneWhereAnOutputIsFixed() {
        assertThat(times(aLoad("a").fixedOutput(2)).of(0, 2_000_000)).hasSize(4);
    }

    @Test
    void leaveOutNoneThatReachesFurther() {
        assertThat(times(aLoad("a")).of(0, 9_000_000)).hasSize(6);
    }

    @Test
    void keepNoOutputThatComesTooLate() {
        assertThat(times(aLoad("a")).of(0, 1_200_000))
                .allSatisfy(
                        option -> assertThat(Arrays.stream(option.onMicros())).allMatch(micros -> micros <= 1_200_000));
    }
}
