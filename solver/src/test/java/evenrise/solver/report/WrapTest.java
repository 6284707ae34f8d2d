package evenrise.solver.report;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class WrapTest {
    @Test
    void hangsFollowingLinesUnderTheFirstWord() {
        assertThat(Wrap.lines("  - ", "word ".repeat(25)))
                .hasSize(2)
                .allSatisfy(line -> assertThat(line.length()).isLessThanOrEqualTo(Wrap.WIDEST))
                .satisfies(lines -> assertThat(lines.get(0)).startsWith("  - word"))
                .satisfies(lines -> assertThat(lines.get(1)).startsWith("    word"));
    }

    @Test
    void cutsAWordThatFitsNoLineAndTextThatHasNoEnd() {
        assertThat(Wrap.lines("", "x".repeat(5_000))).containsExactly("x".repeat(57) + "...");
        assertThat(Wrap.lines("", "word ".repeat(5_000))).hasSizeLessThan(15);
    }

    @Test
    void cleansWhatItWraps() {
        assertThat(Wrap.lines("", "load 'a\u001b[31m\nb'")).containsExactly("load 'a?[31m?b'");
    }
}
