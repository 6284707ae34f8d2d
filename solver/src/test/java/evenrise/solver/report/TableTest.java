package evenrise.solver.report;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class TableTest {
    @Test
    void putsWordsLeftAndNumbersRight() {
        Table table = new Table().words("Load").number("Draws, A");

        table.row("amp", "1.5").row("mixer 2", "812.0");

        assertThat(table.lines(Paint.NONE))
                .containsExactly("  Load     Draws, A", "  amp           1.5", "  mixer 2     812.0");
    }

    @Test
    void alignsByWhatIsSeen() {
        Table table = new Table().words("Load").number("A");

        table.row("舞台", "1").row("abc", "22");

        assertThat(table.lines(Paint.NONE)).containsExactly("  Load   A", "  舞台   1", "  abc   22");
    }

    @Test
    void cutsAWordThatIsTooLongToStayWithinAHundredColumns() {
        Table table = new Table().words("Load").text("Name").number("A");

        table.row("an-id-of-many-letters", "x".repeat(500), "812.0");

        assertThat(table.lines(Paint.NONE))
                .allSatisfy(line -> assertThat(DisplayWidth.of(line)).isLessThanOrEqualTo(Table.WIDEST))
                .last()
                .asString()
                .startsWith("  an-id-of-many-letters  xxx")
                .endsWith("x...  812.0");
    }

    @Test
    void goesOnBelowWhereWordsDoNotFitAndCutsNone() {
        Table table = new Table().words("Load").number("A").text("Why");

        table.row("  the amp", "1", "one two three four").row("mixer", "22", "five");

        assertThat(table.lines(Paint.NONE.within(26)))
                .containsExactly(
                        "  Load        A  Why",
                        "    the amp   1  one two",
                        "                 three",
                        "                 four",
                        "  mixer      22  five");
    }

    @Test
    void breaksAWordThatIsWiderThanItsColumn() {
        Table table = new Table().words("Event").number("A").row("emergency released", "1".repeat(30));

        assertThat(table.lines(Paint.NONE.within(41)).map(String::strip))
                .containsExactly("Event" + " ".repeat(33) + "A", "emergen  " + "1".repeat(30), "cy", "release", "d");
    }

    @Test
    void cutsIdsWhereNothingElseCanBe() {
        Table table = new Table().words("Load").number("A").row("x".repeat(500), "812.0");

        assertThat(table.lines(Paint.NONE))
                .allSatisfy(line -> assertThat(DisplayWidth.of(line)).isLessThanOrEqualTo(Table.WIDEST));
    }

    @Test
    void colourDoesNotMoveAColumn() {
        Table table = new Table().words("Load").number("A").row(Tone.BAD, "amp", "1");

        assertThat(table.lines((tone, text) -> "<" + text + ">").map(line -> line.replaceAll("[<>]", "")))
                .isEqualTo(table.lines(Paint.NONE).toList());
    }

    @Test
    void letsNoCellForgeARow() {
        Table table = new Table().words("Load").row("a\nfalse row\u001b[1A");

        assertThat(table.lines(Paint.NONE)).containsExactly("  Load", "  a?false row?[1A");
    }

    @Test
    void refusesARowOfAnotherLength() {
        assertThatThrownBy(() -> new Table().words("Load").row("a", "b"))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessage("2 cells for 1 columns");
    }

    @Test
    void isAsWideAsItIsPaintedOn() {
        Table table = new Table().words("Load").text("Reason");
        table.row("A".repeat(20), "because ".repeat(30).strip());

        for (int columns : new int[] {80, 200}) {
            assertThat(table.lines(Paint.NONE.within(columns)).toList())
                    .allSatisfy(line -> assertThat(DisplayWidth.of(line)).isLessThanOrEqualTo(columns))
                    .anySatisfy(line -> assertThat(DisplayWidth.of(line)).isGreaterThan(columns - "because ".length()));
        }
    }
}
