package evenrise.solver.compare;

import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.check.ProjectChecks;
import evenrise.model.project.BreakerPrice;
import evenrise.model.project.Catalogue;
import evenrise.model.project.Load;
import evenrise.model.project.PanelType;
import evenrise.model.project.Project;
import evenrise.model.project.QuantityRange;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class QuantityPricesTest {
    private static final QuantityRange WASH = range("wash", 1, 5, "w1", "w2");

    private static QuantityRange range(String name, int low, int high, String... loads) {
        return QuantityRange.builder()
                .name(name)
                .loads(List.of(loads))
                .low(low)
                .high(high)
                .build();
    }

    /** Panels of 4 slots at 100, boards of 4 outputs at 50, breakers at 10: each load one pole. */
    private static Project project(List<QuantityRange> ranges) {
        return aProject()
                .panels(aPanel("P1").slots(4).ratedAmps(100))
                .boardTypes(aBoardType("four").outputs(4).price(50))
                .boards(evenrise.model.Fixtures.aBoard("B1").type("four"))
                .loads(aLoad("w1"), aLoad("w2"), aLoad("s1"))
                .catalogue(Catalogue.builder()
                        .currency("EUR")
                        .panelTypes(List.of(PanelType.builder()
                                .id("P")
                                .slots(4)
                                .ratedAmps(100)
                                .price(100)
                                .build()))
                        .breakers(List.of(BreakerPrice.builder()
                                .poles(1)
                                .upToAmps(63)
                                .price(10)
                                .build()))
                        .build())
                .build()
                .withQuantities(ranges);
    }

    private static PriceRange drawn(Project project, int draws) {
        return new QuantityPrices(project, () -> false).drawn(draws, 7);
    }

    @Nested
    class Quantities {
        @Test
        void leaveOutTheLastLoadsOrAddMoreLikeTheFirst() {
            Project project = project(List.of(WASH));
            Project asked = project.withLoads(List.of(
                    project.loads().get(0),
                    project.loads().get(1),
                    project.loads().get(2).withApartFrom(List.of("w1", "w2"))));

            assertThat(DrawnQuantities.of(asked, List.of(1)).loads())
                    .extracting(Load::id)
                    .containsExactly("w1", "s1");
            assertThat(DrawnQuantities.of(asked, List.of(1)).loads().get(1).apartFrom())
                    .containsExactly("w1");
            assertThat(DrawnQuantities.of(asked, List.of(4)).loads())
                    .extracting(Load::id)
                    .containsExactly("w1", "w2", "s1", "w1-1", "w1-2");
            assertThat(ProjectChecks.errors(DrawnQuantities.of(asked, List.of(4))))
                    .isEmpty();
        }

        @Test
        void areDrawnFromTheFewestToTheMost() {
            List<Integer> drawn = IntStream.rangeClosed(0, 1000)
                    .mapToObj(chance -> QuantityPrices.draw(WASH, chance / 1000.0))
                    .toList();

            assertThat(drawn).isSorted().startsWith(1).endsWith(5).contains(1, 2, 3, 4, 5);
            // the triangle from 0.5 over 2 to 5.5 has its median at 5.5 - √(0.5·5·3.5) = 2.54
            assertThat(drawn.get(500)).isEqualTo(3);
            assertThat(drawn.stream().filter(each -> each == 2).count())
                    // 1.5 to 2.5: 1 - 1/7.5 - 9/17.5 = 35.2 %
                    .isBetween(350L, 355L);
        }

        @Test
        void thatAreKnownAreNotDrawn() {
            assertThat(QuantityPrices.draw(range("s", 1, 1, "s1"), 0)).isEqualTo(1);
            assertThat(QuantityPrices.draw(range("s", 1, 1, "s1"), 0.999)).isEqualTo(1);
        }
    }

    /** Three loads: 100 + 50 + 30; two: 170; six need two of each: 200 + 100 + 60. */
    @Test
    void pricesAreThoseOfTheCheapestMakeUpForTheQuantities() {
        PriceRange range = drawn(project(List.of(WASH)), 50);

        assertThat(range.likely()).hasValue(180);
        assertThat(range.swings()).singleElement().satisfies(swing -> {
            assertThat(swing.atLow()).hasValue(170);
            assertThat(swing.atHigh()).hasValue(360);
        });
        assertThat(range.draws())
                .hasSize(50)
                .allSatisfy(draw -> assertThat(draw.price())
                        .hasValue(List.of(170.0, 180.0, 190.0, 350.0, 360.0)
                                .get(draw.counts().get(0) - 1)));
        assertThat(range).isEqualTo(drawn(project(List.of(WASH)), 50));
    }

    /** A panel of 4 slots at 100, a board of 4 outputs at 50 and 10 a load: five washes are two loads too many. */
    @Test
    void pricesOfItsOwnMakeUpEndWhereThatHoldsNoMore() {
        PriceRange range =
                QuantityPrices.ofOwnMakeUp(project(List.of(WASH)), () -> false).drawn(60, 7);

        assertThat(range.isOfOwnMakeUp()).isTrue();
        assertThat(range.likely()).hasValue(180);
        assertThat(range.swings()).singleElement().satisfies(swing -> {
            assertThat(swing.atLow()).hasValue(170);
            assertThat(swing.atHigh()).isEmpty();
            assertThat(swing.why()).isPresent();
        });
        assertThat(range.draws()).allSatisfy(draw -> {
            int washes = draw.counts().get(0);
            assertThat(draw.price())
                    .isEqualTo(washes > 3 ? OptionalDouble.empty() : OptionalDouble.of(160 + 10.0 * washes));
        });
        long more =
                range.draws().stream().filter(draw -> draw.counts().get(0) > 3).count();
        assertThat(range.without()).isEqualTo(more).isPositive();
        // The same draws as of the cheapest make-up.
        assertThat(range.draws())
                .extracting(PriceRange.Draw::counts)
                .isEqualTo(drawn(project(List.of(WASH)), 60).draws().stream()
                        .map(PriceRange.Draw::counts)
                        .toList());
    }

    @Test
    void whatNobodyStatesIsNotVaried() {
        QuantityRange unknown = range("few", 1, 1, "s1").withStated(false);

        assertThat(drawn(project(List.of(WASH, unknown)), 5).swings())
                .extracting(swing -> swing.range().name())
                .containsExactly("wash");
    }

    /** Four loads of a group fill the board of four outputs, of which one is to be left free; three do not. */
    @Test
    void whyThereIsNoMakeUpIsSaid() {
        Project three = project(List.of(range("wash", 1, 2, "w1", "w2")));
        Project grouped = three.with()
                .loads(three.loads().stream()
                        .map(load -> load.withShutdownGroup(java.util.Optional.of("hall")))
                        .toList())
                .shutdownGroups(List.of(evenrise.model.project.ShutdownGroup.builder()
                        .id("hall")
                        .onEmergency(evenrise.model.project.OnEmergency.HOLD)
                        .samePanel(false)
                        .build()))
                .boardTypes(three.boardTypes().stream()
                        .map(type -> type.withSpareOutputs(1))
                        .toList())
                .quantities(List.of(range("wash", 1, 3, "w1", "w2")))
                .build();

        assertThat(drawn(grouped, 5).swings()).singleElement().satisfies(swing -> {
            assertThat(swing.atLow()).isPresent();
            assertThat(swing.atHigh()).isEmpty();
            assertThat(swing.why())
                    .hasValueSatisfying(why -> assertThat(why).contains("'hall' has 4 loads", "4 outputs has 3"));
        });
    }

    @Test
    void whatThePriceDependsOnMostStandsFirst() {
        PriceRange range = drawn(project(List.of(range("few", 1, 2, "s1"), WASH)), 10);

        assertThat(range.swings()).extracting(swing -> swing.range().name()).containsExactly("wash", "few");
    }

    @Test
    void percentilesAreDrawsAndThoseWithoutAMakeUpAreDearest() {
        List<PriceRange.Draw> draws = IntStream.rangeClosed(1, 10)
                .mapToObj(i ->
                        new PriceRange.Draw(List.of(i), i == 10 ? OptionalDouble.empty() : OptionalDouble.of(100 * i)))
                .toList();
        PriceRange range = new PriceRange(List.of(WASH), OptionalDouble.empty(), draws, List.of(), false, false);

        assertThat(range.percentile(10)).hasValue(100);
        assertThat(range.percentile(50)).hasValue(500);
        assertThat(range.percentile(90)).hasValue(900);
        assertThat(range.percentile(95)).isEmpty();
        assertThat(range.without()).isEqualTo(1);
    }
}
