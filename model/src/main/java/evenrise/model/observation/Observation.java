package evenrise.model.observation;

import evenrise.model.plan.BoardSetting;
import evenrise.model.project.Phase;
import java.util.List;
import java.util.Map;

/**
 * A recorded start beside the plan.
 *
 * @param clock of the logger
 * @param intervalSeconds between samples
 * @param sigmaAmps noise of a sample, by phase
 * @param channels what each phase was recorded as, where that is not what its channel says: phase to channel
 * @param scales what readings of a phase were multiplied by, where its clamp seems to have stood in another range
 * @param settings boards that seem to be set otherwise than planned, as they seem to be set
 * @param starts every expected start, in the order of time
 * @param unknown recorded starts that no load stands for; falling ones are loads that went off
 * @param further what would tell what is left open
 */
public record Observation(
        Clock clock,
        double intervalSeconds,
        Map<Phase, Double> sigmaAmps,
        Map<Phase, Phase> channels,
        Map<Phase, Double> scales,
        List<BoardSetting> settings,
        List<ObservedStart> starts,
        List<RecordedStart> unknown,
        FurtherReadings further) {
    /** Of drawn plants' own starts nine in ten fit, of those of other plants like them four in ten at most. */
    private static final double ENOUGH = 0.6;

    public Observation {
        sigmaAmps = Map.copyOf(sigmaAmps);
        channels = Map.copyOf(channels);
        scales = Map.copyOf(scales);
        settings = List.copyOf(settings);
        starts = List.copyOf(starts);
        unknown = List.copyOf(unknown);
    }

    /** The same recording with other things said of it. */
    Observation with(List<ObservedStart> said, List<RecordedStart> notOfALoad, FurtherReadings then) {
        return new Observation(clock, intervalSeconds, sigmaAmps, channels, scales, settings, said, notOfALoad, then);
    }

    /** How many expected starts came to this. */
    public long count(ObservedStart.Finding finding) {
        return starts.stream().filter(each -> each.finding() == finding).count();
    }

    /** Whether nothing seen is other than planned; what cannot be seen is not counted. */
    public boolean isAsPlanned() {
        return channels.isEmpty()
                && scales.isEmpty()
                && settings.isEmpty()
                && unknown.isEmpty()
                && starts.stream().noneMatch(each -> each.finding().isDifference());
    }

    /** How many starts could be seen. */
    public long visible() {
        return starts.size() - count(ObservedStart.Finding.TOO_SMALL) - count(ObservedStart.Finding.NOT_RECORDED);
    }

    /**
     * How many of them fit, in time and current; of another current counts half, since a time alone is soon hit by chance.
     * What is exchanged counts nothing: among many that do not fit, pairs are found that seem to be each other.
     */
    public double fitting() {
        return count(ObservedStart.Finding.AS_PLANNED) + 0.5 * count(ObservedStart.Finding.OTHER_SIZE);
    }

    /**
     * Whether six in ten of what could be seen fit; below that the recording is of something else. Where less than half of
     * the plan lies within the recording, what fits must outnumber what no load stands for as well: a few starts fit by
     * chance.
     */
    public boolean isRecognised() {
        boolean isMostlyRecorded = 2 * count(ObservedStart.Finding.NOT_RECORDED) <= starts.size();
        return visible() > 0 && fitting() >= ENOUGH * visible() && (isMostlyRecorded || fitting() > unknown.size());
    }
}
