package evenrise.model.observation;

import evenrise.model.observation.RecordedStart.Change;
import evenrise.model.project.Phase;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** The steps of all phases of a recording, and what is seen where none is. */
final class RecordedSteps {
    private final Recording recording;
    private final Map<Phase, PhaseSteps> phases = new EnumMap<>(Phase.class);

    private record OnPhase(Phase phase, int sample, StepFit step) {}

    /** @param deviations a step is what exceeds so many standard deviations */
    RecordedSteps(Recording recording, double deviations) {
        this.recording = recording;
        recording
                .amps()
                .forEach((phase, amps) -> phases.put(phase, PhaseSteps.of(recording.seconds(), amps, deviations)));
    }

    /** Steps that are no more than a sample apart are one start. */
    List<RecordedStart> starts() {
        List<OnPhase> all = new ArrayList<>();
        phases.forEach((phase, steps) -> {
            for (int i = 0; i < steps.size(); i++) {
                all.add(new OnPhase(phase, steps.sample(i), steps.step(i)));
            }
        });
        all.sort(Comparator.comparingInt(OnPhase::sample));
        List<RecordedStart> starts = new ArrayList<>();
        for (int i = 0; i < all.size(); ) {
            int begin = all.get(i).sample();
            Map<Phase, Change> steps = new EnumMap<>(Phase.class);
            int j = i;
            while (j < all.size()
                    && all.get(j).sample() - begin <= 1
                    && !steps.containsKey(all.get(j).phase())) {
                steps.put(all.get(j).phase(), Change.of(all.get(j).step()));
                j++;
            }
            starts.add(new RecordedStart(recording.seconds()[begin], steps, others(steps, begin)));
            i = j;
        }
        return starts;
    }

    /** What is seen at a moment at which no start was found. */
    RecordedStart at(double seconds) {
        double[] all = recording.seconds();
        int sample = 0;
        while (sample < all.length - 1 && all[sample] < seconds) {
            sample++;
        }
        return new RecordedStart(all[sample], Map.of(), others(Map.of(), sample));
    }

    private Map<Phase, Change> others(Map<Phase, Change> steps, int sample) {
        Map<Phase, Change> others = new EnumMap<>(Phase.class);
        phases.forEach((phase, each) -> {
            if (!steps.containsKey(phase)) {
                others.put(phase, Change.of(each.at(sample)));
            }
        });
        return others;
    }
}
