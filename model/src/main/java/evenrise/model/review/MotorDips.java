package evenrise.model.review;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LineCurrents;
import evenrise.model.electrical.LinePower;
import evenrise.model.electrical.Phasor;
import evenrise.model.project.Equipment;
import evenrise.model.project.Motor;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.DoubleStream;

/**
 * Voltages by phasors when one motor starts while all else is in full use: V − Zs·I of the supply, less Z·I and Zn·In of the
 * panel's feeder, fundamentals alone. What runs keeps the current that it has at nominal voltage; the motor at standstill is
 * the impedance that draws its locked-rotor current at nominal voltage. Where its power factor at standstill is not stated,
 * every one from unity to zero is tried.
 */
final class MotorDips {
    private static final int ANGLES = 90;
    private static final int STEP = 2;

    private final Layout layout;
    private final PhaseSystem system;
    private final double volts;
    private final Impedance source;
    private final Map<String, Impedance> feeders;
    private final Map<String, LineCurrents> inUse = new LinkedHashMap<>();

    /**
     * One start.
     *
     * @param changes deepest dip of each node's phases at each power factor tried, of the nominal voltage
     * @param remaining voltage of each node's phases at each of them, in percent
     */
    record Start(List<Map<String, Double>> changes, List<Map<String, Map<Phase, Double>>> remaining) {
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

        /** At a load's panel, on the worst of its phases, at the worst power factor. */
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
                    .mapToDouble(panel ->
                            load.phases().stream().mapToDouble(panel::get).min().orElseThrow());
        }
    }

    MotorDips(Layout layout, Impedance source, Map<String, Impedance> feeders) {
        this.layout = layout;
        this.system = layout.project().supply().system();
        this.volts = layout.project().supply().lineToNeutralVolts();
        this.source = source;
        this.feeders = feeders;
        Fed.all(layout).forEach(fed -> {
            LineCurrents currents = new LineCurrents(system);
            fed.loads().forEach(each -> currents.add(each.phases(), useAmps(each), Lag.of(each.load())));
            inUse.put(fed.node(), currents);
        });
    }

    Start of(Placement motor) {
        OptionalDouble stated = motor.load()
                .equipment()
                .flatMap(Equipment::motor)
                .map(Motor::lockedRotorPowerFactor)
                .orElse(OptionalDouble.empty());
        LineCurrents running = new LineCurrents(system);
        running.add(motor.phases(), useAmps(motor), Lag.of(motor.load()));
        Map<Phase, Phasor> ran = new EnumMap<>(Phase.class);
        system.phases().forEach(phase -> ran.put(phase, running.line(phase)));
        List<Map<String, Double>> changes = new ArrayList<>();
        List<Map<String, Map<Phase, Double>>> remaining = new ArrayList<>();
        for (int angle = 0; angle <= (stated.isPresent() ? 0 : ANGLES); angle += STEP) {
            double lag = stated.isPresent() ? Math.acos(stated.getAsDouble()) : Math.toRadians(angle);
            Map<Phase, Phasor> starts = starting(motor, ran, lag);
            Map<String, Double> change = new LinkedHashMap<>();
            Map<String, Map<Phase, Double>> remains = new LinkedHashMap<>();
            for (String node : inUse.keySet()) {
                for (Phase phase : system.phases()) {
                    Phasor before = voltage(node, phase).plus(lost(node, motor, ran, phase));
                    Phasor after = before.plus(lost(node, motor, starts, phase).times(-1));
                    change.merge(node, Math.max(0, 100 * (before.length() - after.length()) / volts), Math::max);
                    remains.computeIfAbsent(node, any -> new EnumMap<>(Phase.class))
                            .put(phase, 100 * after.length() / volts);
                }
            }
            changes.add(change);
            remaining.add(remains);
        }
        return new Start(changes, remaining);
    }

    /** What the motor draws at standstill from the voltage that its panel has without it, behind source and feeder. */
    private Map<Phase, Phasor> starting(Placement motor, Map<Phase, Phasor> ran, double lag) {
        String panel = motor.assignment().panel();
        double lockedRotor = MotorStarting.lockedRotorAmps(layout, motor).orElseThrow();
        Impedance feeder = feeders.getOrDefault(panel, Impedance.ZERO);
        Impedance line = source.plus(feeder);
        Map<Phase, Phasor> open = new EnumMap<>(Phase.class);
        motor.phases().forEach(phase -> open.put(phase, voltage(panel, phase).plus(lost(panel, motor, ran, phase))));
        Map<Phase, Phasor> drawn = new EnumMap<>(Phase.class);
        if (motor.phases().size() == 1) {
            Phase phase = motor.phases().get(0);
            Impedance way = line.plus(feeder.times(1 / neutralFactor(panel)));
            drawn.put(phase, open.get(phase).over(way.plus(standstill(volts / lockedRotor, lag))));
        } else if (motor.phases().size() == 2) {
            Phase one = motor.phases().get(0);
            Phase other = motor.phases().get(1);
            LineCurrents any = inUse.get(panel);
            double between = volts
                    * any.unitVoltage(one)
                            .plus(any.unitVoltage(other).times(-1))
                            .length();
            Phasor current = open.get(one)
                    .plus(open.get(other).times(-1))
                    .over(line.times(2).plus(standstill(between / lockedRotor, lag)));
            drawn.put(one, current);
            drawn.put(other, current.times(-1));
        } else {
            // Its star point is not connected: what the three have in common drives nothing.
            Phasor common =
                    open.values().stream().reduce(Phasor.ZERO, Phasor::plus).times(1.0 / 3);
            open.forEach((phase, voltage) -> drawn.put(
                    phase, voltage.plus(common.times(-1)).over(line.plus(standstill(volts / lockedRotor, lag)))));
        }
        return drawn;
    }

    private static Impedance standstill(double ohms, double lag) {
        return new Impedance(ohms * Math.cos(lag), ohms * Math.sin(lag));
    }

    private double neutralFactor(String panel) {
        return layout.index().panel(panel).map(Panel::neutralFactor).orElse(1.0);
    }

    /** With all in use. */
    private Phasor voltage(String node, Phase phase) {
        LineCurrents all = inUse.get(NodeFigures.SUPPLY);
        Phasor supply = all.unitVoltage(phase)
                .times(volts)
                .plus(all.line(phase).times(source).times(-1));
        return node.equals(NodeFigures.SUPPLY)
                ? supply
                : supply.plus(alongFeeder(
                                node,
                                inUse.get(node).line(phase),
                                inUse.get(node).neutral())
                        .times(-1));
    }

    /** What one motor's currents take from a node's voltage: at the source, and on the feeder where it is the motor's. */
    private Phasor lost(String node, Placement motor, Map<Phase, Phasor> currents, Phase phase) {
        Phasor line = currents.getOrDefault(phase, Phasor.ZERO);
        Phasor atSource = line.times(source);
        Phasor neutral = currents.values().stream().reduce(Phasor.ZERO, Phasor::plus);
        return motor.assignment().panel().equals(node) ? atSource.plus(alongFeeder(node, line, neutral)) : atSource;
    }

    private Phasor alongFeeder(String panel, Phasor line, Phasor neutral) {
        Impedance feeder = feeders.getOrDefault(panel, Impedance.ZERO);
        return line.times(feeder).plus(neutral.times(feeder.times(1 / neutralFactor(panel))));
    }

    private static double useAmps(Placement each) {
        return Math.max(each.load().runningAmps(), each.load().idleAmps())
                / LinePower.rmsOverFundamental(each.load().harmonicRatio());
    }
}
