package evenrise.model.review;

import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LineCurrents;
import evenrise.model.electrical.LinePower;
import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.Phasor;
import evenrise.model.electrical.source.Plant;
import evenrise.model.electrical.source.RadialPlant;
import evenrise.model.electrical.source.Terminals;
import evenrise.model.project.Circuit;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The steady voltages at full use, by phasors: every load draws its running current, of the fundamental, at its power factor against
 * the nominal voltage that feeds it, whatever arrives.
 */
final class FullUseVoltages {
    private final Layout layout;
    private final Plant plant;
    private final RadialPlant.Voltages volts;

    /** @param plant with stiff sources where only what comes after them counts */
    FullUseVoltages(Layout layout, Plant plant) {
        this.layout = layout;
        this.plant = plant;
        Map<String, RadialPlant.Draw> draws = new LinkedHashMap<>();
        for (Panel panel : layout.project().panels()) {
            LineValues lines = LineValues.ZERO;
            for (Placement each : layout.in(panel)) {
                lines = lines.plus(lines(layout, each, each.load().runningAmps()));
            }
            draws.put(panel.id(), RadialPlant.Draw.of(lines));
        }
        this.volts = plant.voltages(draws);
    }

    /** A load's fundamental line currents. */
    static LineValues lines(Layout layout, Placement each, double rmsAmps) {
        LineCurrents one = new LineCurrents(Level.of(layout, each.load()).system());
        Load load = each.load();
        one.add(each.phases(), rmsAmps / LinePower.rmsOverFundamental(load.harmonicRatio()), Lag.of(load));
        return one.lines();
    }

    /** A load's cable, where it is stated and has a table. */
    static Optional<CableRun> branch(Layout layout, Load load) {
        return load.circuit()
                .flatMap(Circuit::cable)
                .flatMap(cable -> CableRun.of(layout.project(), cable, load.breakerAmps()));
    }

    /** By how much the voltage at a panel is low, of the nominal one. */
    double lowPercent(String panel, Terminals at) {
        return percent(panel, at, at.volts(volts.at(panel)));
    }

    /** The same at a load, of its terminals the lowest; its branch counts for nothing where it is unknown. */
    double lowPercent(Placement each) {
        return Terminals.of(each.phases()).stream()
                .mapToDouble(at -> percent(each.assignment().panel(), at, arriving(each, at)))
                .max()
                .orElse(0);
    }

    /** How much the highest of a panel's used voltages is above nominal; empty where none is used. */
    OptionalDouble highPercent(Panel panel) {
        return layout.in(panel).stream()
                .flatMap(each -> Terminals.of(each.phases()).stream())
                .distinct()
                .mapToDouble(at -> -lowPercent(panel.id(), at))
                .max();
    }

    private Phasor arriving(Placement each, Terminals at) {
        Phasor atPanel = at.volts(volts.at(each.assignment().panel()));
        Optional<CableRun> branch = branch(layout, each.load());
        if (branch.isEmpty()) {
            return atPanel;
        }
        // What a one-pole load draws returns through a neutral of the same size.
        double ways = each.load().poles() == 1 ? 2 : 1;
        Phasor drop = at.volts(lines(layout, each, each.load().runningAmps()))
                .times(branch.get().impedance())
                .times(ways);
        return atPanel.minus(drop);
    }

    private double percent(String panel, Terminals at, Phasor arriving) {
        return 100 * (1 - arriving.length() / at.volts(plant.nominal(panel)).length());
    }
}
