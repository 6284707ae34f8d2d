package evenrise.solver.document;

import evenrise.model.plan.EventPeak;
import evenrise.model.plan.PeakBasis;
import evenrise.model.project.Phase;
import evenrise.model.project.PlanEvent;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PhasePeak;
import evenrise.model.scatter.NodeScatter;
import evenrise.model.scatter.Percentile;
import evenrise.solver.report.NodeEvents;
import evenrise.solver.report.NodeUse;
import evenrise.solver.report.PeakWords;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/** Tables with a row for the supply and one for each panel. */
final class NodeTables {
    private static final String BALANCE =
            "Running current: rms, the sum of the loads' magnitudes, which limits are held against; by phasors: what a"
                    + " meter shows. Neutral: rms, every load at its running current. Worst use of a neutral: whatever of"
                    + " its one-pole loads is on. Peak: by the envelopes at nominal voltage, instantaneous, while the"
                    + " sequence runs. An empty limit: the project states none.";

    private static final String SCENES =
            " Running currents, neutral and imbalance are those of the worst scene of each; the distribution has those at"
                    + " full use beside them.";

    private static final String EVENTS =
            "Instantaneous, by the envelopes at nominal voltage, with the show running: what is on when it happens"
                    + " draws the greater of running and idle current, what comes on its idle current and its inrush."
                    + " Mains return: the supply comes back and the sequence runs again. Release: an emergency ends, and"
                    + " what dropped comes on. Board fails: the worst single board, dead through a brownout or back while"
                    + " all else is on. Dip ridden through: too short for a contact to open, every load draws its inrush beside"
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
    private final List<NodeUse> nodes;

    NodeTables(Layout layout) {
        this.layout = layout;
        this.nodes = NodeUse.of(layout);
    }

    DocumentTable<NodeUse> balance() {
        List<Phase> phases = phases(layout);
        List<Column<NodeUse>> columns = new ArrayList<>(List.of(Column.text("node", "Place", NodeUse::node)));
        phases.forEach(phase -> columns.add(
                Column.number("running" + phase, "Running phase " + phase, "A", of(NodeUse::runningAmps, phase), "")));
        columns.add(Column.number("allowed", "Allowed a phase", "A", NodeUse::runningLimitAmps));
        phases.forEach(phase -> columns.add(
                Column.number("phasor" + phase, "By phasors, line " + phase, "A", of(NodeUse::phasorAmps, phase), "")));
        columns.add(Column.number("imbalance", "Imbalance", "%", NodeUse::imbalancePercent)
                .calculated(
                        node -> layout.project().scenes().isEmpty() && node.meanAmps() > 0 ? imbalance(phases) : ""));
        columns.add(Column.number("neutral", "Neutral", "A", NodeUse::neutralAmps));
        columns.add(Column.number("neutralWorst", "Neutral, worst use", "A", NodeUse::neutralWorstUseAmps));
        columns.add(Column.number("neutralAllowed", "Neutral allowed", "A", NodeUse::neutralLimitAmps));
        phases.forEach(phase -> columns.add(Column.number(
                "peak" + phase,
                "Peak phase " + phase,
                "A",
                node -> node.peaks().stream()
                        .filter(peak -> peak.phase() == phase)
                        .mapToDouble(PhasePeak::amps)
                        .findFirst(),
                "")));
        columns.add(Column.number("peakAllowed", "Peak allowed", "A", NodeUse::inrushLimitAmps, ""));
        boolean hasNodes = !layout.project().nodes().isEmpty();
        return DocumentTable.of(
                "balance",
                hasNodes
                        ? "Phase balance: the supply, each panel and each distribution point"
                        : "Phase balance: the supply and each panel",
                BALANCE + (layout.project().scenes().isEmpty() ? "" : SCENES),
                columns,
                nodes);
    }

