package evenrise.model.electrical.source;

import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.Phasor;
import java.util.List;

/** The voltages that steady loads leave, between all terminals that are asked about, by place: see {@link UnitDrops}. */
final class SteadyVolts {
    private final RadialPlant.Voltages voltages;
    private final List<String> panels;
    private final double[] real;
    private final double[] imaginary;
    private final double[] lengths;
    private final double[] away;

    SteadyVolts(UnitDrops units, RadialPlant.Voltages voltages) {
        this.voltages = voltages;
        this.panels = voltages.panels().keySet().stream()
                .filter(units.plant()::isPanel)
                .toList();
        this.real = new double[units.places()];
        this.imaginary = new double[units.places()];
        this.lengths = new double[units.places()];
        this.away = new double[units.places()];
        for (String node : units.nodes()) {
            LineValues here = voltages.at(node);
            for (Terminals at : units.terminals()) {
                Phasor between = at.volts(here);
                int place = units.place(node, at);
                real[place] = between.real();
                imaginary[place] = between.imaginary();
                lengths[place] = between.length();
                away[place] = new Phasor(
                                real[place] - units.nominalReal(place),
                                imaginary[place] - units.nominalImaginary(place))
                        .length();
            }
        }
    }

    RadialPlant.Voltages voltages() {
        return voltages;
    }

    /** Points at which loads may sit. */
    List<String> panels() {
        return panels;
    }

    double[] real() {
        return real;
    }

    double[] imaginary() {
        return imaginary;
    }

    double[] lengths() {
        return lengths;
    }

    double length(int place) {
        return lengths[place];
    }

    /** From nominal. */
    double awayVolts(int place) {
        return away[place];
    }
}
