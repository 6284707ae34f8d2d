package evenrise.solver.desk;

import evenrise.model.event.Episode;
import evenrise.model.event.EventFinding;
import evenrise.model.event.NodePeak;
import evenrise.model.event.PhaseReading;
import evenrise.model.event.ScriptEvent;
import evenrise.model.event.Trace;
import evenrise.model.project.Phase;
import evenrise.solver.app.JobFailed;
import evenrise.solver.desk.RehearsalAnswers.HappenedView;
import evenrise.solver.desk.RehearsalAnswers.PartView;
import evenrise.solver.desk.RehearsalAnswers.PlayedScript;
import evenrise.solver.desk.RehearsalAnswers.ReadingsView;
import evenrise.solver.desk.RehearsalAnswers.RemarkView;
import evenrise.solver.desk.RehearsalAnswers.StepView;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.TreeMap;
import java.util.stream.Stream;

/** Draws up what windows show of a rehearsal at one node. */
final class ShownRehearsal {
    private static final int MOST_STEPS = 20_000;
    private static final int MOST_FINDINGS = 500;

    private final Trace trace;
    private final RehearsalRequests.PlayScript asked;

    ShownRehearsal(Trace trace, RehearsalRequests.PlayScript asked) {
        this.trace = trace;
        this.asked = asked;
    }

    /** @throws JobFailed where there is no such node */
    PlayedScript view() {
        List<String> nodes = trace.episodes().stream()
                .limit(1)
                .flatMap(each -> each.peaks().stream())
                .map(NodePeak::node)
                .toList();
        if (!nodes.isEmpty() && !nodes.contains(asked.node())) {
            throw new JobFailed(JobFailed.Reason.REQUEST, "there is no such supply, panel or node to be read.");
        }
        return new PlayedScript(
                trace.endSeconds(),
                trace.shown().words(),
                asked.node(),
                nodes,
                happened(),
                readings(),
                trace.steps().stream()
                        .limit(MOST_STEPS)
                        .map(each -> new StepView(
                                each.atSeconds(),
                                each.kind(),
                                each.load(),
                                each.text(),
                                each.loadsOn(),
                                each.shown().words(),
                                each.locked()))
                        .toList(),
                trace.episodes().stream().flatMap(this::part).toList(),
                trace.findings().stream()
                        .limit(MOST_FINDINGS)
                        .map(each -> new RemarkView(
                                each.atSeconds(),
                                each.grade() == EventFinding.Grade.BROKEN,
                                each.message(),
                                each.place()))
                        .toList(),
                trace.findings().size());
    }

    /** Each happening with the part that began with it, in the order of both. */
    private List<HappenedView> happened() {
        List<HappenedView> all = new ArrayList<>();
        int next = 0;
        for (ScriptEvent event : asked.events()) {
            OptionalDouble at = event.atSeconds();
            for (int i = next; i < trace.episodes().size() && at.isEmpty(); i++) {
                if (trace.episodes().get(i).text().equals(event.text())) {
                    at = OptionalDouble.of(trace.episodes().get(i).fromSeconds());
                    next = i + 1;
                }
            }
            all.add(new HappenedView(at, event.text()));
        }
        return all;
    }

    private List<ReadingsView> readings() {
        Map<Phase, ReadingsView> all = new TreeMap<>();
        for (PhaseReading each : trace.readings()) {
            if (each.node().equals(asked.node())) {
                ReadingsView phase = all.computeIfAbsent(
                        each.phase(),
                        any -> new ReadingsView(
                                each.phase().name(), new ArrayList<>(), new ArrayList<>(), new ArrayList<>()));
                phase.seconds().add(rounded(each.atSeconds()));
                phase.drawnAmps().add(rounded(each.drawnAmps()));
                phase.boundAmps().add(upwards(each.boundAmps()));
            }
        }
        return List.copyOf(all.values());
    }

    private Stream<PartView> part(Episode episode) {
        return episode.peaks().stream()
                .filter(each -> each.node().equals(asked.node()))
                .map(each -> new PartView(
                        episode.fromSeconds(),
                        episode.toSeconds(),
                        episode.text(),
                        episode.closed(),
                        episode.opened(),
                        each.peakInrushAmps(),
                        each.peakAtSeconds(),
                        each.boundAmps(),
                        each.limitAmps()));
    }

    /** To thousandths: finer than a screen, and a third of the text. */
    private static double rounded(double number) {
        return Math.round(number * 1000) / 1000.0;
    }

    /** A bound stays one. */
    private static double upwards(double number) {
        return Math.ceil(number * 1000) / 1000.0;
    }
}
