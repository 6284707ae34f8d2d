package evenrise.solver.report.page;

import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.EventPeak;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Review;
import evenrise.model.project.Board;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.Phase;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.PeakShare;
import evenrise.model.rules.Placement;
import evenrise.model.rules.Verdict;
import evenrise.model.scatter.NodeScatter;
import evenrise.solver.report.page.Grid.Column;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;

/** The tables of a plan's documents. */
final class Grids {
    private final Layout layout;

    Grids(Layout layout) {
        this.layout = layout;
    }

    Grid circuits() {
        List<List<Object>> rows = new ArrayList<>();
        for (Placement each : inOrder()) {
            rows.add(List.of(
                    each.assignment().panel(),
                    slots(each),
                    phases(each),
                    each.id(),
                    each.load().name(),
                    each.load().poles(),
                    each.load().breakerAmps(),
                    each.load().runningAmps(),
                    each.load().shutdownGroup().orElse(""),
                    each.onSeconds().isPresent() ? (Object) each.onSeconds().getAsDouble() : "always on"));
        }
        return new Grid(
                "circuits",
                "Panel schedule, all circuits",
                List.of(
                        Column.text("Panel"),
                        Column.text("Slots"),
                        Column.text("Phases"),
                        Column.text("Load"),
                        Column.text("Name"),
                        Column.number("Poles", ""),
                        Column.number("Breaker", "A"),
                        Column.number("Running", "A"),
                        Column.text("Shutdown group"),
                        Column.number("On", "s")),
                rows);
    }

    Grid landing() {
        List<List<Object>> rows = new ArrayList<>();
        for (Board board : layout.project().boards()) {
            layout.outputs(board.id())
                    .forEach((output, each) -> rows.add(List.of(
                            board.id(),
                            output,
                            each.id(),
                            each.load().name(),
                            each.assignment().panel(),
                            slots(each),
                            each.onSeconds().orElse(0),
                            layout.times().offSeconds(each.onSeconds().orElse(0)))));
        }
        return new Grid(
                "landing",
                "Landing list: which control lead lands where",
                List.of(
                        Column.text("Board"),
                        Column.number("Output", ""),
                        Column.text("Load"),
                        Column.text("Name"),
                        Column.text("Panel"),
                        Column.text("Slots"),
                        Column.number("On", "s"),
                        Column.number("Off, from the off command", "s")),
                rows);
    }

    Grid settings() {
        List<List<Object>> rows = new ArrayList<>();
        for (Board board : layout.project().boards()) {
            rows.add(List.of(
                    board.id(),
                    board.type(),
                    board.panel(),
                    board.after().orElse("the command"),
                    layout.setting(board).startDelaySeconds(),
                    layout.setting(board).stepSeconds(),
                    layout.outputs(board.id()).size(),
                    layout.index().typeOf(board).outputs()));
        }
        return new Grid(
                "settings",
                "Settings of the boards",
                List.of(
                        Column.text("Board"),
                        Column.text("Type"),
                        Column.text("Panel"),
                        Column.text("Starts after"),
                        Column.number("Start delay", "s"),
                        Column.number("Step", "s"),
                        Column.number("Outputs used", ""),
                        Column.number("Outputs", "")),
                rows);
    }

    Grid balance() {
        List<Phase> phases = layout.project().supply().system().phases();
        List<Column> columns = new ArrayList<>(List.of(Column.text("Node")));
        phases.forEach(phase -> columns.add(Column.number("Running " + phase, "A")));
        columns.add(Column.number("Imbalance", "%"));
        columns.add(Column.number("Neutral", "A"));
        columns.add(Column.number("Allowed a phase", "A"));
        phases.forEach(phase -> columns.add(Column.number("Peak " + phase, "A")));
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        List<List<Object>> rows = new ArrayList<>();
        for (int i = 0; i < limits.size(); i++) {
            NodeFigures node = layout.nodes().get(i);
            List<Object> row = new ArrayList<>(List.of(node.node()));
            phases.forEach(phase -> row.add(node.runningAmps().get(phase)));
            row.add(node.imbalancePercent());
            row.add(node.neutralAmps());
            row.add(limits.get(i).ratedAmps() * layout.project().supply().continuousFraction());
            node.peaks().forEach(peak -> row.add(peak.amps()));
            rows.add(row);
        }
        return new Grid("balance", "Phases of the supply and of each panel", columns, rows);
    }

