package evenrise.solver.bounds;

import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

/** Half a millisecond is forgiven where times are compared. */
class SettingGridTest {
    private static boolean tellsTimesApart(double... startDelaySeconds) {
        return SettingGrid.tellsTimesApart(aProject()
                .boardTypes(aBoardType().startDelaySeconds(startDelaySeconds).stepSeconds(1))
                .build());
    }

    @Test
    void settingsOfTenthsAndQuartersAreToldApart() {
        assertThat(tellsTimesApart(0, 0.1, 0.25)).isTrue();
    }

    @Test
    void whatDiffersByWhatIsForgivenIsNot() {
        assertThat(tellsTimesApart(0, 0.0005)).isFalse();
    }

    /** 1000.2 ms and 1 s are multiples of 0.2 ms, 1000.8 ms and 1 s of 0.8 ms. */
    @Test
    void theGreatestCommonDivisorCountsAndNotTheLeastSetting() {
        assertThat(tellsTimesApart(0, 1.0002)).isFalse();
        assertThat(tellsTimesApart(0, 1.0008)).isTrue();
    }

    /** Sums of many of them may meet by less than is forgiven. */
    @Test
    void settingsThatAreNoWholeMicrosecondsAreNot() {
        assertThat(tellsTimesApart(0, 1.0 / 3)).isFalse();
        assertThat(tellsTimesApart(0, 0.001 + 0.0009e-6)).isTrue();
        assertThat(tellsTimesApart(0, 0.001 + 0.002e-6)).isFalse();
    }

    /** As many instants as a long sequence has, more than bounds look at. */
    @Test
    void aLongSequenceOfFineSettingsIsToldApart() {
        assertThat(tellsTimesApart(0, 0.05, 3600)).isTrue();
    }
}
