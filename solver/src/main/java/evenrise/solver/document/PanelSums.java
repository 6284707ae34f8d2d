package evenrise.solver.document;

import evenrise.model.electrical.LinePower;
import evenrise.model.project.Circuit;
import evenrise.model.project.Electrical;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.Practice;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.UseCurrents;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.function.ToDoubleFunction;

/**
 * What a panel's sums are made of beside its own circuits, for who adds them up anew.
 *
 * @param fedOn what it feeds on, by its phases; nothing in each where it feeds nothing on
 * @param fedOnContinuous the same with what counts for continuous loads
 * @param worstSceneAmps by its phases, as the project states its scenes; empty where it states none
 * @param continuousFactor what its continuous circuits count by before the device; empty where practice asks for none
 * @param deviceAmps rating of the device before the bus
 * @param allowedFraction of the bus, by the hard rule
 */
public record PanelSums(
        List<Beyond> fedOn,
        List<Beyond> fedOnContinuous,
        List<Double> worstSceneAmps,
        OptionalDouble continuousFactor,
        double busAmps,
        double deviceAmps,
        double allowedFraction) {
    /** NEC 215.2(A)(1) and 215.3: what runs for three hours or more counts so much. */
    private static final double CONTINUOUS = 1.25;

    /** On one phase of what is fed on through the panel. */
    public record Beyond(double amps, double voltAmps) {}

    public PanelSums {
        fedOn = List.copyOf(fedOn);
        fedOnContinuous = List.copyOf(fedOnContinuous);
        worstSceneAmps = List.copyOf(worstSceneAmps);
    }

    static PanelSums of(Layout layout, Panel panel, NodeFigures figures) {
        List<Phase> phases =
                layout.index().slotsOf(panel).phases().stream().sorted().toList();
        return new PanelSums(
                beyond(layout, panel, phases, Load::runningAmps),
                beyond(layout, panel, phases, load -> load.runningAmps() * continuousFactor(layout, panel, load)),
                layout.project().scenes().isEmpty()
                        ? List.of()
                        : phases.stream().map(figures.runningAmps()::get).toList(),
                isByNec(layout) ? OptionalDouble.of(isFullyRated(panel) ? 1 : CONTINUOUS) : OptionalDouble.empty(),
                panel.ratedAmps(),
                PanelHead.deviceAmps(panel),
                panel.continuousFractionUnder(layout.project().supply()));
    }

    /** Whether it feeds anything on. */
    public boolean feedsOn() {
        return fedOn.stream().anyMatch(each -> each.amps() > 0);
    }

    /** By NEC practice, or where none is stated. */
    static boolean isByNec(Layout layout) {
        return layout.project().electrical().flatMap(Electrical::practice).orElse(Practice.NEC) != Practice.IEC;
    }

    static boolean isFullyRated(Panel panel) {
        return panel.feeder().map(feeder -> feeder.fullyRated()).orElse(false);
    }

    /** What a circuit counts by before the device; what states nothing counts as continuous. */
    static double continuousFactor(Layout layout, Panel panel, Load load) {
        return isByNec(layout)
                        && !isFullyRated(panel)
                        && load.circuit().map(Circuit::continuous).orElse(true)
                ? CONTINUOUS
                : 1;
    }

    /** Volt-amperes on each pole of a load, for each ampere in it. */
    static double voltAmpsPerAmp(Point point, Load load) {
        return LinePower.voltAmpsPerAmp(point.system(), load.poles(), point.lineToNeutralVolts()) / load.poles();
    }

    /** Its currents count at the voltage to neutral. */
    private static List<Beyond> beyond(Layout layout, Panel panel, List<Phase> phases, ToDoubleFunction<Load> amps) {
        Point point = layout.distribution().of(panel);
        Map<Phase, Double> all = UseCurrents.of(layout, amps).runningAmps(point);
        return phases.stream()
                .map(phase -> {
                    double own = layout.in(panel).stream()
                            .filter(each -> each.phases().contains(phase))
                            .mapToDouble(each -> amps.applyAsDouble(each.load()))
                            .sum();
                    double beyond = all.getOrDefault(phase, 0.0) - own;
                    double kept = beyond > LoadSummary.EQUAL_AMPS ? beyond : 0;
                    return new Beyond(kept, kept * point.lineToNeutralVolts());
                })
                .toList();
    }
}
