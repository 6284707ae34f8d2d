package evenrise.model.review;

import evenrise.model.electrical.LineMatrix;
import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.Phasor;
import evenrise.model.electrical.source.Drawn;
import evenrise.model.electrical.source.Plant;
import evenrise.model.electrical.source.RadialPlant;
import evenrise.model.electrical.source.Terminals;
import evenrise.model.project.Equipment;
import evenrise.model.project.Motor;
import evenrise.model.project.Panel;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.DoubleStream;

/**
 * Voltages by phasors when one motor starts while all else is in full use, at every point behind a known source: each at its
 * own voltage, to neutral and between lines, through whatever transformers lie between, fundamentals alone. What runs keeps
 * the current that it has at nominal voltage; the motor at standstill is the impedance that draws its locked-rotor current at
 * nominal voltage. Where its power factor at standstill is not stated, every one from unity to zero is tried.
 */
final class MotorDips {
    private static final int ANGLES = 90;
    private static final int STEP = 2;

    private final Layout layout;
    private final Plant plant;
    private final List<Point> points;
    private final Map<String, LineValues> inUse = new LinkedHashMap<>();

    /**
     * One start.
     *
     * @param changes deepest dip of each node at each power factor tried, from the voltage without the motor, of the nominal one
     * @param remaining voltage of each node at each of them, in percent
     */
    record Start(List<Map<String, Double>> changes, List<Map<String, Map<Terminals, Double>>> remaining) {
        double mostPercent(String node) {
            return changes.stream().mapToDouble(each -> each.get(node)).max().orElseThrow();
        }

        /** Whatever the power factor, it is that at least. */
        double leastPercent(String node) {
            return changes.stream().mapToDouble(each -> each.get(node)).min().orElseThrow();
        }

        Set<String> nodes() {
            return changes.get(0).keySet();
        }

        boolean tells(Placement load) {
            return nodes().contains(load.assignment().panel());
        }

        /** At a load's panel, on the worst of its terminals, at the worst power factor. */
        double remainsAtLeastPercent(Placement load) {
            return remains(load).min().orElseThrow();
        }

        /** The same at the best power factor. */
        double remainsAtMostPercent(Placement load) {
            return remains(load).max().orElseThrow();
        }

        private DoubleStream remains(Placement load) {
            return remaining.stream()
                    .map(each -> each.get(load.assignment().panel()))
                    .mapToDouble(panel -> Terminals.of(load.phases()).stream()
                            .mapToDouble(panel::get)
                            .min()
                            .orElseThrow());
        }
    }

    /** @param points whose sources are known */
    MotorDips(Layout layout, Plant plant, List<Point> points) {
        this.layout = layout;
        this.plant = plant;
        this.points = List.copyOf(points);
        for (Panel panel : layout.project().panels()) {
            LineValues sum = LineValues.ZERO;
            for (Placement each : layout.in(panel)) {
                sum = sum.plus(lines(each));
            }
            inUse.put(panel.id(), sum);
        }
    }

    Start of(Placement motor) {
        OptionalDouble stated = motor.load()
                .equipment()
                .flatMap(Equipment::motor)
                .map(Motor::lockedRotorPowerFactor)
                .orElse(OptionalDouble.empty());
        String panel = motor.assignment().panel();
        Map<String, LineValues> others = new LinkedHashMap<>(inUse);
        others.computeIfPresent(panel, (id, sum) -> sum.minus(lines(motor)));
        RadialPlant.Voltages withoutIt = steady(others);
        LineMatrix siemens = new Drawn(
                        panel,
                        motor.phases(),
                        MotorStarting.lockedRotorAmps(layout, motor).orElseThrow())
                .siemens(plant.nominal(panel));
        Plant.Response response = plant.response(others, withoutIt, List.of(panel));
        List<Map<String, Double>> changes = new ArrayList<>();
        List<Map<String, Map<Terminals, Double>>> remaining = new ArrayList<>();
        for (int angle = 0; angle <= (stated.isPresent() ? 0 : ANGLES); angle += STEP) {
            double lag = stated.isPresent() ? Math.acos(stated.getAsDouble()) : Math.toRadians(angle);
            Function<String, LineValues> volts = response.to(List.of(siemens.times(Phasor.polar(1, -lag))));
            Map<String, Double> change = new LinkedHashMap<>();
            Map<String, Map<Terminals, Double>> remains = new LinkedHashMap<>();
            for (Point point : points) {
                LineValues nominal = plant.nominal(point.id());
                LineValues after = volts.apply(point.id());
                Map<Terminals, Double> here = new LinkedHashMap<>();
                double most = 0;
                for (Terminals at : Terminals.all(point.system())) {
                    double percent =
                            100 * at.volts(after).length() / at.volts(nominal).length();
                    double had = 100
                            * at.volts(withoutIt.at(point.id())).length()
                            / at.volts(nominal).length();
                    most = Math.max(most, had - percent);
                    here.put(at, percent);
                }
                change.put(point.id(), most);
                remains.put(point.id(), here);
            }
            changes.add(change);
            remaining.add(remains);
        }
        return new Start(changes, remaining);
    }

    private RadialPlant.Voltages steady(Map<String, LineValues> amps) {
        Map<String, RadialPlant.Draw> draws = new LinkedHashMap<>();
        amps.forEach((panel, lines) -> draws.put(panel, RadialPlant.Draw.of(lines)));
        return plant.voltages(draws);
    }

    /** In full use. */
    private LineValues lines(Placement each) {
        return FullUseVoltages.lines(
                layout, each, Math.max(each.load().runningAmps(), each.load().idleAmps()));
    }
}
