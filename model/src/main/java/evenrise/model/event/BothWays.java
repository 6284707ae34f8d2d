package evenrise.model.event;

import static evenrise.model.contract.Figures.TENTHS;

import evenrise.model.project.Load;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Plays a script with motors as they are planned, to stay off after the mains or an emergency until somebody asks; where
 * the project does not state that its control sees to that, also with motors that come back by themselves. Of the bounds
 * the greater is told, and what breaks a limit only the other way is found, too.
 */
public final class BothWays {
    private static final double SAME_AMPS = 1e-6;

    private BothWays() {}

    public static Trace of(Layout layout, Use use, EventScript script) {
        Trace planned = Rehearsal.of(ConnectedLoads.of(layout, use), script);
        boolean isOpen = layout.project().behaviourOrDefault().motorsResume().isEmpty()
                && layout.project().loads().stream().anyMatch(Load::isMotor);
        return isOpen ? greater(layout, planned, Rehearsal.of(ConnectedLoads.of(layout, use, true), script)) : planned;
    }

    private static Trace greater(Layout layout, Trace planned, Trace other) {
        Map<String, Episode> others = new HashMap<>();
        List<String> keys = keys(other.episodes());
        for (int i = 0; i < keys.size(); i++) {
            others.put(keys.get(i), other.episodes().get(i));
        }
        List<EventFinding> findings = new ArrayList<>(planned.findings());
        List<Episode> episodes = new ArrayList<>();
        List<Episode> matching = new ArrayList<>();
        keys = keys(planned.episodes());
        for (int i = 0; i < keys.size(); i++) {
            Episode episode = planned.episodes().get(i);
            Episode its = others.getOrDefault(keys.get(i), episode);
            episodes.add(episode.withPeaks(greater(episode.peaks(), its.peaks())));
            matching.add(its);
        }
        findings.addAll(raised(layout, planned.episodes(), matching));
        Set<String> said = new HashSet<>();
        planned.findings().forEach(each -> said.add(each.text()));
        other.findings().stream()
                .filter(each -> each.grade() == EventFinding.Grade.BROKEN && said.add(each.text()))
                .map(each -> each.withText("with motors that come back by themselves, " + each.text()))
                .forEach(findings::add);
        findings.sort(Comparator.comparingDouble(EventFinding::atSeconds));
        return planned.with(episodes, findings);
    }

    /** What began each episode, and how often that had happened before. */
    private static List<String> keys(List<Episode> episodes) {
        Map<String, Integer> count = new HashMap<>();
        return episodes.stream()
                .map(each -> each.text() + " " + count.merge(each.text(), 1, Integer::sum))
                .toList();
    }

    private static List<NodePeak> greater(List<NodePeak> planned, List<NodePeak> other) {
        List<NodePeak> peaks = new ArrayList<>();
        for (int node = 0; node < planned.size(); node++) {
            NodePeak peak = planned.get(node);
            peaks.add(peak.withBound(Math.max(peak.boundAmps(), other.get(node).boundAmps())));
        }
        return peaks;
    }

    /** Of each node the highest bound that only motors coming back reach. */
    private static List<EventFinding> raised(Layout layout, List<Episode> planned, List<Episode> other) {
        Map<String, EventFinding> found = new LinkedHashMap<>();
        Map<String, Double> highest = new HashMap<>();
        for (int i = 0; i < planned.size(); i++) {
            for (int node = 0; node < planned.get(i).peaks().size(); node++) {
                NodePeak off = planned.get(i).peaks().get(node);
                double amps = other.get(i).peaks().get(node).boundAmps();
                if (amps > off.boundAmps() + SAME_AMPS && amps > highest.getOrDefault(off.node(), 0.0)) {
                    highest.put(off.node(), amps);
                    found.put(off.node(), finding(layout, planned.get(i), off, amps));
                }
            }
        }
        return List.copyOf(found.values());
    }

    private static EventFinding finding(Layout layout, Episode episode, NodePeak off, double amps) {
        return EventFinding.note(episode.fromSeconds(), "motors")
                .kind("higher-peak-if-they-come-back")
                .place(off.node())
                .figure(amps)
                .unit("A")
                .text(layout.index().placeName(off.node()) + " may peak at " + TENTHS.amps(amps) + " after '"
                        + episode.text() + "' if motors come back by themselves, at " + TENTHS.amps(off.boundAmps())
                        + " if they stay off: behaviour.motors_resume does not state which")
                .build();
    }
}
