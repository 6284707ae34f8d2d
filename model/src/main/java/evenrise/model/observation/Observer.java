package evenrise.model.observation;

import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Finds what a recorded start says of a plan. */
public final class Observer {
    /** A step is what exceeds so many standard deviations. */
    public static final double DEVIATIONS = 5;

    /** A difference is stated from this confidence on; below it is said that it cannot be told. */
    public static final double SURE = 0.95;

    /** So much must everything fit better before a clamp or a board is blamed rather than loads. */
    static final double WORTH_BLAMING = 40;

    /** What is less than so much of the plant's smallest start is none of its gear. */
    private static final double SMALL = 0.5;

    private final Sight sight;
    private final Recording recording;
    private final RecordedSteps steps;

    private Observer(Sight sight, Recording recording) {
        this.sight = sight;
        this.recording = recording;
        this.steps = new RecordedSteps(recording, DEVIATIONS);
    }

    /**
     * @param point index of the recorded place in the layout's distribution
     * @param system whose command was given; empty where the plant has no systems
     * @throws IllegalArgumentException where the place feeds transformers, through which steps are not told
     */
    public static Observation of(Layout layout, int point, Optional<String> system, Recording recording) {
        if (!ExpectedStart.isDirect(layout, point)) {
            throw new IllegalArgumentException(
                    "the place feeds transformers, through which starts are not told yet. Record below them.");
        }
        return new Observer(Sight.of(layout, point, system, recording), recording).observation(layout);
    }

    private Observation observation(Layout layout) {
        List<RecordedStart> recorded = steps.starts();
        int[] order = Clamps.order(sight, layout, recorded);
        MatchedStarts read = MatchedStarts.of(sight, layout, Clamps.ordered(recorded, order));
        Map<Phase, Double> scales = Clamps.scales(read);
        if (!scales.isEmpty()) {
            read = MatchedStarts.of(
                    sight,
                    layout,
                    read.recorded().stream().map(each -> each.scaled(scales)).toList());
        }
        BoardSettings boards = new BoardSettings(read);
        MatchedStarts reading = boards.reading();
        Map<Phase, Double> sigmas = sigmas(order, scales);
        Findings findings = new Findings(
                reading,
                recording,
                sigmas,
                seconds -> steps.at(seconds).ordered(order).scaled(scales));
        List<ObservedStart> first = findings.starts();
        List<RecordedStart> unknown = unknown(reading, first);
        Observation blind = new Observation(
                reading.clock(),
                sight.intervalSeconds(),
                sigmas,
                Clamps.channels(order),
                scales,
                boards.found(),
                first,
                unknown,
                FurtherReadings.of(reading.layout(), sight, sigmas, first));
        if (!blind.isRecognised()) {
            // Of another start there is nothing to be weighed, and it would take long.
            return blind;
        }
        Map<Phase, double[]> amps = amps(order, scales);
        Said said = new Said(new Hindsight(reading, recording.seconds(), amps, sigmas), reading, first, unknown);
        SecondLook second = new SecondLook(
                said, seconds -> steps.at(seconds).ordered(order).scaled(scales).clearest());
        new AnyDecay(said, new Stretches(said, recording.seconds(), amps, sigmas)).doubt();
        return blind.with(
                second.starts(),
                second.unknown(),
                FurtherReadings.of(reading.layout(), sight, sigmas, second.starts()));
    }

    /** What no load stands for, if it is not smaller than any. */
    private static List<RecordedStart> unknown(MatchedStarts reading, List<ObservedStart> starts) {
        double least = SMALL
                * reading.expected().stream()
                        .flatMap(each -> each.amps().values().stream())
                        .filter(amps -> amps > 0)
                        .mapToDouble(amps -> amps)
                        .min()
                        .orElse(0);
        List<RecordedStart> unknown = new ArrayList<>(reading.recorded());
        starts.forEach(each -> each.recorded().ifPresent(unknown::remove));
        unknown.removeIf(each -> each.steps().values().stream().noneMatch(step -> Math.abs(step.jumpAmps()) >= least));
        return unknown;
    }

    private Map<Phase, double[]> amps(int[] order, Map<Phase, Double> scales) {
        Map<Phase, double[]> amps = new EnumMap<>(Phase.class);
        for (Phase phase : sight.phases()) {
            double by = scales.getOrDefault(phase, 1.0);
            double[] read = recording.amps().get(Phase.values()[order[phase.ordinal()]]);
            amps.put(phase, Arrays.stream(read).map(each -> by * each).toArray());
        }
        return amps;
    }

    /** Noise of a sample of each phase. */
    private Map<Phase, Double> sigmas(int[] order, Map<Phase, Double> scales) {
        Map<Phase, Double> sigmas = new EnumMap<>(Phase.class);
        for (Phase phase : sight.phases()) {
            double[] amps = recording.amps().get(Phase.values()[order[phase.ordinal()]]);
            sigmas.put(phase, Noise.sigmaAmps(amps) * scales.getOrDefault(phase, 1.0));
        }
        return sigmas;
    }
}
