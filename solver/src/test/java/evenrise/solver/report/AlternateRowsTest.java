package evenrise.solver.report;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.estimate.PriceBasis;
import evenrise.model.plan.Assessment;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class AlternateRowsTest {
    private static final PriceBasis BASIS = new PriceBasis(List.of("scaffolding"), false, List.of());

    private static Alternate alternate(String name, String currency, String price, int unpriced, double peak) {
        return new Alternate(
                name,
                Assessment.builder().headline("all kept").withoutPlaceAmps(0).build(),
                Optional.of(currency),
                Optional.of(new BigDecimal(price)),
                unpriced,
                List.of("freight"),
                peak,
                12,
                2,
                3,
                5,
                60,
                4,
                24,
                Optional.empty(),
                Optional.empty(),
                Map.of("panel wide", BigDecimal.valueOf(2), "board eight", new BigDecimal(name.length())),
                BASIS);
    }

    private static AlternateRows.Row row(String label, Alternate... all) {
        return AlternateRows.figures(List.of(all)).stream()
                .filter(row -> row.label().startsWith(label))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void tellDifferencesToTheFirst() {
        AlternateRows.Row price =
                row("Price", alternate("A", "EUR", "1000.10", 0, 90), alternate("BB", "EUR", "950.05", 0, 90));

        assertThat(price.label()).isEqualTo("Price, EUR");
        assertThat(price.cells()).extracting(AlternateRows.Cell::value).containsExactly("1000.10", "950.05");
        assertThat(price.cells()).extracting(AlternateRows.Cell::difference).containsExactly("", "−50.05");
        assertThat(row("Peak", alternate("A", "EUR", "1", 0, 90), alternate("BB", "EUR", "1", 0, 90))
                        .cells())
                .extracting(AlternateRows.Cell::difference)
                .containsExactly("", "same");
    }

    @Test
    void tellNoDifferenceOfPricesThatLackSomethingOrAreOfOtherMoney() {
        AlternateRows.Row unpriced =
                row("Price", alternate("A", "EUR", "1000", 0, 90), alternate("BB", "EUR", "950", 2, 90));
        AlternateRows.Row foreign =
                row("Price", alternate("A", "EUR", "1000", 0, 90), alternate("BB", "USD", "950", 0, 90));

        assertThat(unpriced.cells()).extracting(AlternateRows.Cell::difference).containsExactly("", "");
        assertThat(unpriced.cells().get(1).note()).contains("without 2 items that have no price", "with freight");
        assertThat(foreign.cells()).extracting(AlternateRows.Cell::difference).containsExactly("", "");
        assertThat(foreign.cells().get(1).note()).contains("USD");
    }

    @Test
    void nameWhatTheAlternatesHaveDifferentNumbersOf() {
        assertThat(AlternateRows.things(List.of(alternate("A", "EUR", "1", 0, 90), alternate("BB", "EUR", "1", 0, 90))))
                .singleElement()
                .satisfies(row -> {
                    assertThat(row.label()).isEqualTo("Board eight");
                    assertThat(row.cells())
                            .extracting(AlternateRows.Cell::value)
                            .containsExactly("1", "2");
                });
    }

    @Test
    void sayWhatIsNotStated() {
        assertThat(row("Floor", alternate("A", "EUR", "1", 0, 90))
                        .cells()
                        .get(0)
                        .value())
                .isEqualTo("not stated");
    }
}
