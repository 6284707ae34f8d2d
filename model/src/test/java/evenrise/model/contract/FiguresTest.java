package evenrise.model.contract;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

class FiguresTest {
    @Test
    void areAsFineAsTheirRoomWantsThem() {
        assertThat(Figures.WHOLE.in("W", 12.5)).isEqualTo("13 W");
        assertThat(Figures.TENTHS.percent(12.34)).isEqualTo("12.3 %");
        assertThat(Figures.HUNDREDTHS.amps(12)).isEqualTo("12.00 A");
        assertThat(Figures.THOUSANDTHS.seconds(1.5)).isEqualTo("1.5 s");
    }

    @Test
    void areToldApartFromWhatTheyAreHeldAgainst() {
        assertThat(Figures.TENTHS.amps(80.04, 80)).isEqualTo("80.04 A");
        assertThat(Figures.TENTHS.amps(80, 80.04)).isEqualTo("80.00 A");
        assertThat(Figures.THOUSANDTHS.amps(80.0004, 80)).isEqualTo("80.0004 A");
    }

    @Test
    void haveNoMinusBeforeAZero() {
        assertThat(Figures.HUNDREDTHS.amps(-0.001)).isEqualTo("0.00 A");
        assertThat(Figures.HUNDREDTHS.amps(-0.01)).isEqualTo("-0.01 A");
    }

    @Test
    void sayWhereThereIsNoTime() {
        assertThat(Figures.THOUSANDTHS.seconds(OptionalDouble.empty())).isEqualTo("no time");
    }

    @Test
    void standBesideCountsAndLists() {
        assertThat(Phrase.counted(1, "pole") + ", " + Phrase.counted(3, "pole")).isEqualTo("1 pole, 3 poles");
        assertThat(Phrase.quoted(List.of("a", "b"), 2)).isEqualTo("'a', 'b'");
        assertThat(Phrase.quoted(List.of("a", "b", "c"), 2)).isEqualTo("'a', 'b' and 1 more");
    }
}
