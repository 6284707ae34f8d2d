package evenrise.solver.document;

import evenrise.model.plan.Quantity;
import evenrise.model.plan.Review;
import evenrise.model.project.Phase;
import evenrise.model.project.PlanEvent;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLimits;
import evenrise.solver.report.NodeEvents;
import evenrise.solver.report.NodeUse;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/** How tight the plan is: figures beside their limits, the tightest first. */
final class MarginTable {
    private static final Set<String> VOLTAGE_DROPS = Set.of("voltage drop of the branch", "voltage drop in all");

    private static final String NOTE = "By how much of its limit is used. Running and neutral currents, peaks while the"
            + " sequence runs and when something happens, fault currents and voltage drops; trips, dips and what else is"
            + " checked stand among the electrical findings, and what could not be checked stands there, too."
            + " A limit that the project does not state has no row.";

    private final Layout layout;
    private final List<Margin> margins = new ArrayList<>();

    private final Map<String, OptionalDouble> limits;
    private final List<PlanEvent> held;

    private MarginTable(Layout layout, Review review) {
        this.layout = layout;
        this.limits = NodeLimits.of(layout.project()).stream()
                .collect(Collectors.toMap(NodeLimits::node, NodeLimits::inrushLimitAmps));
        this.held = layout.project().behaviourOrDefault().inrushLimitHoldsFor();
        NodeUse.of(layout).forEach(this::node);
        NodeEvents.of(layout).forEach(this::events);
        review.quantities().forEach(this::quantity);
    }

    static DocumentTable<Margin> of(Layout layout, Review review) {
        List<Margin> tightestFirst = new MarginTable(layout, review)
                .margins.stream()
                        .sorted(Comparator.comparingDouble(Margin::usedPercent).reversed())
                        .toList();
        return new DocumentTable<>(
                "margins",
                "Margins: figures beside their limits, the tightest first",
                NOTE,
                List.of(
                        Column.text("place", "Place", Margin::place),
                        Column.text("what", "Figure", Margin::what),
                        Column.number("figure", "Value", "", Margin::figure),
                        Column.number("limit", "Limit", "", Margin::limit),
                        Column.text("unit", "Unit", Margin::unit),
                        Column.number("used", "Used", "%", Margin::usedPercent)
                                .calculated(row -> row.limit() == 0 ? "" : "100*[figure]/[limit]"),
                        Column.number("left", "Left", "", Margin::left).calculated(row -> "[limit]-[figure]"),
                        Column.text("basis", "Limit by", Margin::basis)),
                tightestFirst,
                row -> layout.placement(row.place()).map(placement -> placement.id()));
    }

    private void node(NodeUse use) {
        Map.Entry<Phase, Double> most = use.runningAmps().entrySet().stream()
                .max(Map.Entry.comparingByValue())
                .orElseThrow();
        add(
                use.node(),
                "running current, line " + most.getKey(),
                most.getValue(),
                use.runningLimitAmps(),
                "A",
                "rule rating");
        add(use.node(), "neutral current", use.neutralAmps(), use.neutralLimitAmps(), "A", "rule neutral");
        use.inrushLimitAmps()
                .ifPresent(limit -> add(
                        use.node(),
                        "peak while the sequence runs, at nominal voltage",
                        use.greatestPeakAmps(),
                        limit,
                        "A",
                        "rule inrush-limit"));
    }

    /** Beside the limit whether or not a rule holds them to it. */
    private void events(NodeEvents events) {
        OptionalDouble limit = limits.get(events.node());
        if (limit.isPresent()) {
            events.peaks()
                    .forEach(each -> add(
                            events.node(),
                            "peak, " + EventLoading.words(each.event()).toLowerCase(Locale.ROOT),
                            each.peakInrushAmps(),
                            limit.getAsDouble(),
                            "A",
                            held.contains(each.event())
                                    ? "rule inrush-limit"
                                    : "inrush limit, held for the sequence only"));
        }
    }

    private void quantity(Quantity each) {
        String what = each.name().equals(PanelHead.GREATEST_FAULT)
                ? "available fault current"
                : VOLTAGE_DROPS.contains(each.name()) ? each.name() : "";
        if (!what.isEmpty() && each.limit().isPresent()) {
            add(each.place(), what, each.value(), each.limit().getAsDouble(), each.unit(), each.clause());
        }
    }

    private void add(String place, String what, double figure, double limit, String unit, String basis) {
        margins.add(new Margin(place, what, figure, limit, unit, basis));
    }
}
