package evenrise.solver.intake;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.project.Role;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import java.util.Set;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class PackingTest {
    private static final Bundle.Limits LIMITS = new Bundle.Limits(100, 100);

    private static Bundle.Piece piece(double amps, double tripAmps) {
        Item item = new Item(
                "row 1",
                1,
                "piece",
                "",
                Role.AUXILIARY,
                "",
                "",
                Gear.ELECTRONICS,
                Service.SWITCHED,
                OptionalDouble.empty(),
                1,
                amps,
                amps,
                0,
                1,
                OptionalDouble.empty(),
                Set.of(),
                "",
                Ties.NONE,
                Label.NONE,
                ListedCircuit.NONE,
                Optional.empty(),
                false);
        return new Bundle.Piece(item, amps, tripAmps);
    }

    private static List<Bundle.Piece> amps(double... amps) {
        List<Bundle.Piece> pieces = new ArrayList<>();
        for (double each : amps) {
            pieces.add(piece(each, 0));
        }
        return pieces;
    }

    /** Every assignment of pieces to breakers, the slow way: the next piece on each breaker in use, or on one more. */
    private static int fewest(List<Bundle.Piece> pieces, int next, double[] amps, double[] trips, int used) {
        if (next == pieces.size()) {
            return used;
        }
        int best = Integer.MAX_VALUE;
        for (int i = 0; i <= used && i < amps.length; i++) {
            Bundle.Piece piece = pieces.get(next);
            if (amps[i] + piece.amps() <= LIMITS.amps() + 1e-9
                    && trips[i] + piece.tripAmps() <= LIMITS.tripAmps() + 1e-9) {
                amps[i] += piece.amps();
                trips[i] += piece.tripAmps();
                best = Math.min(best, fewest(pieces, next + 1, amps, trips, Math.max(used, i + 1)));
                amps[i] -= piece.amps();
                trips[i] -= piece.tripAmps();
            }
        }
        return best;
    }

    @Nested
    class OnFewPieces {
        @ParameterizedTest
        @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 18, 19, 20})
        void isTheOptimumThatTryingEverythingFinds(int seed) {
            Random random = new Random(seed);
            List<Bundle.Piece> pieces = new ArrayList<>();
            for (int i = 0; i < 8; i++) {
                pieces.add(piece(10 + random.nextInt(60), 5 + random.nextInt(70)));
            }

            int optimum = fewest(pieces, 0, new double[8], new double[8], 0);

            assertThat(Packing.of(pieces, LIMITS)).hasSize(optimum);
            assertThat(Packing.leastBundles(pieces, LIMITS)).isLessThanOrEqualTo(optimum);
        }

        /** Best fit decreasing puts 44 + 44, then 30 + 30 + 26, and 26 on a third; 44 + 30 + 26 twice is enough. */
        @Test
        void improvesOnBestFit() {
            List<Bundle.Piece> pieces = amps(44, 44, 30, 26, 26, 30);

            assertThat(Packing.of(pieces, LIMITS)).hasSize(2);
        }

        @Test
        void holdsTheInrushAsWellAsTheCurrent() {
            List<Bundle.Piece> pieces = List.of(piece(10, 60), piece(10, 60), piece(10, 40));

            assertThat(Packing.of(pieces, LIMITS)).hasSize(2);
        }
    }

    @Nested
    class OnManyPieces {
        /** Triplets that fill a breaker exactly, so the optimum is known from how they were made (Falkenauer's kind). */
        @ParameterizedTest
        @ValueSource(ints = {1, 2, 3, 4, 5})
        void isNearTheOptimumOfTriplets(int seed) {
            Random random = new Random(seed);
            List<Bundle.Piece> pieces = new ArrayList<>();
            int optimum = 60;
            for (int i = 0; i < optimum; i++) {
                double first = 38 + 11 * random.nextDouble();
                double second = 25 + (49 - first) / 2 * random.nextDouble();
                pieces.addAll(amps(first, second, 100 - first - second));
            }
            Collections.shuffle(pieces, random);

            List<Bundle> bundles = Packing.of(pieces, LIMITS);

            assertThat(Packing.leastBundles(pieces, LIMITS)).isEqualTo(optimum);
            assertThat(bundles.size()).isBetween(optimum, optimum + optimum / 6);
            assertThat(bundles).allSatisfy(bundle -> assertThat(bundle.amps()).isLessThanOrEqualTo(100 + 1e-6));
            assertThat(bundles.stream()
                            .mapToInt(bundle -> bundle.pieces().size())
                            .sum())
                    .isEqualTo(pieces.size());
        }
    }
}
