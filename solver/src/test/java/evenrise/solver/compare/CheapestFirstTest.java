package evenrise.solver.compare;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.compare.CheapestFirst.Way;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CheapestFirstTest {
    private record Thing(double price, double slots, double amps, int place) {}

    /** Everything up to so many of each thing, the slow way. */
    private static void all(List<Thing> things, int from, int most, List<Thing> taken, List<List<Thing>> ways) {
        if (from == things.size()) {
            ways.add(List.copyOf(taken));
            return;
        }
        for (int count = 0; count <= most; count++) {
            List<Thing> more = new ArrayList<>(taken);
            more.addAll(Collections.nCopies(count, things.get(from)));
            all(things, from + 1, most, more, ways);
        }
    }

    private static double price(List<Thing> way) {
        return way.stream().mapToDouble(Thing::price).sum();
    }

    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void listsEveryWayThatMeetsAllNeedsInOrderOfPrice(int seed) {
        Random random = new Random(seed);
        List<Thing> things = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            things.add(
                    new Thing(1 + random.nextInt(9), random.nextInt(8), 10 * random.nextDouble(), random.nextInt(2)));
        }
        List<Need<Thing>> needs = List.of(
                new Need<>(random.nextInt(14), Thing::slots, Optional.empty()),
                new Need<>(12 * random.nextDouble(), Thing::amps, Optional.empty()),
                new Need<>(1, thing -> thing.place() == 0 ? 1 : 0, Optional.of("place")),
                new Need<>(2, thing -> thing.place() == 1 ? thing.slots() : 0, Optional.of("place")));
        List<List<Thing>> ways = new ArrayList<>();
        all(things, 0, 4, new ArrayList<>(), ways);
        // up to four of each: whatever costs less than five of the cheapest is among them
        double known = 5 * things.stream().mapToDouble(Thing::price).min().orElseThrow();
        List<Double> expected = ways.stream()
                .filter(way -> needs.stream()
                        .allMatch(need ->
                                need.isMet(way.stream().mapToDouble(need.of()).sum())))
                .map(CheapestFirstTest::price)
                .filter(price -> price < known)
                .sorted()
                .toList();

        CheapestFirst<Thing> source =
                new CheapestFirst<>(things, Thing::price, CheapestFirst.Surcharge.none(), needs, 0, Integer.MAX_VALUE);
        List<Double> listed = new ArrayList<>();
        for (Optional<Way<Thing>> way = source.next();
                way.isPresent() && way.get().price() < known;
                way = source.next()) {
            listed.add(way.get().price());
        }

        assertThat(listed).isEqualTo(expected);
    }

    @Test
    void keepsToTheNumbersAskedFor() {
        List<Thing> things = List.of(new Thing(3, 4, 0, 0), new Thing(5, 9, 0, 0));
        CheapestFirst<Thing> source = new CheapestFirst<>(
                things,
                Thing::price,
                CheapestFirst.Surcharge.none(),
                List.of(new Need<>(9, Thing::slots, Optional.empty())),
                2,
                2);

        // 8 slots are not enough, so the cheapest two have 13
        assertThat(source.next())
                .hasValueSatisfying(way -> assertThat(way.price()).isEqualTo(8));
        assertThat(source.next())
                .hasValueSatisfying(way -> assertThat(way.price()).isEqualTo(10));
        assertThat(source.next()).isEmpty();
    }

    @Test
    void listsNothingWhereANeedCannotBeMet() {
        CheapestFirst<Thing> source = new CheapestFirst<>(
                List.of(new Thing(3, 0, 5, 0)),
                Thing::price,
                CheapestFirst.Surcharge.none(),
                List.of(new Need<>(9, Thing::slots, Optional.empty())),
                0,
                Integer.MAX_VALUE);

        assertThat(source.next()).isEmpty();
        assertThat(source.isCut()).isFalse();
    }

    /** One costs 10, two 6 each, three or more 5 each; the other thing 6 whatever the number. */
    @Test
    void takesThingsAtThePriceOfTheirNumber() {
        Thing falling = new Thing(5, 1, 0, 0);
        Thing steady = new Thing(6, 1, 0, 1);
        CheapestFirst.Surcharge<Thing> surcharge = new CheapestFirst.Surcharge<>() {
            @Override
            public Object priced(Thing kind) {
                return kind;
            }

            @Override
            public double of(Thing kind, int count) {
                return kind == falling ? List.of(0, 5, 2).get(count % 3) * (count < 3 ? 1 : 0) : 0;
            }
        };
        CheapestFirst<Thing> source = new CheapestFirst<>(
                List.of(falling, steady),
                Thing::price,
                surcharge,
                List.of(new Need<>(2, Thing::slots, Optional.empty())),
                0,
                3);

        List<Double> prices = new ArrayList<>();
        for (int i = 0; i < 7; i++) {
            prices.add(source.next().orElseThrow().price());
        }

        // two steady 12, two falling 12, three falling 15, one of each 16, three steady 18, two falling and one 18, 10
        // + 12
        assertThat(prices).containsExactly(12.0, 12.0, 15.0, 16.0, 18.0, 18.0, 22.0);
        assertThat(source.next()).isEmpty();
    }
}
