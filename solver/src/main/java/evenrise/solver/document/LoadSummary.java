package evenrise.solver.document;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.contract.Decimals;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.Placement;
import evenrise.model.rules.UseCurrents;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.function.ToDoubleFunction;

/**
 * What a panel is connected to, what of it counts as demand, and what that takes of its bus and of the device before it.
 * Apparent power is the running current times the nominal voltage that a breaker feeds, equal parts of it on each pole:
 * line to neutral for one pole and for three, line to line for two. Amperes are sums of magnitudes, never less than a
 * meter shows.
 */
public final class LoadSummary {
    /** Less counts as nothing. */
    static final double EQUAL_AMPS = 1e-9;

    /**
     * One line of it.
     *
     * @param voltAmps by the panel's phases; empty where there are none to tell
     * @param total of them
     * @param amps of the line that carries most
     */
    public record Line(String name, List<String> voltAmps, String total, String amps, String note, boolean isBad) {
        public Line {
            voltAmps = List.copyOf(voltAmps);
        }
    }

    private final Layout layout;
    private final Panel panel;
    private final Point point;
    private final List<Phase> phases;

    LoadSummary(Layout layout, Panel panel) {
        this.layout = layout;
        this.panel = panel;
        this.point = layout.distribution().of(panel);
        this.phases = layout.index().slotsOf(panel).phases().stream().sorted().toList();
    }

    List<Line> lines(NodeFigures figures) {
        List<Line> lines = new ArrayList<>();
        Map<Phase, Double> own = own(Load::runningAmps);
        Map<Phase, Double> all = connected(Load::runningAmps);
        double amps = most(layout.fullUse().runningAmps(point));
        boolean feedsOn = phases.stream().anyMatch(phase -> all.get(phase) > own.get(phase) + EQUAL_AMPS);
        if (feedsOn) {
            lines.add(line("Its own circuits", own, "", "", false));
        }
        lines.add(line("Connected", all, HUNDREDTHS.amps(amps), feedsOn ? "with what it feeds on" : "", false));
        lines.add(new Line("Demand factor", List.of(), "1.00", "", "none is stated, so none is taken", false));
        lines.add(line("Demand", all, HUNDREDTHS.amps(amps), "the line that carries most", false));
        if (!layout.project().scenes().isEmpty()) {
            double worst = most(figures.runningAmps());
            lines.add(new Line(
                    "Worst scene", List.of(), "", HUNDREDTHS.amps(worst), "as the project states its scenes", false));
        }
        continuous().ifPresent(lines::add);
        lines.add(allowed(most(figures.runningAmps())));
        return lines;
    }

    private Optional<Line> continuous() {
        if (!PanelSums.isByNec(layout)) {
            return Optional.empty();
        }
        boolean isFullyRated = PanelSums.isFullyRated(panel);
        ToDoubleFunction<Load> counted = load -> load.runningAmps() * PanelSums.continuousFactor(layout, panel, load);
        double amps = most(UseCurrents.of(layout, counted).runningAmps(point));
        double device = PanelHead.deviceAmps(panel);
        return Optional.of(line(
                isFullyRated ? "Continuous at 100 %" : "Continuous at 125 %",
                connected(counted),
                HUNDREDTHS.amps(amps, device),
                String.format(
                        Locale.ROOT,
                        "%s; %s device before it%s",
                        isFullyRated ? "that device is stated to carry its rating" : "NEC 215.3 (from memory)",
                        Unrounded.amps(device),
                        amps > device + EQUAL_AMPS ? ": too small at full use" : ""),
                amps > device + EQUAL_AMPS));
    }

    /** What the hard rule holds the plan to. */
    private Line allowed(double runningAmps) {
        double fraction = panel.continuousFractionUnder(layout.project().supply());
        double allowed = panel.ratedAmps() * fraction;
        return new Line(
                "Allowed to run",
                List.of(),
                "",
                HUNDREDTHS.amps(allowed, runningAmps),
                String.format(
                        Locale.ROOT,
                        "%s %% of the bus, %s; %s left on the line that carries most",
                        Unrounded.rated(100 * fraction),
                        panel.continuousFraction().isPresent() ? "as the panel states" : "as the supply states",
                        HUNDREDTHS.amps(allowed - runningAmps)),
                runningAmps > allowed + EQUAL_AMPS);
    }

    private Line line(String name, Map<Phase, Double> voltAmps, String amps, String note, boolean isBad) {
        return new Line(
                name,
                phases.stream()
                        .map(phase -> Decimals.fixed(voltAmps.get(phase), 0))
                        .toList(),
                Decimals.fixed(
                        voltAmps.values().stream()
                                .mapToDouble(Double::doubleValue)
                                .sum(),
                        0),
                amps,
                note,
                isBad);
    }

    /** Of its own breakers, by phase. */
    private Map<Phase, Double> own(ToDoubleFunction<Load> amps) {
        Map<Phase, Double> sum = none();
        for (Placement each : layout.in(panel)) {
            double onEach = onEachPole(point, each.load(), amps.applyAsDouble(each.load()));
            each.phases().forEach(phase -> sum.merge(phase, onEach, Double::sum));
        }
        return sum;
    }

    /** With all that it feeds on, whose currents count at the voltage to neutral. */
    private Map<Phase, Double> connected(ToDoubleFunction<Load> amps) {
        Map<Phase, Double> sum = own(amps);
        Map<Phase, Double> running = new EnumMap<>(UseCurrents.of(layout, amps).runningAmps(point));
        for (Placement each : layout.in(panel)) {
            each.phases().forEach(phase -> running.merge(phase, -amps.applyAsDouble(each.load()), Double::sum));
        }
        phases.forEach(phase -> {
            double beyond = running.getOrDefault(phase, 0.0);
            if (beyond > EQUAL_AMPS) {
                sum.merge(phase, beyond * point.lineToNeutralVolts(), Double::sum);
            }
        });
        return sum;
    }

    private Map<Phase, Double> none() {
        Map<Phase, Double> sum = new EnumMap<>(Phase.class);
        phases.forEach(phase -> sum.put(phase, 0.0));
        return sum;
    }

    /** Volt-amperes on each pole of a load that draws so much in each. */
    static double onEachPole(Point point, Load load, double amps) {
        return PanelSums.voltAmpsPerAmp(point, load) * amps;
    }

    private static double most(Map<Phase, Double> amps) {
        return amps.values().stream().mapToDouble(Double::doubleValue).max().orElse(0);
    }
}
