package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.event.Episode;
import evenrise.model.event.EventFinding;
import evenrise.model.event.GroupChange;
import evenrise.model.event.NodePeak;
import evenrise.model.event.Trace;
import evenrise.model.event.Use;
import evenrise.model.plan.Cautions;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** A rehearsal for a screen. */
public final class RehearsalText {
    private static final int MOST_FINDINGS = 12;
    private static final int MOST_NODES = 5;

    private RehearsalText() {}

    /** @param all whether long lists stand in full, and every breaker by itself */
    public static List<String> lines(Evaluation evaluation, Trace trace, boolean all, Paint paint) {
        Layout layout = evaluation.layout();
        int switched = (int)
                layout.placements().stream().filter(Placement::isSequenced).count();
        List<List<String>> sections = new ArrayList<>();
        sections.add(AssessmentText.lines(evaluation.assessment(), paint));
        sections.add(title(layout, trace, switched, paint));
        sections.add(RehearsalTimeline.lines(trace, switched, paint));
        sections.add(episodes(trace, paint));
        List<NodePeak> nodes = tightest(trace);
        if (!nodes.isEmpty()) {
            String what = layout.project().nodes().isEmpty() ? "panels" : "panels and distribution points";
            sections.add(nodes(nodes, what, all, paint));
        }
        sections.add(findings(trace, evaluation.layout().project(), all, paint));
        List<GroupChange> groups = groupsAtEnd(trace);
        if (all
                ? !groups.isEmpty()
                : groups.stream().map(GroupChange::state).distinct().count() > 1) {
            sections.add(groups(groups, paint));
        }
        sections.add(RehearsalEntries.lines(trace, all, paint));
        sections.add(CautionText.lines(Cautions.ALL, paint));
        return Sections.joined(sections);
    }

    private static List<String> title(Layout layout, Trace trace, int switched, Paint paint) {
        long broken = trace.findings().stream()
                .filter(each -> each.grade() == EventFinding.Grade.BROKEN)
                .count();
        return new Section(
                        paint,
                        "Rehearsal of " + trace.script() + " on a plan for " + DisplayWidth.cut(trace.project(), 50))
                .text(Phrase.counted(layout.placements().size(), "load") + ", " + switched
                        + " of them on outputs. It begins with the system off and at rest, and ends after "
                        + Numbers.seconds(trace.endSeconds()) + " s: "
                        + trace.shown().words()
                        + (trace.locked() ? ", locked" : "") + ", "
                        + trace.onAtEnd().size() + " switched loads on.")
                .text(
                        broken == 0 ? Tone.GOOD : Tone.BAD,
                        broken == 0
                                ? "Nothing happened that must not, in what was played."
                                : Phrase.counted(broken, "thing") + " happened that must not; see below.")
                .lines();
    }

    private static List<String> episodes(Trace trace, Paint paint) {
        Table table = new Table()
                .number("From, s")
                .text("What happened")
                .number("Close")
                .number("Open")
                .number("On")
                .words("Then shown")
                .number("Peak, A")
                .words("at, s")
                .number("At most, A");
        for (Episode each : trace.episodes()) {
            NodePeak supply = each.peaks().get(0);
            table.row(
                    supply.isOverLimit() ? Tone.BAD : Tone.PLAIN,
                    Numbers.seconds(each.fromSeconds()),
                    each.text(),
                    Integer.toString(each.closed()),
                    Integer.toString(each.opened()),
                    Integer.toString(each.loadsOn()),
                    each.shown().words(),
                    Numbers.amps(supply.peakInrushAmps()),
                    Numbers.seconds(supply.peakAtSeconds()) + " " + supply.peakPhase(),
                    Numbers.amps(supply.boundAmps()));
        }
        String limit = trace.episodes().isEmpty()
                        || trace.episodes().get(0).peaks().get(0).limitAmps().isEmpty()
                ? "The supply states no inrush limit."
                : "The supply's inrush limit is "
                        + Numbers.amps(trace.episodes().get(0).peaks().get(0).limitAmps()) + " A.";
        return new Section(paint, "What happened, and what the supply's worst phase drew")
                .table(table)
                .text("Peak: by the envelopes at nominal voltage, breakers closing on time. At most: whenever within"
                        + " the timing tolerance they close. "
                        + use(trace)
                        + limit)
                .lines();
    }

    private static String use(Trace trace) {
        return trace.use() == Use.FULL
                ? "What was on and at rest before something happened draws what it does while the show runs, the"
                        + " greater of running and idle current; what comes on its idle current and its inrush. "
                : "All draw their idle current, as if no show ran (--idle). ";
    }