    /** 100·max|I − mean|/mean over the phases that a node has; cells of others hold no number. */
    private static String imbalance(List<Phase> phases) {
        String amps = phases.stream().map(phase -> "[running" + phase + "]").collect(Collectors.joining(","));
        return String.format(
                Locale.ROOT, "100*MAX(MAX(%1$s)-AVERAGE(%1$s),AVERAGE(%1$s)-MIN(%1$s))/AVERAGE(%1$s)", amps);
    }

    /** All that some point of the distribution has. */
    static List<Phase> phases(Layout layout) {
        return layout.distribution().points().stream()
                .flatMap(point -> point.system().phases().stream())
                .distinct()
                .sorted()
                .toList();
    }

    /** A figure of a phase; none where the node does not have it. */
    static <R> Function<R, OptionalDouble> of(Function<R, Map<Phase, Double>> figure, Phase phase) {
        return row -> {
            Double amps = figure.apply(row).get(phase);
            return amps == null ? OptionalDouble.empty() : OptionalDouble.of(amps);
        };
    }

    /** The peaks of the sequence at nominal voltage and over the supply's voltages. */
    DocumentTable<NodeOverRange> range() {
        PeakBasis basis = layout.peakBasis();
        return DocumentTable.of(
                "range",
                "Peaks " + PeakWords.NOMINAL + " and " + PeakWords.range(basis),
                RANGE + " Voltages: " + basis.voltageFrom() + ".",
                List.of(
                        Column.text("node", "Place", each -> each.peak().node()),
                        Column.number(
                                "nominal",
                                "At nominal voltage",
                                "A",
                                each -> each.peak().nominalAmps()),
                        Column.text("nominalIs", "Nominal is", each -> PeakWords.nominal(each.peak())),
                        Column.number(
                                "range",
                                "Over the range",
                                "A",
                                each -> each.peak().rangeAmps()),
                        Column.text("rangeIs", "Range is", each -> PeakWords.overRange(each.peak())),
                        Column.text(
                                "phase",
                                "Phase",
                                each -> each.peak().rangePhase().name()),
                        Column.number("at", "At", "s", each -> each.peak().rangeAtSeconds()),
                        Column.number("allowed", "Peak allowed", "A", NodeOverRange::inrushLimitAmps, "")),
                IntStream.range(0, nodes.size())
                        .mapToObj(i -> new NodeOverRange(
                                basis.peaks().get(i), nodes.get(i).inrushLimitAmps()))
                        .toList());
    }

    /** Loads that state too little for a bound; none where all state enough. */
    Optional<DocumentTable<UnstatedLoad>> unstated() {
        PeakBasis basis = layout.peakBasis();
        Set<String> withoutInrush = new HashSet<>(basis.withoutInrush());
        withoutInrush.addAll(basis.unswitchedWithoutInrush());
        Set<String> withoutWaveform = new HashSet<>(basis.withoutWaveform());
        Set<String> guessed = new HashSet<>(basis.guessed());
        List<UnstatedLoad> rows = layout.project().loads().stream()
                .map(load -> new UnstatedLoad(
                        load,
                        withoutInrush.contains(load.id()),
                        withoutWaveform.contains(load.id()),
                        guessed.contains(load.id())))
                .filter(UnstatedLoad::isAny)
                .toList();
        return rows.isEmpty()
                ? Optional.empty()
                : Optional.of(DocumentTable.ofLoads(
                        "unstated",
                        "Loads that state too little for their peak",
                        UNSTATED,
                        List.of(
                                Column.text("load", "Load", each -> each.load().id()),
                                Column.text("name", "Name", each -> each.load().name()),
                                Column.text(
                                        "switched",
                                        "Switched",
                                        each -> each.load().switched() ? "yes" : "no"),
                                Column.text(
                                        "inrush", "inrush_peak_a", each -> each.isInrushUnstated() ? "not stated" : ""),
                                Column.text(
                                        "waveform",
                                        "crest_factor or third_harmonic",
                                        each -> each.isWaveformUnstated() ? "not stated" : ""),
                                Column.text(
                                        "guessed",
                                        "Guessed",
                                        each -> each.isGuessed()
                                                ? String.join(", ", each.load().guessed())
                                                : "")),
                        rows,
                        each -> each.load().id()));
    }

