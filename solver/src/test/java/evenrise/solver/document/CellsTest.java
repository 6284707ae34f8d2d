package evenrise.solver.document;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.report.page.Grid;
import evenrise.solver.report.page.Grid.Column;
import java.util.List;
import org.junit.jupiter.api.Test;

class CellsTest {
    private static List<List<String>> column(Object... cells) {
        return Cells.of(new Grid(
                "seconds",
                "Seconds",
                List.of(Column.number("On", "s")),
                List.of(cells).stream().map(List::of).toList()));
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
}
