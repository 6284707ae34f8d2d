package evenrise.model.electrical;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import org.junit.jupiter.api.Test;

/** Identities; values from outside are in the validation tables. */
class SymmetricalComponentsTest {
    @Test
    void threePoleLoadsAreAllPositiveSequence() {
        LineCurrents lines = new LineCurrents(PhaseSystem.THREE_PHASE);

        lines.add(List.of(Phase.B, Phase.C, Phase.A), 30, Lag.behind(0.8));

        assertThat(lines.components().positive().length()).isCloseTo(30, within(1e-9));
        assertThat(lines.components().negativePercent()).isCloseTo(0, within(1e-9));
        assertThat(lines.components().zeroPercent()).isCloseTo(0, within(1e-9));
    }

    @Test
    void onePoleLoadSharesItselfOverTheThreeSequences() {
        LineCurrents lines = new LineCurrents(PhaseSystem.THREE_PHASE);

        lines.add(List.of(Phase.B), 30, Lag.behind(1));

        assertThat(lines.components().positive().length()).isCloseTo(10, within(1e-9));
        assertThat(lines.components().negativePercent()).isCloseTo(100, within(1e-9));
        assertThat(lines.components().zeroPercent()).isCloseTo(100, within(1e-9));
    }

    @Test
    void twoPoleLoadReturnsNothingThroughTheNeutral() {
        LineCurrents lines = new LineCurrents(PhaseSystem.THREE_PHASE);

        lines.add(List.of(Phase.C, Phase.A), 12, Lag.behind(0.9));

        // A load between two lines has sequences of I/√3 each and no zero sequence.
        assertThat(lines.components().positive().length()).isCloseTo(12 / Math.sqrt(3), within(1e-9));
        assertThat(lines.components().negativePercent()).isCloseTo(100, within(1e-9));
        assertThat(lines.components().zeroPercent()).isCloseTo(0, within(1e-9));
    }

    @Property(tries = 500)
    void threeTimesTheZeroSequenceIsTheNeutral(
            @ForAll @DoubleRange(max = 200) double a,
            @ForAll @DoubleRange(max = 200) double b,
            @ForAll @DoubleRange(max = 200) double c,
            @ForAll @DoubleRange(min = 0.1, max = 1) double powerFactor) {
        LineCurrents lines = new LineCurrents(PhaseSystem.THREE_PHASE);
        NeutralCurrent neutral = new NeutralCurrent(PhaseSystem.THREE_PHASE);
        double[] amps = {a, b, c};
        for (Phase phase : Phase.values()) {
            lines.add(List.of(phase), amps[phase.ordinal()], Lag.behind(powerFactor));
            neutral.add(phase, amps[phase.ordinal()], Lag.behind(powerFactor), 0);
        }

        assertThat(3 * lines.components().zero().length()).isCloseTo(neutral.amps(), within(1e-9));
    }
}
