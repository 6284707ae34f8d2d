package evenrise.solver.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

/** The course of a search in rows of text. */
class SearchCurveTest {
    private final SearchCurve curve = new SearchCurve();

    private void at(double seconds, double objective, int broken, double proven) {
        curve.add(new JobProgress(
                Stage.SEARCHING, seconds, Optional.of(new SearchStanding(1, objective, objective, 1, broken, proven))));
    }

    private void at(double seconds, double objective, double proven) {
        at(seconds, objective, 0, proven);
    }

    private static String bars(String row) {
        return row.substring(10);
    }

    @Test
    void showsNothingBeforeTwoMomentsWithAPlanThatKeepsTheRules() {
        at(0, 90, 3, 50);
        at(5, 80, 2, 50);
        at(5.25, 100, 50);

        assertThat(curve.rows()).isEmpty();
    }

    @Test
    void barsReachFromTheBoundToThePlan() {
        at(0, 100, 50);
        at(0.25, 75, 50);
        at(0.5, 60, 50);

        assertThat(curve.rows())
                .containsExactly(
                        "    100.0 █",
                        "          █",
                        "          █▄",
                        "          ██",
                        "     50.0 ███",
                        "          bars stand on what is proven, now 50.0; a column is 0.25 s");
    }

    @Test
    void aBoundThatRisesTakesTheFootOfTheBarsAway() {
        at(0, 100, 50);
        at(0.25, 100, 90);

        assertThat(curve.rows().subList(0, 5).stream().map(SearchCurveTest::bars))
                .containsExactly("██", "█", "█", "█", "█");
    }

    @Test
    void aPlanThatIsProvenToBeBestLeavesNoBar() {
        at(0, 100, 50);
        at(0.25, 100, 100);

        assertThat(curve.rows().subList(0, 5).stream().map(SearchCurveTest::bars))
                .containsExactly("█", "█", "█", "█", "█");
    }

    @Test
    void withoutABoundItSaysThatNothingIsProven() {
        at(0, 100, 0);
        at(0.25, 90, 0);

        assertThat(curve.rows()).last().asString().contains("nothing is proven yet");
        assertThat(bars(curve.rows().get(0))).isEqualTo("█");
    }

    @Test
    void steepFirstPlansRunOutOfTheTop() {
        at(0, 1000, 50);
        for (int i = 1; i < 20; i++) {
            at(0.25 * i, 100, 50);
        }

        assertThat(curve.rows()).first().asString().startsWith("    100.0 █");
    }

    @Test
    void longSearchesHaveAsManyColumnsOfMoreTime() {
        for (int second = 0; second <= 3600; second++) {
            at(second, 200 - second / 60.0, 50);
        }

        List<String> rows = curve.rows();
        assertThat(rows).allSatisfy(row -> assertThat(row.length()).isLessThanOrEqualTo(79));
        assertThat(rows).last().asString().endsWith("a column is 64 s");
        // An hour in columns of 64 s, the last of them begun.
        assertThat(bars(rows.get(4))).isEqualTo("█".repeat(3600 / 64 + 1));
    }

    @Test
    void afterAPauseWhatStoodLastGoesOn() {
        at(0, 100, 50);
        at(2.5, 60, 50);

        assertThat(bars(curve.rows().get(0))).isEqualTo("██████████");
    }
}
