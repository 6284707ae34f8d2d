package evenrise.model.observation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LeastCoverTest {
    private static BitSet set(int... elements) {
        BitSet set = new BitSet();
        IntStream.of(elements).forEach(set::set);
        return set;
    }

    @Test
    void findsFewerThanTheGreatestSetFirstWould() {
        // The greatest holds 0 to 3 and leaves 4 and 5 to two more; the other two hold all.
        List<BitSet> sets = List.of(set(0, 1, 2, 3), set(0, 1, 4), set(2, 3, 5));

        LeastCover.Cover cover = LeastCover.of(sets, 6, LeastCover.MOST_BRANCHES);

        assertThat(cover.sets()).containsExactly(1, 2);
        assertThat(cover.isLeast()).isTrue();
    }

    @Test
    void takesNothingForNothing() {
        assertThat(LeastCover.of(List.of(set(0)), 0, LeastCover.MOST_BRANCHES).sets())
                .isEmpty();
    }

    @Test
    void refusesAnElementThatNoSetHolds() {
        assertThatThrownBy(() -> LeastCover.of(List.of(set(0)), 2, LeastCover.MOST_BRANCHES))
                .isInstanceOf(IllegalArgumentException.class)
                .hasMessageContaining("element 1");
    }

    @Test
    void findsWhatLookingAtEveryChoiceFinds() {
        for (int seed = 1; seed <= 300; seed++) {
            Random chance = new Random(seed);
            int elements = 1 + chance.nextInt(9);
            List<BitSet> sets = drawn(chance, elements, 3 + chance.nextInt(6));

            LeastCover.Cover cover = LeastCover.of(sets, elements, LeastCover.MOST_BRANCHES);

            assertThat(cover.sets()).as("seed " + seed).hasSize(least(sets, elements));
            assertThat(held(sets, cover.sets())).as("seed " + seed).isEqualTo(elements);
            assertThat(cover.isLeast()).isTrue();
        }
    }

    @Test
    void saysNoMoreThanTheLeastWhereItStopsEarly() {
        for (int seed = 1; seed <= 100; seed++) {
            Random chance = new Random(seed);
            List<BitSet> sets = drawn(chance, 9, 8);

            LeastCover.Cover cover = LeastCover.of(sets, 9, 0);

            assertThat(cover.atLeast()).as("seed " + seed).isLessThanOrEqualTo(least(sets, 9));
            assertThat(held(sets, cover.sets())).as("seed " + seed).isEqualTo(9);
        }
    }

    /** Some at random, and each element by itself, so that all are held. */
    private static List<BitSet> drawn(Random chance, int elements, int some) {
        List<BitSet> sets = new ArrayList<>();
        for (int i = 0; i < some; i++) {
            BitSet set = new BitSet();
            for (int each = 0; each < elements; each++) {
                set.set(each, chance.nextInt(3) == 0);
            }
            sets.add(set);
        }
        IntStream.range(0, elements).forEach(each -> sets.add(set(each)));
        return sets;
    }

    private static int held(List<BitSet> sets, List<Integer> chosen) {
        BitSet held = new BitSet();
        chosen.forEach(each -> held.or(sets.get(each)));
        return held.cardinality();
    }

    private static int least(List<BitSet> sets, int elements) {
        int least = elements;
        for (int choice = 0; choice < 1 << sets.size(); choice++) {
            if (Integer.bitCount(choice) < least) {
                int bits = choice;
                List<Integer> chosen = IntStream.range(0, sets.size())
                        .filter(each -> (bits >> each & 1) == 1)
                        .boxed()
                        .toList();
                least = held(sets, chosen) == elements ? chosen.size() : least;
            }
        }
        return least;
    }
}
