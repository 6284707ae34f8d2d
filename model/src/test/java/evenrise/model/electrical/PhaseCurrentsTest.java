package evenrise.model.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class PhaseCurrentsTest {
    @Nested
    class Sums {
        @Test
        void countTheLineCurrentOnEveryPole() {
            PhaseCurrents currents = new PhaseCurrents(PhaseSystem.THREE_PHASE);
            currents.add(List.of(Phase.A, Phase.B), 12);
            currents.add(List.of(Phase.B), 5);

            assertThat(currents.byPhase())
                    .containsExactly(Map.entry(Phase.A, 12.0), Map.entry(Phase.B, 17.0), Map.entry(Phase.C, 0.0));
        }

        @Test
        void speakOnlyOfThePhasesOfTheSystem() {
            assertThat(new PhaseCurrents(PhaseSystem.SPLIT_PHASE).byPhase()).containsOnlyKeys(Phase.A, Phase.B);
        }
    }

    @Nested
    class Deviation {
        @Test
        void isTheLargestDistanceFromTheMean() {
            PhaseCurrents currents = new PhaseCurrents(PhaseSystem.THREE_PHASE);
            currents.add(List.of(Phase.A), 30);
            currents.add(List.of(Phase.B), 24);
            currents.add(List.of(Phase.C), 6);

            // mean 20 A; C is 14 A below: 70 %
            assertThat(currents.imbalance().deviationAmps()).isCloseTo(14, within(1e-12));
            assertThat(currents.imbalance().percent()).isCloseTo(70, within(1e-9));
        }

        @Test
        void isZeroForAnIdleNode() {
            assertThat(new PhaseCurrents(PhaseSystem.THREE_PHASE).imbalance()).isEqualTo(new Imbalance(0, 0, 0));
        }

        @Test
        void isZeroOnASinglePhase() {
            PhaseCurrents currents = new PhaseCurrents(PhaseSystem.SINGLE_PHASE);
            currents.add(List.of(Phase.A), 30);

            assertThat(currents.imbalance()).isEqualTo(new Imbalance(30, 0, 0));
        }

        @Test
        void isAHundredPercentForOneLegOfTwo() {
            PhaseCurrents currents = new PhaseCurrents(PhaseSystem.SPLIT_PHASE);
            currents.add(List.of(Phase.B), 30);

            assertThat(currents.imbalance()).isEqualTo(new Imbalance(15, 15, 100));
        }
    }
}
