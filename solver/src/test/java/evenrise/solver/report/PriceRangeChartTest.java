package evenrise.solver.report;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.QuantityRange;
import evenrise.solver.compare.PriceRange;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;

class PriceRangeChartTest {
    private static final QuantityRange WASH = QuantityRange.builder()
            .name("wash <lights>")
            .loads(List.of("w1", "w2"))
            .low(1)
            .high(5)
            .build();

    private static PriceRange range(OptionalDouble atHigh, List<PriceRange.Draw> draws) {
        return new PriceRange(
                List.of(WASH),
                OptionalDouble.of(150),
                draws,
                List.of(new PriceRange.Swing(
                        WASH, OptionalDouble.of(100), atHigh, Optional.of("no board is so large"))),
                false,
                false);
    }

    private static List<PriceRange.Draw> hundred() {
        return IntStream.rangeClosed(1, 100)
                .mapToObj(i -> new PriceRange.Draw(List.of(1), OptionalDouble.of(100 + i)))
                .toList();
    }

    @Test
    void showsTheSpreadItsPercentilesAndWhatItDependsOn() throws Exception {
        String svg = PriceRangeChart.svg(range(OptionalDouble.of(260), hundred()), "EUR")
                .orElseThrow();

        DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new ByteArrayInputStream(svg.getBytes(StandardCharsets.UTF_8)));
        assertThat(svg)
                .contains(">P10<", ">P50<", ">P90<", "price, EUR", "wash &lt;lights&gt;", ">1<", ">5<", "260.00");
    }

    @Test
    void columnsHoldEachDrawOnce() {
        String svg = PriceRangeChart.svg(range(OptionalDouble.of(260), hundred()), "EUR")
                .orElseThrow();

        int drawn = java.util.regex.Pattern.compile("<title>([0-9]+) of 100 draws</title>")
                .matcher(svg)
                .results()
                .mapToInt(each -> Integer.parseInt(each.group(1)))
                .sum();
        assertThat(drawn).isEqualTo(100);
    }

    @Test
    void anEndWithoutAMakeUpIsSaid() {
        PriceRange range = range(OptionalDouble.empty(), hundred());

        assertThat(PriceRangeChart.svg(range, "EUR").orElseThrow()).contains("5: no make-up");
        assertThat(PriceRangeText.reasons(range))
                .containsExactly("wash <lights>, no make-up at its most: no board is so large.");
    }

    @Test
    void isNoneWhereNoDrawHasAPrice() {
        PriceRange range =
                range(OptionalDouble.empty(), List.of(new PriceRange.Draw(List.of(1), OptionalDouble.empty())));

        assertThat(PriceRangeChart.svg(range, "EUR")).isEmpty();
    }
}
