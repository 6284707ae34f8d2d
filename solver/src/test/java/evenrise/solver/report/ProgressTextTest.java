package evenrise.solver.report;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.engine.Progress;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class ProgressTextTest {
    @Test
    void saysTimeObjectivePeakImbalanceBrokenRulesAndMoves() {
        Progress progress = new Progress(65.9, 1_234_567, 812.34, 790.04, 0.125, 3);

        assertThat(ProgressText.line(65.9, Optional.of(progress)))
                .isEqualTo(" 1:05  objective 812.3  peak 790.0 A  imbalance 0.13 %  broken 3  move 1.2M");
    }

    @Test
    void keepsEveryFigureOfALargePlant() {
        Progress progress = new Progress(599, 123_456_789, 14_712.34, 14_490.04, 10.125, 120);

        assertThat(ProgressText.line(599, Optional.of(progress)))
                .isEqualTo(" 9:59  objective 14712  peak 14490 A  imbalance 10.1 %  broken 120  move 123M");
    }

    @Test
    void saysHowFarThePlanIsFromWhatIsProven() {
        Progress progress = new Progress(65.9, 1_234_567, 800, 790.04, 0.125, 0, 780);

        // (800 - 780) / 800 = 2.5 %
        assertThat(ProgressText.line(65.9, Optional.of(progress)))
                .isEqualTo(" 1:05  objective 800.0  peak 790.0 A  imbalance 0.13 %  gap 2.50 %  move 1.2M");
    }

    @Test
    void saysWhatGoesOnBeforeThereIsAPlan() {
        assertThat(ProgressText.line(2, Optional.empty())).isEqualTo(" 0:02  building a first plan");
    }

    @Test
    void fitsEightyColumnsWhateverTheFigures() {
        Progress progress = new Progress(1e5, Long.MAX_VALUE, 1e15, 1e12, 1e6, 99_999);

        assertThat(ProgressText.line(1e5, Optional.of(progress))).hasSizeLessThan(80);
    }
}