    /** The peaks that the bad day brings, beside that of the sequence. */
    DocumentTable<NodeHappenings> events() {
        List<NodeEvents> events = NodeEvents.of(layout);
        List<Column<NodeHappenings>> columns = new ArrayList<>(List.of(
                Column.text("node", "Place", each -> each.node().node()),
                Column.number("sequence", "Sequence", "A", each -> each.node().greatestPeakAmps())));
        for (PlanEvent event : PlanEvent.values()) {
            columns.add(Column.number(event + "Amps", heading(event), "A", each -> peakAmps(each, event), ""));
            columns.add(Column.text(
                    event + "Phase",
                    headingOfPhase(event),
                    each -> each.events()
                            .of(event)
                            .map(peak -> peak.peakPhase()
                                    + peak.board().map(id -> ", " + id).orElse(""))
                            .orElse("")));
        }
        columns.add(Column.number(
                "allowed", "Sequence allowed", "A", each -> each.node().inrushLimitAmps(), ""));
        return DocumentTable.of(
                "events",
                "Peaks of events while the show runs, " + PeakWords.NOMINAL,
                EVENTS
                        + (PeakWords.isEventBound(layout.peakBasis())
                                ? " Every load states its inrush: these are upper bounds for sines at that voltage."
                                : " Some loads state no inrush, or it is guessed: these are no bounds."),
                columns,
                IntStream.range(0, nodes.size())
                        .mapToObj(i -> new NodeHappenings(nodes.get(i), events.get(i)))
                        .toList());
    }

    private static OptionalDouble peakAmps(NodeHappenings happening, PlanEvent event) {
        return happening.events().of(event).stream()
                .mapToDouble(EventPeak::peakInrushAmps)
                .findFirst();
    }

    private static String heading(PlanEvent event) {
        return switch (event) {
            case RETURN -> "Mains return";
            case RELEASE -> "Release";
            case BOARD_FAILURE -> "Board fails";
            case DIP -> "Dip ridden through";
        };
    }

    private static String headingOfPhase(PlanEvent event) {
        return switch (event) {
            case RETURN -> "Return phase";
            case RELEASE -> "Release phase";
            case BOARD_FAILURE -> "Phase, board";
            case DIP -> "Dip phase";
        };
    }

    static DocumentTable<NodeScatter> percentiles(List<NodeScatter> nodes) {
        List<Column<NodeScatter>> columns = new ArrayList<>(List.of(Column.text("node", "Place", NodeScatter::node)));
        List<String> shares = List.of("P50", "P95", "P99");
        for (int i = 0; i < shares.size(); i++) {
            int share = i;
            columns.add(Column.number(
                    "peak" + shares.get(i),
                    "Peak " + shares.get(i),
                    "A",
                    node -> node.peakAmps().get(share).value()));
        }
        columns.add(Column.number("greatest", "Greatest peak", "A", NodeScatter::greatestAmps));
        columns.add(Column.number("range", "Over the range", "A", NodeScatter::rangeAmps));
        columns.add(
                Column.text("rangeIs", "Range is", node -> node.rangeBound() ? "upper bound as stated" : "no bound"));
        for (int i = 0; i < shares.size(); i++) {
            int share = i;
            columns.add(Column.number(
                    "dip" + shares.get(i),
                    "Dip " + shares.get(i),
                    "%",
                    node -> node.dipPercent().stream()
                            .skip(share)
                            .mapToDouble(Percentile::value)
                            .findFirst(),
                    ""));
        }
        return DocumentTable.of("percentiles", "Percentiles: peaks and dips", PERCENTILES, columns, nodes);
    }
}
