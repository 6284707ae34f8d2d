package evenrise.solver.intake;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class OpenCountTest {
    @ParameterizedTest(name = "''{0}'': {1} to {3}, likely {2}, {4} taken")
    @CsvSource({
        "10-14, 10, 12, 14, 14",
        "10 – 14, 10, 12, 14, 14",
        "40 to 60, 40, 50, 60, 60",
        "between 4 and 7, 4, 6, 7, 7",
        "10 bis 14 Stück, 10, 12, 14, 14",
        "10 à 14, 10, 12, 14, 14",
        "0-3, 0, 2, 3, 3",
        "40 ± 5, 35, 40, 45, 40",
        "40 +/- 10 %, 36, 40, 44, 40"
    })
    void readsRangesAndWhatIsAroundANumber(String written, int low, int likely, int high, int listed) {
        assertThat(OpenCount.of(written)).contains(new OpenCount(low, likely, high, listed, true));
    }

    @ParameterizedTest
    @ValueSource(strings = {"40", "about 40", "TBC", "14-10", "0-0", "2 x 600", "10 to", ""})
    void leavesOtherTextsAlone(String written) {
        assertThat(OpenCount.of(written)).isEmpty();
    }

    /** A fifth of 40 is 8; of 3 it is less than one, and a number that is about three may be two or four. */
    @ParameterizedTest(name = "about {0}: {1} to {2}")
    @CsvSource({"40, 32, 48", "3, 2, 4", "1, 0, 2", "11, 8, 14"})
    void aboutIsAFifthAndAtLeastOne(int about, int low, int high) {
        assertThat(OpenCount.about(about, 20)).isEqualTo(new OpenCount(low, about, high, about, true));
    }
}
