package evenrise.model.electrical.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class DipCourseTest {
    private static DipCourse of(double percent, double halfSeconds, double flatSeconds, double staying) {
        return new DipCourse(
                seconds -> staying + percent * Math.pow(2, -seconds / halfSeconds), flatSeconds, halfSeconds);
    }

    @Test
    void lastsAHalfLifeForEachHalving() {
        // 40 % is above 10 % for two half-lives
        assertThat(of(40, 0.1, 0, 0).secondsAbove(10)).isCloseTo(0.2, within(1e-5));
    }

    @Test
    void isFlatForItsFirstHalfCycle() {
        assertThat(of(40, 0.001, 0.01, 0).percentAfter(0.01)).isCloseTo(40, within(1e-9));
        assertThat(of(40, 0.001, 0.01, 0).secondsAbove(10)).isCloseTo(0.012, within(1e-5));
    }

    @Test
    void staysWithWhatStays() {
        assertThat(of(40, 0.1, 0, 11).secondsAbove(10)).isInfinite();
        // 40 % is above the 1 % that are left for log2 40 half-lives
        assertThat(of(40, 0.1, 0, 9).secondsAbove(10)).isCloseTo(0.1 * Math.log(40) / Math.log(2), within(1e-5));
    }

    @Test
    void lastsNoTimeWhereItNeverLeaves() {
        assertThat(of(9, 0.1, 0.01, 0).secondsAbove(10)).isZero();
    }

    /** What it departs by at most is not above. */
    @Test
    void isNotAboveWhatItJustReaches() {
        assertThat(of(10, 0.1, 0.01, 0).secondsAbove(10)).isZero();
    }

    /** It leaves twice, for the last time from 0.2 s to 0.4 s; back for good at 0.4 s. */
    @Test
    void endsWithTheLastTimeThatItLeaves() {
        DipCourse twice = new DipCourse(seconds -> seconds < 0.05 || seconds > 0.2 && seconds < 0.4 ? 20 : 0, 0, 0.1);

        assertThat(twice.secondsAbove(10)).isCloseTo(0.4, within(1e-5));
    }

    /** Before, between and after the instants that are looked at, and at them. */
    @Test
    void tellsWhetherItLastsLongerWithoutTheTimeItself() {
        for (DipCourse course :
                new DipCourse[] {of(40, 0.1, 0.01, 0), of(40, 0.1, 0, 11), of(9, 0.1, 0, 0), of(10.001, 0.1, 0.01, 0)
                }) {
            for (double seconds : new double[] {0, 1e-9, 0.004, 0.01, 0.02, 0.1, 0.2, 0.2099, 0.2101, 0.21, 3.2, 100}) {
                assertThat(course.isAboveFor(seconds, 10)).isEqualTo(course.secondsAbove(10) > seconds);
            }
        }
    }
}
