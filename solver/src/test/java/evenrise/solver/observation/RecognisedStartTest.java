package evenrise.solver.observation;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.observation.Observation;
import evenrise.model.observation.Observer;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.stream.Stream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Starts of a plan, and those of other plants, which step in the same seconds and feed the same kinds of gear: of the two that
 * are drawn first, four in ten starts of the one fit the other, a second apart.
 */
@Tag("random")
class RecognisedStartTest {
    private static final int PLANTS = Integer.getInteger("evenrise.observed", 2);
    private static final int FIRST = Integer.getInteger("evenrise.observed.first", 3);

    private static Observation seen(
            Layout plan, Layout really, double spread, double interval, double sigma, double rate) {
        SimulatedStart start = new SimulatedStart(
                really, 0, spread, new Random(really.placements().size()));
        return Observer.of(plan, 0, Optional.empty(), start.recorded(interval, sigma, 5000, rate));
    }

    private static List<Layout> layouts() {
        return Stream.iterate((long) FIRST, seed -> seed + 1)
                .limit(PLANTS)
                .map(ObserverTest::layout)
                .toList();
    }

    @Test
    void takesNoOtherPlantsStartForThePlans() {
        List<Layout> layouts = layouts();
        List<Double> fitting = new ArrayList<>();
        for (Layout plan : layouts) {
            for (Layout other : layouts) {
                if (plan != other) {
                    Observation seen = seen(plan, other, 0.05, 0.02, 0.02, 1.0002);
                    fitting.add(seen.fitting() / Math.max(1, seen.visible()));
                    assertThat(seen.isRecognised())
                            .as("%s of %s", seen.fitting(), seen.visible())
                            .isFalse();
                }
            }
        }
        fitting.sort(null);
        System.out.printf(
                "%d recordings of other plants: of starts fit %.2f in the median, %.2f at most%n",
                fitting.size(), fitting.get(fitting.size() / 2), fitting.get(fitting.size() - 1));
    }

    /** A fast and a slow clock, noise of a coarse clamp, gear that draws a quarter more or less, a slow logger. */
    @ParameterizedTest
    @CsvSource({
        "0.05, 0.02, 0.02, 1",
        "0.05, 0.02, 0.02, 0.9993",
        "0.05, 0.02, 0.15, 1.0005",
        "0.25, 0.02, 0.02, 1",
        "0.05, 0.1, 0.05, 1.0002"
    })
    void knowsTheStartOfThePlan(double spread, double interval, double sigma, double rate) {
        double least = 1;
        for (Layout plan : layouts()) {
            Observation seen = seen(plan, plan, spread, interval, sigma, rate);
            least = Math.min(least, seen.fitting() / Math.max(1, seen.visible()));
            assertThat(seen.isRecognised())
                    .as("%s of %s", seen.fitting(), seen.visible())
                    .isTrue();
        }
        System.out.printf(
                "gear off by %.2f, each %.2f s, noise %.2f A: of starts fit %.2f at least%n",
                spread, interval, sigma, least);
    }
}
