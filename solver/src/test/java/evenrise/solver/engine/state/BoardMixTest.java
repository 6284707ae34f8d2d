package evenrise.solver.engine.state;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.LoadBuilder;
import org.junit.jupiter.api.Test;

/** Amplifiers with excesses of 30, 50 and 100 A, 60 A on average, and a processor, on two boards. */
class BoardMixTest {
    private static final int B1 = 0;
    private static final int B2 = 1;
    private static final int LOW = 0;
    private static final int MIDDLE = 1;
    private static final int HIGH = 2;
    private static final int PROCESSOR = 3;

    private final BoardMix mix = new BoardMix(new CompiledProject(aProject()
            .panels(aPanel("P1"))
            .boards(aBoard("B1"), aBoard("B2"))
            .loads(
                    drawing("A1", 30).amplifier(),
                    drawing("A2", 50).amplifier(),
                    drawing("A3", 100).amplifier(),
                    drawing("D1", 500).processing())
            .build()));

    private static LoadBuilder drawing(String id, double inrushPeakAmps) {
        return aLoad(id).idleAmps(0).inrushPeakAmps(inrushPeakAmps);
    }

    @Test
    void isNoneWhereEachBoardHasOneAmplifier() {
        mix.add(LOW, B1, 1);
        mix.add(HIGH, B2, 1);

        assertThat(mix.unlikeness()).isZero();
    }

    /** 30 and 50 A are 10 A off their mean each, 50 and 100 A 25 A. */
    @Test
    void sumsTheSquaresOfWhatEachIsOffTheMeanOfItsBoard() {
        mix.add(LOW, B1, 1);
        mix.add(MIDDLE, B1, 1);
        assertThat(mix.unlikeness()).isCloseTo(2 * Math.pow(10.0 / 60, 2), within(1e-3));

        mix.add(LOW, B1, -1);
        mix.add(HIGH, B1, 1);
        assertThat(mix.unlikeness()).isCloseTo(2 * Math.pow(25.0 / 60, 2), within(1e-3));

        mix.add(MIDDLE, B1, -1);
        mix.add(HIGH, B1, -1);
        assertThat(mix.unlikeness()).isZero();
    }

    @Test
    void countsAmplifiersAlone() {
        mix.add(LOW, B1, 1);
        mix.add(PROCESSOR, B1, 1);

        assertThat(mix.unlikeness()).isZero();
    }
}
