package evenrise.model.check;

import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.BreakerPrice;
import evenrise.model.project.Catalogue;
import evenrise.model.project.CatalogueBuilder;
import evenrise.model.project.LabourHours;
import evenrise.model.project.PriceBreak;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class CatalogueChecksTest {
    private static List<Objection> errors(CatalogueBuilder catalogue) {
        return ProjectChecks.errors(
                aProject().catalogue(catalogue.currency("EUR").build()).build());
    }

    private static BreakerPrice breaker(int... from) {
        return BreakerPrice.builder()
                .poles(1)
                .upToAmps(20)
                .price(50)
                .priceBreaks(java.util.Arrays.stream(from)
                        .mapToObj(each ->
                                PriceBreak.builder().from(each).price(40).build())
                        .toList())
                .build();
    }

    @Test
    void breaksOfAPriceRise() {
        assertThat(errors(Catalogue.builder().breakers(List.of(breaker(5, 10)))))
                .isEmpty();
        assertThat(errors(Catalogue.builder().breakers(List.of(breaker(5, 5)))))
                .singleElement()
                .satisfies(it -> {
                    assertThat(it.pointer()).isEqualTo("/catalogue/breakers/0/price_breaks/1/from");
                    assertThat(it.expected()).contains("more than 5");
                });
    }

    @Test
    void workHasAPriceOrHoursAndNotBoth() {
        LabourHours hours = LabourHours.builder().rate(60).perPole(0.3).build();

        assertThat(errors(Catalogue.builder().labourHours(Optional.of(hours)).labourPerPanel(400)))
                .isEmpty();
        assertThat(errors(Catalogue.builder().labourHours(Optional.of(hours)).labourPerPole(20)))
                .singleElement()
                .satisfies(it -> assertThat(it.pointer()).isEqualTo("/catalogue/labour_hours/per_pole"));
    }

    @Test
    void workAtNightHasARate() {
        LabourHours hours = LabourHours.builder().rate(60).nightPercent(10).build();

        assertThat(errors(Catalogue.builder().labourHours(Optional.of(hours))))
                .singleElement()
                .satisfies(it -> assertThat(it.pointer()).isEqualTo("/catalogue/labour_hours/night_rate"));
        assertThat(errors(Catalogue.builder()
                        .labourHours(Optional.of(hours.with().nightRate(90).build()))))
                .isEmpty();
    }
}
