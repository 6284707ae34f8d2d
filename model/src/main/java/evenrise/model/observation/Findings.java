package evenrise.model.observation;

import evenrise.model.observation.Likeness.Explanation;
import evenrise.model.observation.ObservedStart.Finding;
import evenrise.model.project.Phase;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.DoubleFunction;

/** What is said of every expected start, and how surely. */
final class Findings {
    private final MatchedStarts reading;
    private final Recording recording;
    private final Map<Phase, Double> sigmas;
    private final DoubleFunction<RecordedStart> at;

    /**
     * @param sigmas noise of a sample, by phase
     * @param at what is seen at a moment of the logger's clock at which no start was found
     */
    Findings(MatchedStarts reading, Recording recording, Map<Phase, Double> sigmas, DoubleFunction<RecordedStart> at) {
        this.reading = reading;
        this.recording = recording;
        this.sigmas = sigmas;
        this.at = at;
    }

    List<ObservedStart> starts() {
        List<ObservedStart> starts = new ArrayList<>();
        for (int i = 0; i < reading.expected().size(); i++) {
            OptionalInt j = reading.match().recordedOf(i);
            starts.add(j.isPresent() ? matched(i, j.getAsInt()) : missing(i));
        }
        new Swaps(reading).name(starts);
        return starts;
    }

    private ObservedStart matched(int i, int j) {
        Explanation why = reading.match().pair(i).explanation();
        double confidence = why == Explanation.AS_PLANNED ? 1 : reading.match().confidence(i);
        Finding finding = confidence < Observer.SURE ? Finding.CANNOT_TELL : Finding.valueOf(why.name());
        return new ObservedStart(
                reading.expected().get(i),
                finding,
                Finding.valueOf(why.name()),
                Optional.of(reading.recorded().get(j)),
                OptionalDouble.of(reading.planSeconds(j)),
                confidence,
                Optional.empty());
    }

    private ObservedStart missing(int i) {
        ExpectedStart expected = reading.expected().get(i);
        double confidence = reading.match().confidence(i);
        return new ObservedStart(
                expected,
                missing(expected, confidence),
                Finding.MISSING,
                Optional.empty(),
                OptionalDouble.empty(),
                confidence,
                Optional.empty());
    }

    private Finding missing(ExpectedStart expected, double confidence) {
        double[] seconds = recording.seconds();
        double interval = recording.intervalSeconds();
        double due = reading.clock().logger(expected.seconds());
        if (due < seconds[0] + 2 * interval || due > seconds[seconds.length - 1] - 2 * interval) {
            return Finding.NOT_RECORDED;
        }
        if (sigmas.keySet().stream()
                .noneMatch(phase -> expected.amps(phase) >= Observer.DEVIATIONS * sigmas.get(phase))) {
            return Finding.TOO_SMALL;
        }
        RecordedStart seen = at.apply(due);
        boolean wouldShow = sigmas.keySet().stream()
                .anyMatch(phase -> expected.amps(phase) - seen.on(phase).jumpAmps()
                        > Observer.DEVIATIONS * seen.on(phase).jumpSigmaAmps());
        return wouldShow && confidence >= Observer.SURE ? Finding.MISSING : Finding.CANNOT_TELL;
    }
}