    Grid groups() {
        Map<String, List<Placement>> placed = layout.groups();
        List<List<Object>> rows = new ArrayList<>();
        for (ShutdownGroup group : layout.project().shutdownGroups()) {
            List<Placement> loads = placed.getOrDefault(group.id(), List.of());
            rows.add(List.of(
                    group.id(),
                    group.onEmergency() == OnEmergency.DROP ? "drops" : "holds",
                    loads.size(),
                    loads.stream()
                            .flatMap(each -> each.board().stream())
                            .map(Board::id)
                            .distinct()
                            .collect(Collectors.joining(", ")),
                    loads.stream().map(Placement::id).collect(Collectors.joining(", "))));
        }
        return new Grid(
                "groups",
                "Shutdown groups: what drops and what holds on an emergency",
                List.of(
                        Column.text("Group"),
                        Column.text("On an emergency"),
                        Column.number("Loads", ""),
                        Column.text("Boards"),
                        Column.text("Which")),
                rows);
    }

    Grid peak(Verdict verdict) {
        List<List<Object>> rows = new ArrayList<>();
        for (PeakShare share : verdict.peakShares()) {
            rows.add(List.of(share.load(), share.amps(), share.baseAmps()));
        }
        return new Grid(
                "peak",
                "What makes the peak of the supply",
                List.of(Column.text("Load"), Column.number("At the peak", "A"), Column.number("Of it steady", "A")),
                rows);
    }

    Grid review(Review review) {
        List<List<Object>> rows = new ArrayList<>();
        review.remarks()
                .forEach(remark -> rows.add(List.of(
                        remark.check(),
                        remark.grade().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '),
                        remark.place(),
                        remark.clause(),
                        remark.message())));
        return new Grid(
                "review",
                "Electrical findings",
                List.of(
                        Column.text("Check"),
                        Column.text("Grade"),
                        Column.text("Place"),
                        Column.text("Clause"),
                        Column.text("What was found")),
                rows);
    }

    /** The peaks that the bad day brings, of the supply and each panel. */
    Grid events() {
        List<List<Object>> rows = new ArrayList<>();
        List<NodeLimits> limits = NodeLimits.of(layout.project());
        for (int node = 0; node < limits.size(); node++) {
            for (EventPeak peak : layout.eventPeaks().get(node)) {
                rows.add(List.of(
                        limits.get(node).node(),
                        peak.event().name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '),
                        peak.peakInrushAmps(),
                        peak.peakPhase().name()));
            }
        }
        return new Grid(
                "events",
                "Peaks of events",
                List.of(Column.text("Node"), Column.text("Event"), Column.number("Peak", "A"), Column.text("Phase")),
                rows);
    }

    Grid percentiles(List<NodeScatter> nodes) {
        List<List<Object>> rows = new ArrayList<>();
        for (NodeScatter node : nodes) {
            List<Object> row = new ArrayList<>(List.of(node.node()));
            node.peakAmps().forEach(each -> row.add(each.value()));
            row.add(node.greatestAmps());
            row.add(node.boundAmps());
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
                "Percentiles of peaks and dips",
                List.of(
                        Column.text("Node"),
                        Column.number("Peak P50", "A"),
                        Column.number("P95", "A"),
                        Column.number("P99", "A"),
                        Column.number("Greatest", "A"),
                        Column.number("Bound", "A"),
                        Column.number("Dip P50", "%"),
                        Column.number("P95", "%"),
                        Column.number("P99", "%")),
                rows);
    }

