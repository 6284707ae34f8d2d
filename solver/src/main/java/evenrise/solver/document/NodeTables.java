package evenrise.solver.document;

import evenrise.model.plan.EventPeak;
import evenrise.model.plan.PeakBasis;
import evenrise.model.plan.RangePeak;
import evenrise.model.project.Phase;
import evenrise.model.project.PlanEvent;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLimits;
import evenrise.model.scatter.NodeScatter;
import evenrise.solver.document.Grid.Column;
import evenrise.solver.report.PeakWords;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/** Tables with a row for the supply and one for each panel. */
final class NodeTables {
    private static final String BALANCE =
            "Running current: rms, the sum of the loads' magnitudes, which limits are held against; by phasors: what a"
                    + " meter shows. Neutral: rms, every load at its running current. Worst use of a neutral: whatever of"
                    + " its one-pole loads is on. Peak: by the envelopes at nominal voltage, instantaneous, while the"
                    + " sequence runs. An empty limit: the project states none.";

    private static final String EVENTS =
            "Instantaneous, by the envelopes at nominal voltage, with the show running: what is on when it happens"
                    + " draws the greater of running and idle current, what comes on its idle current and its inrush."
                    + " Mains return: the supply comes back and the sequence runs again. Release: an emergency ends, and"
                    + " what dropped comes on. Board fails: the worst single board, dead through a brownout or back while"
                    + " all else is on. Deep dip: too short for a contact to open, every load draws its inrush beside"
                    + " that. The limit in the last column is the sequence's; it holds for other events only where the"
                    + " project says so.";

    private static final String PERCENTILES =
            "Switch-ons drawn by chance: of 100, 95 stay at or below P95. The voltage of the supply is drawn, too, so"
                    + " that peaks may exceed those at nominal voltage. Over the range: the plan's peak over all voltages"
                    + " that the supply has or that are drawn; no bound where loads state too little. Dips are told where"
                    + " the project states the source.";

    private static final String RANGE =
            "Instantaneous, while the sequence runs. At nominal voltage with idle currents as sines, as the rules"
                    + " judge it; and at the voltages of the supply, inrush at the highest, idle currents at the voltage"
                    + " and with the crest that make them largest. An upper bound only where every load states what it"
                    + " rests on: its inrush for the first, its waveform, too, for the second.";

    private static final String UNSTATED =
            "What these loads do not state, peaks leave out: none with them is an upper bound. An unswitched load's"
                    + " inrush comes with events, not with the sequence.";

    private final Layout layout;
    private final List<NodeLimits> limits;

    NodeTables(Layout layout) {
        this.layout = layout;
        this.limits = NodeLimits.of(layout.project());
    }

    Grid balance() {
        List<Phase> phases = layout.project().supply().system().phases();
        List<Column> columns = new ArrayList<>(List.of(Column.text("Node")));
        phases.forEach(phase -> columns.add(Column.number("Running phase " + phase, "A")));
        columns.add(Column.number("Allowed a phase", "A"));
        phases.forEach(phase -> columns.add(Column.number("By phasors, line " + phase, "A")));
        columns.add(Column.number("Imbalance", "%"));
        columns.add(Column.number("Neutral", "A"));
        columns.add(Column.number("Neutral, worst use", "A"));
        columns.add(Column.number("Neutral allowed", "A"));
        phases.forEach(phase -> columns.add(Column.number("Peak phase " + phase, "A")));
        columns.add(Column.number("Peak allowed", "A"));
        List<List<Object>> rows = new ArrayList<>();
        for (int i = 0; i < limits.size(); i++) {
            NodeFigures node = layout.nodes().get(i);
            List<Object> row = new ArrayList<>(List.of(node.node()));
            phases.forEach(phase -> row.add(node.runningAmps().get(phase)));
            row.add(limits.get(i).continuousAmps());
            phases.forEach(phase -> row.add(node.phasorAmps().get(phase)));
            row.add(node.imbalancePercent());
            row.add(node.neutralAmps());
            row.add(layout.worstNeutralAmps().get(i));
            row.add(limits.get(i).neutralAmps());
            node.peaks().forEach(peak -> row.add(peak.amps()));
            row.add(cell(limits.get(i).inrushLimitAmps()));
            rows.add(row);
        }
        return new Grid("balance", "Phase balance: the supply and each panel", BALANCE, columns, rows);
    }

    /** The peaks of the sequence at nominal voltage and over the supply's voltages. */
    Grid range() {
        PeakBasis basis = layout.peakBasis();
        List<List<Object>> rows = new ArrayList<>();
        for (int i = 0; i < limits.size(); i++) {
            RangePeak peak = basis.peaks().get(i);
            rows.add(List.of(
                    peak.node(),
                    peak.nominalAmps(),
                    PeakWords.nominal(peak),
                    peak.rangeAmps(),
                    PeakWords.overRange(peak),
                    peak.rangePhase().name(),
                    peak.rangeAtSeconds(),
                    cell(limits.get(i).inrushLimitAmps())));
        }
        return new Grid(
                "range",
                "Peaks " + PeakWords.NOMINAL + " and " + PeakWords.range(basis),
                RANGE + " Voltages: " + basis.voltageFrom() + ".",
                List.of(
                        Column.text("Node"),
                        Column.number("At nominal voltage", "A"),
                        Column.text("Nominal is"),
                        Column.number("Over the range", "A"),
                        Column.text("Range is"),
                        Column.text("Phase"),
                        Column.number("At", "s"),
                        Column.number("Peak allowed", "A")),
                rows);
    }

