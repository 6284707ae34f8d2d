package evenrise.solver.engine.state;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class SettingTest {
    private static final Setting[] OFFERED = {Setting.of(0, 0.5), Setting.of(1, 1), Setting.of(2, 3)};

    private static double nearest(double seconds) {
        return Setting.nearest(OFFERED, Math.round(seconds * 1e6)).seconds();
    }

    @Test
    void isTheOfferedOneNextToWhatIsWanted() {
        assertThat(nearest(0.9)).isEqualTo(1);
        assertThat(nearest(1)).isEqualTo(1);
        assertThat(nearest(2.1)).isEqualTo(3);
    }

    @Test
    void isTheEarlierOfEquallyNear() {
        assertThat(nearest(0.75)).isEqualTo(0.5);
        assertThat(nearest(2)).isEqualTo(1);
        assertThat(nearest(2.000001)).isEqualTo(3);
    }

    @Test
    void isTheFirstOrTheLastBeyondBothEnds() {
        assertThat(nearest(-7)).isEqualTo(0.5);
        assertThat(nearest(70)).isEqualTo(3);
    }

    @Test
    void isTheFirstWhereNoneIsWanted() {
        assertThat(Setting.nearest(OFFERED, null)).isSameAs(OFFERED[0]);
    }

    @Test
    void isItselfWhereItIsOffered() {
        assertThat(Setting.nearest(OFFERED, OFFERED[1])).isSameAs(OFFERED[1]);
    }

    /** Its place in another list says nothing. */
    @Test
    void goesByTimeWhereAnotherTypeOffersIt() {
        assertThat(Setting.nearest(OFFERED, Setting.of(0, 2.9))).isSameAs(OFFERED[2]);
        assertThat(Setting.nearest(OFFERED, Setting.of(40, 0.4))).isSameAs(OFFERED[0]);
    }

    @Test
    void isTheOnlyOneThatThereIs() {
        assertThat(Setting.nearest(new Setting[] {OFFERED[1]}, OFFERED[2])).isSameAs(OFFERED[1]);
    }
}
