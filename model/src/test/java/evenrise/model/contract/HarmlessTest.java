package evenrise.model.contract;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class HarmlessTest {
    @Test
    void leavesOrdinaryNamesAlone() {
        assertThat(Harmless.shown("Bühne links, Endstufe 3 (№ 7) 舞台")).isEqualTo("Bühne links, Endstufe 3 (№ 7) 舞台");
    }

    @Test
    void takesTheForceOutOfTerminalEscapes() {
        assertThat(Harmless.shown("a\u001b[2Jb\u009b31mc")).isEqualTo("a?[2Jb?31mc");
    }

    @Test
    void keepsTextInOneLine() {
        assertThat(Harmless.shown("a\nb\rc\u2028d\u2029e\tf\bg")).isEqualTo("a?b?c?d?e?f?g");
    }

    @Test
    void keepsTextFromTurningRound() {
        assertThat(Harmless.shown("\u202e812\u202c\u2066x\u2069\u200f\u061c")).isEqualTo("?812??x???");
    }

    @Test
    void replacesHalvesOfCharactersAndTags() {
        assertThat(Harmless.shown("a\ud800b\udb40\udc41c")).isEqualTo("a?b?c");
    }

    @Test
    void cutsTowersOfCombiningMarks() {
        assertThat(Harmless.shown("a" + "\u0301".repeat(500) + "b")).isEqualTo("a" + "\u0301".repeat(4) + "b");
    }

    @Test
    void namesWhatIsHiddenForWhoeverMendsIt() {
        assertThat(Harmless.named("a\u202eb\nc")).isEqualTo("a\\u202Eb\\u000Ac");
    }

    @Test
    void cutsNoCharacterInTwo() {
        assertThat(Harmless.cut("abcd", 4)).isEqualTo("abcd");
        assertThat(Harmless.cut("abcde", 4)).isEqualTo("abc…");
        assertThat(Harmless.cut("ab\uD83D\uDE00cd", 4)).isEqualTo("ab…");
    }

    @Test
    void endsNoStringOfAStyleSheet() {
        assertThat(Harmless.css("A 1\"}\\")).isEqualTo("\"A 1\\000022 \\00007d \\00005c \"");
    }

    @Test
    void beginsNoTagAndEndsNoAttribute() {
        assertThat(Harmless.xml("<a b=\"c\">&\u001b")).isEqualTo("&lt;a b=&quot;c&quot;&gt;&amp;?");
    }
}
