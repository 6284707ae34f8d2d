package evenrise.solver.report;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class SanitizerTest {
    @Test
    void leavesOrdinaryNamesAlone() {
        assertThat(Sanitizer.clean("Bühne links, Endstufe 3 (№ 7) 舞台")).isEqualTo("Bühne links, Endstufe 3 (№ 7) 舞台");
    }

    @Test
    void takesTheForceOutOfTerminalEscapes() {
        assertThat(Sanitizer.clean("a\u001b[2Jb\u009b31mc")).isEqualTo("a?[2Jb?31mc");
    }

    @Test
    void keepsTextInOneLine() {
        assertThat(Sanitizer.clean("a\nb\rc\u2028d\u2029e\tf\bg")).isEqualTo("a?b?c?d?e?f?g");
    }

    @Test
    void keepsTextFromTurningRound() {
        assertThat(Sanitizer.clean("\u202e812\u202c\u2066x\u2069\u200f\u061c")).isEqualTo("?812??x???");
    }

    @Test
    void replacesHalvesOfCharactersAndTags() {
        assertThat(Sanitizer.clean("a\ud800b\udb40\udc41c")).isEqualTo("a?b?c");
    }

    @Test
    void cutsTowersOfCombiningMarks() {
        assertThat(Sanitizer.clean("a" + "\u0301".repeat(500) + "b")).isEqualTo("a" + "\u0301".repeat(4) + "b");
    }
}