    /** Loads that state too little for a bound; none where all state enough. */
    Optional<Grid> unstated() {
        PeakBasis basis = layout.peakBasis();
        Set<String> withoutInrush = new HashSet<>(basis.withoutInrush());
        withoutInrush.addAll(basis.unswitchedWithoutInrush());
        Set<String> withoutWaveform = new HashSet<>(basis.withoutWaveform());
        Set<String> guessed = new HashSet<>(basis.guessed());
        List<List<Object>> rows = layout.project().loads().stream()
                .filter(load -> withoutInrush.contains(load.id())
                        || withoutWaveform.contains(load.id())
                        || guessed.contains(load.id()))
                .map(load -> List.<Object>of(
                        load.id(),
                        load.name(),
                        load.switched() ? "yes" : "no",
                        withoutInrush.contains(load.id()) ? "not stated" : "",
                        withoutWaveform.contains(load.id()) ? "not stated" : "",
                        guessed.contains(load.id()) ? String.join(", ", load.guessed()) : ""))
                .toList();
        return rows.isEmpty()
                ? Optional.empty()
                : Optional.of(new Grid(
                        "unstated",
                        "Loads that state too little for their peak",
                        UNSTATED,
                        List.of(
                                Column.text("Load"),
                                Column.text("Name"),
                                Column.text("Switched"),
                                Column.text("inrush_peak_a"),
                                Column.text("crest_factor or third_harmonic"),
                                Column.text("Guessed")),
                        rows));
    }

    /** The peaks that the bad day brings, beside that of the sequence. */
    Grid events() {
        List<List<Object>> rows = new ArrayList<>();
        for (int i = 0; i < limits.size(); i++) {
            List<EventPeak> peaks = layout.eventPeaks().get(i);
            List<Object> row = new ArrayList<>(List.of(
                    limits.get(i).node(),
                    layout.nodes().get(i).peaks().stream()
                            .mapToDouble(peak -> peak.amps())
                            .max()
                            .orElse(0)));
            for (PlanEvent event : PlanEvent.values()) {
                Optional<EventPeak> peak =
                        peaks.stream().filter(each -> each.event() == event).findFirst();
                row.add(peak.map(each -> (Object) each.peakInrushAmps()).orElse(""));
                row.add(peak.map(each -> each.peakPhase()
                                + each.board().map(id -> ", " + id).orElse(""))
                        .orElse(""));
            }
            row.add(cell(limits.get(i).inrushLimitAmps()));
            rows.add(row);
        }
        return new Grid(
                "events",
                "Peaks of events while the show runs, " + PeakWords.NOMINAL,
                EVENTS
                        + (PeakWords.isEventBound(layout.peakBasis())
                                ? " Every load states its inrush: these are upper bounds for sines at that voltage."
                                : " Some loads state no inrush, or it is guessed: these are no bounds."),
                List.of(
                        Column.text("Node"),
                        Column.number("Sequence", "A"),
                        Column.number("Mains return", "A"),
                        Column.text("Return phase"),
                        Column.number("Release", "A"),
                        Column.text("Release phase"),
                        Column.number("Board fails", "A"),
                        Column.text("Phase, board"),
                        Column.number("Deep dip", "A"),
                        Column.text("Dip phase"),
                        Column.number("Sequence allowed", "A")),
                rows);
    }

    Grid percentiles(List<NodeScatter> nodes) {
        List<List<Object>> rows = new ArrayList<>();
        for (NodeScatter node : nodes) {
            List<Object> row = new ArrayList<>(List.of(node.node()));
            node.peakAmps().forEach(each -> row.add(each.value()));
            row.add(node.greatestAmps());
            row.add(node.rangeAmps());
            row.add(node.rangeBound() ? "upper bound as stated" : "no bound");
            for (int i = 0; i < 3; i++) {
                row.add(
                        node.dipPercent().isEmpty()
                                ? ""
                                : (Object) node.dipPercent().get(i).value());
            }
            rows.add(row);
        }
        return new Grid(
                "percentiles",
                "Percentiles: peaks and dips",
                PERCENTILES,
                List.of(
                        Column.text("Node"),
                        Column.number("Peak P50", "A"),
                        Column.number("Peak P95", "A"),
                        Column.number("Peak P99", "A"),
                        Column.number("Greatest peak", "A"),
                        Column.number("Over the range", "A"),
                        Column.text("Range is"),
                        Column.number("Dip P50", "%"),
                        Column.number("Dip P95", "%"),
                        Column.number("Dip P99", "%")),
                rows);
    }

    private static Object cell(OptionalDouble limit) {
        return limit.isPresent() ? (Object) limit.getAsDouble() : "";
    }
}