    /** Of each panel and further node with a limit the part that came nearest to it. */
    private static List<NodePeak> tightest(Trace trace) {
        Map<String, NodePeak> worst = new HashMap<>();
        for (Episode episode : trace.episodes()) {
            episode.peaks().stream()
                    .skip(1)
                    .filter(peak -> peak.limitAmps().isPresent())
                    .forEach(peak -> worst.merge(peak.node(), peak, (a, b) -> used(b) > used(a) ? b : a));
        }
        return worst.values().stream()
                .sorted(Comparator.comparingDouble(RehearsalText::used)
                        .reversed()
                        .thenComparing(NodePeak::node))
                .toList();
    }

    private static double used(NodePeak peak) {
        return peak.boundAmps() / peak.limitAmps().orElse(1);
    }

    private static List<String> nodes(List<NodePeak> nodes, String what, boolean all, Paint paint) {
        Table table = new Table()
                .words("Node")
                .number("At most, A")
                .number("Limit, A")
                .number("Used, %")
                .number("Peak, A")
                .words("Phase")
                .number("at, s");
        int shown = Math.min(nodes.size(), all ? Integer.MAX_VALUE : MOST_NODES);
        for (NodePeak each : nodes.subList(0, shown)) {
            table.row(
                    each.isOverLimit() ? Tone.BAD : Tone.PLAIN,
                    each.node(),
                    Numbers.amps(each.boundAmps()),
                    Numbers.amps(each.limitAmps()),
                    Numbers.fixed(100 * used(each), 1),
                    Numbers.amps(each.peakInrushAmps()),
                    each.peakPhase().toString(),
                    Numbers.seconds(each.peakAtSeconds()));
        }
        Section section =
                new Section(paint, what.replaceFirst("p", "P") + " nearest to their inrush limit").table(table);
        return (shown < nodes.size()
                        ? section.text(
                                "And " + (nodes.size() - shown) + " more " + what + " with a limit, each used less.")
                        : section)
                .lines();
    }

    private static List<String> findings(Trace trace, Project project, boolean all, Paint paint) {
        Section section = new Section(paint, "Findings");
        if (trace.findings().isEmpty()) {
            return section.text("Nothing was found in "
                            + Phrase.counted(trace.episodes().size(), "happening")
                            + " that " + (trace.episodes().size() == 1 ? "was" : "were")
                            + " played. That says nothing of other happenings and faults, nor of what a rehearsal does"
                            + " not model.")
                    .lines();
        }
        List<EventFinding> sorted = trace.findings().stream()
                .sorted(Comparator.comparing(EventFinding::grade))
                .toList();
        List<Folded<EventFinding>> folded = all ? Folded.unfolded(sorted) : Folded.of(sorted, project);
        int left = sorted.size();
        for (Folded<EventFinding> each :
                folded.subList(0, all ? folded.size() : Math.min(folded.size(), MOST_FINDINGS))) {
            section.item((each.first().grade() == EventFinding.Grade.BROKEN ? "BROKEN, " : "note, ")
                    + each.first().rule() + ", " + when(each.all()) + ": " + each.text());
            left -= each.all().size();
        }
        if (left > 0) {
            section.text("And " + left + " more; --all shows them.");
        }
        return section.lines();
    }

    private static String when(List<EventFinding> equal) {
        double first = equal.get(0).atSeconds();
        double last = equal.get(equal.size() - 1).atSeconds();
        return "at " + Numbers.seconds(first) + (last > first ? " to " + Numbers.seconds(last) : "") + " s";
    }

    /** The last change of each group that ever came on. */
    private static List<GroupChange> groupsAtEnd(Trace trace) {
        Map<String, GroupChange> last = new LinkedHashMap<>();
        trace.groups().forEach(each -> last.put(each.group(), each));
        return List.copyOf(last.values());
    }

    private static List<String> groups(List<GroupChange> groups, Paint paint) {
        Table table = new Table()
                .words("Group")
                .words("At the end")
                .number("On")
                .number("Of")
                .number("Since, s");
        for (GroupChange each : groups) {
            table.row(
                    each.state() == GroupChange.State.PARTLY_ON ? Tone.BAD : Tone.PLAIN,
                    each.group(),
                    each.state().words(),
                    Integer.toString(each.loadsOn()),
                    Integer.toString(each.loads()),
                    Numbers.seconds(each.atSeconds()));
        }
        return new Section(paint, "Shutdown groups that came on").table(table).lines();
    }
}