    Grid bill() {
        BillOfMaterials bill = BillOfMaterials.of(layout.project());
        List<List<Object>> rows = new ArrayList<>();
        bill.lines()
                .forEach(line -> rows.add(List.of(
                        line.item(),
                        line.quantity(),
                        line.unitPrice().isPresent() ? (Object) line.unitPrice().getAsDouble() : "no price",
                        line.sum().isPresent() ? (Object) line.sum().getAsDouble() : "no price")));
        String currency = bill.currency().orElse("");
        return new Grid(
                "bill",
                "Bill of materials",
                List.of(
                        Column.text("Item"),
                        Column.number("Quantity", ""),
                        Column.number("Price", currency),
                        Column.number("Sum", currency)),
                rows);
    }

    Grid commissioning() {
        List<List<Object>> rows = new ArrayList<>();
        for (Placement each : inOrder()) {
            rows.add(List.of(
                    each.assignment().panel(),
                    slots(each),
                    each.id(),
                    each.load().name(),
                    each.load().runningAmps(),
                    "",
                    each.onSeconds().isPresent() ? (Object) each.onSeconds().getAsDouble() : "always on",
                    "",
                    ""));
        }
        return new Grid(
                "commissioning",
                "Commissioning sheet",
                List.of(
                        Column.text("Panel"),
                        Column.text("Slots"),
                        Column.text("Load"),
                        Column.text("Name"),
                        Column.number("Planned", "A"),
                        Column.text("Measured, A"),
                        Column.number("On planned", "s"),
                        Column.text("On measured, s"),
                        Column.text("Initials")),
                rows);
    }

    Grid labels() {
        List<List<Object>> rows = new ArrayList<>();
        for (Placement each : inOrder()) {
            rows.add(List.of(
                    each.assignment().panel() + " " + slots(each),
                    each.id(),
                    each.load().name()));
        }
        return new Grid(
                "labels",
                "Labels for the breakers",
                List.of(Column.text("Place"), Column.text("Load"), Column.text("Name")),
                rows);
    }

    /** What is another than in an earlier plan; a load that only one of them has is told, too. */
    Grid differences(Optional<Plan> earlier) {
        List<List<Object>> rows = new ArrayList<>();
        Map<String, Assignment> before = new LinkedHashMap<>();
        earlier.ifPresent(plan -> plan.assignments().forEach(each -> before.put(each.load(), each)));
        for (Assignment now : layout.plan().assignments()) {
            Assignment was = before.remove(now.load());
            if (was == null) {
                rows.add(List.of(now.load(), "", place(now)));
            } else if (!place(was).equals(place(now))) {
                rows.add(List.of(now.load(), place(was), place(now)));
            }
        }
        before.values().forEach(was -> rows.add(List.of(was.load(), place(was), "")));
        return new Grid(
                "differences",
                "Differences to the earlier plan",
                List.of(Column.text("Load"), Column.text("Before"), Column.text("Now")),
                rows);
    }

    private static String place(Assignment it) {
        String lead = it.board().isPresent() && it.output().isPresent()
                ? ", board " + it.board().get() + " output " + it.output().getAsInt()
                : "";
        return "panel " + it.panel() + " slot " + it.slot() + lead;
    }

    private List<Placement> inOrder() {
        Map<String, Integer> panels = new LinkedHashMap<>();
        layout.project().panels().forEach(panel -> panels.put(panel.id(), panels.size()));
        return layout.placements().stream()
                .sorted(Comparator.comparingInt((Placement each) ->
                                panels.getOrDefault(each.assignment().panel(), panels.size()))
                        .thenComparingInt(each -> each.assignment().slot()))
                .toList();
    }

    static String slots(Placement each) {
        return each.slots().isEmpty()
                ? String.valueOf(each.assignment().slot())
                : each.slots().stream().map(String::valueOf).collect(Collectors.joining("-"));
    }

    static String phases(Placement each) {
        return each.phases().stream().map(Phase::name).collect(Collectors.joining());
    }
}
