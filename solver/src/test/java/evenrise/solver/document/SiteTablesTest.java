package evenrise.solver.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.solver.recording.DrawnStart;
import java.math.BigDecimal;
import java.util.List;
import org.junit.jupiter.api.Test;

/** What is planned on the sheets for site. */
class SiteTablesTest {
    private final Layout yard = DrawnStart.yard();
    private final SiteTables site = new SiteTables(yard);

    private static List<String> figures(DocumentTable<PanelTest> table) {
        return table.columns().stream()
                .filter(Column::isNumber)
                .flatMap(column -> table.rows().stream()
                        .map(row -> column.value().apply(row).toString()))
                .toList();
    }

    @Test
    void sumsAreAsFineAsAMeterShowsThem() {
        for (DocumentTable<PanelTest> table : List.of(site.tests(), site.feeders())) {
            assertThat(figures(table))
                    .isNotEmpty()
                    .allSatisfy(figure -> assertThat(new BigDecimal(figure).scale())
                            .as(figure)
                            .isLessThanOrEqualTo(2));
        }
    }

    @Test
    void sumsAreThoseOfThePlan() {
        PanelTest hall = PanelTest.of(yard).get(0);

        Object shown = site.tests().columns().stream()
                .filter(column -> column.key().equals("idleB"))
                .findFirst()
                .orElseThrow()
                .value()
                .apply(hall);

        assertThat((Double) shown).isCloseTo(hall.idleAmps().get(Phase.B), within(0.005));
        assertThat(shown).hasToString("17.1");
    }
}
