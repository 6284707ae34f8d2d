package evenrise.solver.report;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.observation.Clock;
import evenrise.model.observation.ExpectedStart;
import evenrise.model.observation.FurtherReadings;
import evenrise.model.observation.InrushFit;
import evenrise.model.observation.Observation;
import evenrise.model.observation.ObservedStart;
import evenrise.model.observation.ObservedStart.Finding;
import evenrise.model.project.Phase;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.DoubleStream;
import org.junit.jupiter.api.Test;

/** Starts of one load that comes on at 1 s, as waves have shown its peak. */
class RepeatedTextTest {
    private static SeenStart start(double lateSeconds, double peakAmps) {
        ExpectedStart expected = new ExpectedStart(List.of("amp"), List.of(), 1, Map.of(), Map.of(), Map.of(), 0.01);
        ObservedStart seen = new ObservedStart(
                expected,
                Finding.AS_PLANNED,
                Finding.AS_PLANNED,
                Optional.empty(),
                OptionalDouble.of(1 + lateSeconds),
                1,
                Optional.empty());
        Observation observation = new Observation(
                new Clock(0, 1),
                0.02,
                Map.of(),
                Map.of(),
                Map.of(),
                List.of(),
                List.of(seen),
                List.of(),
                new FurtherReadings(List.of(), List.of(), 0));
        WaveStart wave = new WaveStart(
                "amp", Phase.A, 1, new InrushFit(1, peakAmps, 3, OptionalDouble.empty()), OptionalDouble.of(130), 10);
        return new SeenStart("start.csv", observation, List.of(wave));
    }

    private static String text(double... peaks) {
        List<SeenStart> starts =
                DoubleStream.of(peaks).mapToObj(peak -> start(0.001, peak)).toList();
        return String.join(" ", RepeatedText.lines(starts.get(0), starts.subList(1, starts.size()), Paint.NONE))
                .replaceAll("\\s+", " ");
    }

    @Test
    void isNothingOfOneRecording() {
        assertThat(text(100)).isEmpty();
    }

    @Test
    void saysHowPeaksOfTheSameLoadDiffer() {
        assertThat(text(90, 110))
                .contains("amp A 2 90.0 110.0 - 130.0")
                .contains("0 above what is stated, 0 more that another closing may be above");
    }

    /** Mean 100 A, deviation 10 A: one more stays below 133.7 A, and 130 A are stated. */
    @Test
    void warnsWhereAnotherClosingMayBeAboveWhatIsStated() {
        assertThat(text(90, 100, 110))
                .contains("amp A 3 90.0 110.0 133.7 130.0")
                .contains("0 above what is stated, 1 more that another closing may be above");
    }

    @Test
    void warnsWhereOneWas() {
        assertThat(text(90, 131)).contains("1 above what is stated");
    }

    @Test
    void saysWhereTooFewLoadsWereSeenTwice() {
        assertThat(text(90, 110)).contains("Too few loads came on alone as planned in two of them");
    }
}
