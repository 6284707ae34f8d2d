package evenrise.solver.compare;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.solver.compare.Judged.Standing;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class LeastPriceTest {
    private static final double ALL = Double.POSITIVE_INFINITY;

    private record Priced(double price, Standing standing) {}

    private static Priced at(double price, Standing standing) {
        return new Priced(price, standing);
    }

    private static LeastPrice of(double completeBelow, Priced... makeUps) {
        List<Judged> judged = new ArrayList<>();
        for (Priced each : makeUps) {
            judged.add(new Judged(
                    judged.size() + 1,
                    new MakeUp(List.of(), List.of(), each.price()),
                    each.standing(),
                    Optional.empty(),
                    Optional.empty()));
        }
        return new LeastPrice(judged, completeBelow, false, List.of(), List.of(), List.of());
    }

    @Test
    void isProvenWhereAllThatIsCheaperIsRuledOut() {
        LeastPrice least =
                of(ALL, at(90, Standing.RULED_OUT), at(100, Standing.SOUND), at(110, Standing.NOT_LOOKED_AT));

        assertThat(least.isProven()).isTrue();
        assertThat(least.openBelow()).isEmpty();
    }

    @Test
    void isNotProvenWhereACheaperOneIsUndecided() {
        LeastPrice least = of(ALL, at(90, Standing.RULED_OUT), at(95, Standing.UNDECIDED), at(100, Standing.SOUND));

        assertThat(least.isProven()).isFalse();
        assertThat(least.undecidedFrom()).isEqualTo(95);
        assertThat(least.gapPercent()).isCloseTo(5, within(1e-9));
        assertThat(least.openBelow()).hasSize(1);
    }

    @Test
    void isNotProvenWhereNobodyLookedAtACheaperOne() {
        assertThat(of(ALL, at(95, Standing.NOT_LOOKED_AT), at(100, Standing.SOUND))
                        .isProven())
                .isFalse();
    }

    @Test
    void isProvenWhereAnUndecidedOneCostsTheSame() {
        assertThat(of(ALL, at(100, Standing.UNDECIDED), at(100, Standing.SOUND)).isProven())
                .isTrue();
    }

    @Test
    void isNotProvenAbovePricesThatWereNotAllListed() {
        LeastPrice least = of(97, at(90, Standing.RULED_OUT), at(100, Standing.SOUND));

        assertThat(least.isProven()).isFalse();
        assertThat(least.undecidedFrom()).isEqualTo(97);
    }

    @Test
    void isNoneWhereNothingStands() {
        LeastPrice least = of(ALL, at(90, Standing.RULED_OUT), at(95, Standing.UNDECIDED));

        assertThat(least.cheapest()).isEmpty();
        assertThat(least.isProven()).isFalse();
        assertThat(least.undecidedFrom()).isEqualTo(95);
    }
}
