package evenrise.solver.report;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class DisplayWidthTest {
    @Test
    void countsOneForALetterTwoForAnIdeographNoneForACombiningMark() {
        assertThat(DisplayWidth.of("abc")).isEqualTo(3);
        assertThat(DisplayWidth.of("舞台")).isEqualTo(4);
        assertThat(DisplayWidth.of("ａ")).isEqualTo(2);
        assertThat(DisplayWidth.of("ｱ")).isEqualTo(1);
        assertThat(DisplayWidth.of("e\u0301")).isEqualTo(1);
        assertThat(DisplayWidth.of("🔊")).isEqualTo(2);
    }

    @Test
    void leavesTextThatFitsWhole() {
        assertThat(DisplayWidth.cut("abcdef", 6)).isEqualTo("abcdef");
    }

    @Test
    void marksWhereTextWasCut() {
        assertThat(DisplayWidth.cut("abcdefg", 6)).isEqualTo("abc...");
    }

    @Test
    void neverSplitsAWideCharacter() {
        assertThat(DisplayWidth.cut("舞台舞台", 6)).isEqualTo("舞...");
    }

    @Test
    void keepsWithinWidthsSmallerThanTheMark() {
        assertThat(DisplayWidth.cut("abcdef", 2)).isEqualTo("..");
    }
}
