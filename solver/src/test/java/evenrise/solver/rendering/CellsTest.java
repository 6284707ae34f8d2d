package evenrise.solver.rendering;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.document.Column;
import evenrise.solver.document.DocumentTable;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CellsTest {
    private static List<List<String>> column(Object... cells) {
        return columnOf("s", cells);
    }

    private static List<List<String>> columnOf(String unit, Object... cells) {
        return Cells.of(new DocumentTable<>(
                "figures",
                "Figures",
                "",
                List.of(new Column<>("figure", "Figure", unit, true, cell -> cell)),
                List.of(cells),
                cell -> Optional.empty()));
    }

    @Test
    void aColumnWithAFractionHasTwoDecimalsThroughout() {
        assertThat(column(21.0, 35.15, "always on"))
                .containsExactly(List.of("21.00"), List.of("35.15"), List.of("always on"));
    }

    @Test
    void aColumnOfWholeNumbersHasNoDecimals() {
        assertThat(column(20.0, 100.0, 3)).containsExactly(List.of("20"), List.of("100"), List.of("3"));
    }

    @Test
    void aThousandAmperesHaveOneDecimalAndAThousandSecondsTwo() {
        assertThat(columnOf("A", 1630.77, 78.0)).containsExactly(List.of("1630.8"), List.of("78.0"));
        assertThat(columnOf("s", 1630.77, 78.0)).containsExactly(List.of("1630.77"), List.of("78.00"));
    }

    /** Who sets a step of an eighth of a second must not read 0.13. */
    @Test
    void timesFinerThanAHundredthHaveThreeDecimals() {
        assertThat(columnOf("s", 0.125, 2.0)).containsExactly(List.of("0.125"), List.of("2.000"));
        assertThat(columnOf("A", 0.125, 2.0)).containsExactly(List.of("0.13"), List.of("2.00"));
    }
}
