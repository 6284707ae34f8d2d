package evenrise.model.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class LineAmpsTest {
    private final LineAmps amps = new LineAmps(PhaseSystem.THREE_PHASE);

    /**
     * 13 A with r = 0.75 are 10.4 A and 7.8 A of third harmonic. At unity and at power factor 0.5, 60° apart: fundamentals
     * 2·10.4·cos 30° = 18.013 A, third harmonics 15.6 A; together √(18.013² + 15.6²) = 23.829 A.
     */
    @Test
    void addsFundamentalsByPhasorAndThirdHarmonicsAsNumbers() {
        amps.add(List.of(Phase.B), 13, Lag.NONE, 0.75);
        amps.add(List.of(Phase.B), 13, Lag.behind(0.5), 0.75);

        assertThat(amps.amps(Phase.B)).isCloseTo(23.829, within(0.001));
    }

    @Test
    void namesEveryPhase() {
        amps.add(List.of(Phase.A), 12, Lag.NONE, 0);
        amps.add(List.of(Phase.C), 6, Lag.NONE, 0);

        assertThat(amps.byPhase()).isEqualTo(Map.of(Phase.A, 12.0, Phase.B, 0.0, Phase.C, 6.0));
    }

    /** 12, 6 and 6 A: mean 8 A, off by 4 A, 50 %; on the two phases that a panel has, 12 and 6: mean 9, off by 3. */
    @Test
    void differsOverThePhasesThatThereAre() {
        amps.add(List.of(Phase.A), 12, Lag.NONE, 0);
        amps.add(List.of(Phase.B), 6, Lag.NONE, 0);
        amps.add(List.of(Phase.C), 6, Lag.NONE, 0);

        assertThat(amps.imbalance(List.of(Phase.values())).percent()).isCloseTo(50, within(1e-9));
        assertThat(amps.imbalance(List.of(Phase.A, Phase.B)).deviationAmps()).isCloseTo(3, within(1e-9));
    }
}
