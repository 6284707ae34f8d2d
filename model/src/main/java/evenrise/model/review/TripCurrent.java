package evenrise.model.review;

import evenrise.model.electrical.breaker.TripEquivalent;
import evenrise.model.plan.EventPeak;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.PlanEvent;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PhasePeak;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What an instantaneous trip at a node sees at most on its worst phase: rms over any half-cycle, at nominal voltage.
 *
 * <p>An rms of a sum is never above the sum of rms values, so each load counts for its own: what it draws steadily, and its
 * inrush's excess over a half-cycle ({@link TripEquivalent}). These stand in the place of crest values, and events are
 * computed as for peaks. A half-cycle may begin up to its own length before a load closes, so the tolerance of closing is
 * wider by half of it.
 *
 * @param event what happens; the sequence where empty
 * @param board whose failure it is
 */
record TripCurrent(Optional<PlanEvent> event, double amps, Phase phase, Optional<String> board) {
    private static final double CREST = Math.sqrt(2);

    /** Of the supply, then of the panels in the project's order: the sequence, then each event. */
    static List<List<TripCurrent>> ofAllNodes(Layout layout) {
        Project project = layout.project();
        double halfCycle = 1 / (2 * project.supply().frequencyHertz());
        Layout counted = Layout.of(
                project.withLoads(project.loads().stream()
                                .map(load -> counted(load, project.supply().frequencyHertz()))
                                .toList())
                        .withTimingToleranceSeconds(project.timingToleranceSeconds() + halfCycle / 2),
                layout.plan());
        List<List<TripCurrent>> all = new ArrayList<>();
        for (int node = 0; node < counted.nodes().size(); node++) {
            PhasePeak sequence = counted.nodes().get(node).peaks().stream()
                    .max(Comparator.comparingDouble(PhasePeak::amps))
                    .orElseThrow();
            List<TripCurrent> here = new ArrayList<>();
            here.add(new TripCurrent(Optional.empty(), sequence.amps(), sequence.phase(), Optional.empty()));
            counted.eventPeaks().get(node).forEach(peak -> here.add(of(peak)));
            all.add(List.copyOf(here));
        }
        return List.copyOf(all);
    }

    private static TripCurrent of(EventPeak peak) {
        return new TripCurrent(Optional.of(peak.event()), peak.peakInrushAmps(), peak.peakPhase(), peak.board());
    }

    /** A load whose crest values are the original's rms values. */
    private static Load counted(Load load, double frequencyHertz) {
        double counts = TripEquivalent.inrushAmps(
                load.idleAmps(), load.inrushAmps(), load.inrushHalfMillis() / 1000, frequencyHertz);
        return load.withIdleAmps(load.idleAmps() / CREST)
                .withRunningAmps(load.runningAmps() / CREST)
                .withInrushPeakAmps(OptionalDouble.of(counts));
    }
}
