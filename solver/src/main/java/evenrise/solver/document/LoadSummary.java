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
    private final SheetWords words;
    private final Panel panel;
    private final Point point;
    private final List<Phase> phases;

    LoadSummary(Layout layout, Panel panel, SheetWords words) {
        this.layout = layout;
        this.words = words;
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
            lines.add(line(words.say("sum.own"), own, "", "", false));
        }
        lines.add(line(
                words.say("sum.connected"),
                all,
                words.number(HUNDREDTHS.amps(amps)),
                feedsOn ? words.say("sum.with-beyond") : "",
                false));
        lines.add(new Line(
                words.say("sum.factor"), List.of(), words.number("1.00"), "", words.say("sum.no-factor"), false));
        lines.add(
                line(words.say("sum.demand"), all, words.number(HUNDREDTHS.amps(amps)), words.say("sum.most"), false));
        if (!layout.project().scenes().isEmpty()) {
            double worst = most(figures.runningAmps());
            lines.add(new Line(
                    words.say("sum.worst-scene"),
                    List.of(),
                    "",
                    words.number(HUNDREDTHS.amps(worst)),
                    words.say("sum.as-scenes"),
                    false));
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
        boolean isTooSmall = amps > device + EQUAL_AMPS;
        return Optional.of(line(
                words.say(isFullyRated ? "sum.continuous-100" : "sum.continuous-125"),
                connected(counted),
                words.number(HUNDREDTHS.amps(amps, device)),
                words.say(
                        isTooSmall ? "sum.device-too-small" : "sum.device",
                        words.say(isFullyRated ? "sum.fully-rated" : "sum.by-clause"),
                        words.number(Unrounded.amps(device))),
                isTooSmall));
    }

    /** What the hard rule holds the plan to. */
    private Line allowed(double runningAmps) {
        double fraction = panel.continuousFractionUnder(layout.project().supply());
        double allowed = panel.ratedAmps() * fraction;
        return new Line(
                words.say("sum.allowed"),
                List.of(),
                "",
                words.number(HUNDREDTHS.amps(allowed, runningAmps)),
                words.say(
                        panel.continuousFraction().isPresent() ? "sum.as-panel" : "sum.as-supply",
                        words.number(Unrounded.rated(100 * fraction)),
                        words.number(HUNDREDTHS.amps(allowed - runningAmps))),
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
