package evenrise.model.measured;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Phase;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Voltages that were read at the supply and the panel of {@link OnSite}. */
class VoltageScatterTest {
    private static PlaceReading read(String place, Map<Phase, Double> volts) {
        return new PlaceReading(
                place,
                volts,
                Map.of(),
                Map.of(),
                Map.of(),
                OptionalDouble.empty(),
                Optional.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                OnSite.VISIT);
    }

    private static Optional<VoltageScatter> of(PlaceReading... all) {
        return VoltageScatter.of(OnSite.layout(), new SiteReadings(List.of(), List.of(all), List.of()));
    }

    @Test
    void tellsMeanAndSpreadAsPartsOfWhatIsNominal() {
        double nominal =
                OnSite.layout().distribution().point("P1").orElseThrow().lineToNeutralVolts();

        VoltageScatter seen = of(read(
                        "P1", Map.of(Phase.A, 0.98 * nominal, Phase.B, 1.0 * nominal, Phase.C, 1.02 * nominal)))
                .orElseThrow();

        // Squares of 0.02, 0 and 0.02, over two: 0.0004, whose root is 0.02.
        assertThat(seen.mean()).isCloseTo(1, within(1e-9));
        assertThat(seen.deviation()).isCloseTo(0.02, within(1e-9));
        // 1.02 / 0.98 - 1
        assertThat(seen.mayBeMore()).isCloseTo(0.040816, within(1e-6));
        assertThat(seen.counted()).isEqualTo("3 readings at 1 place");
    }

    @Test
    void tellsNothingOfTwo() {
        assertThat(of(read("P1", Map.of(Phase.A, 230.0, Phase.B, 231.0)))).isEmpty();
    }

    @Test
    void leavesOutADeadPhaseAndAPlaceThatIsNone() {
        assertThat(of(
                        read("P1", Map.of(Phase.A, 230.0, Phase.B, 231.0, Phase.C, 0.0)),
                        read("nowhere", Map.of(Phase.A, 230.0))))
                .isEmpty();
    }
}
