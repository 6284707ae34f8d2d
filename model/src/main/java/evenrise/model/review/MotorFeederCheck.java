package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.electrical.PhaseCurrents;
import evenrise.model.electrical.breaker.ContinuousLoad;
import evenrise.model.electrical.breaker.StandardRatings;
import evenrise.model.electrical.motor.MotorFeeder;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Cable;
import evenrise.model.project.Electrical;
import evenrise.model.project.Equipment;
import evenrise.model.project.Feeder;
import evenrise.model.project.Load;
import evenrise.model.project.Motor;
import evenrise.model.project.Phase;
import evenrise.model.project.Practice;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Feeders that supply motors, by NEC practice: 430.24 and 430.62 in the place of the rules for other feeders. */
final class MotorFeederCheck implements ElectricalCheck {
    private static final String ID = "motor-feeder";

    /** NEC 240.4(B): the next standard rating above the ampacity is allowed up to this. */
    private static final double NEXT_SIZE_UP_TO_AMPS = 800;

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        Optional<Practice> practice = layout.project().electrical().flatMap(Electrical::practice);
        List<String> bare = new ArrayList<>();
        List<String> tables = new ArrayList<>();
        for (Point panel : layout.distribution().points()) {
            if (panel.isSupply() || practice.isEmpty() || !MotorDuty.hasMotors(layout, panel, practice.get())) {
                continue;
            }
            MotorFeeder feeder = worst(layout, panel, MotorFeeder::conductorAmps);
            if (feeder.hasUnknown()) {
                findings.notChecked(
                        ID, List.of(panel.id()), "equipment.motor.horsepower of every motor that the feeder supplies");
                continue;
            }
            findings.made(ID, panel.id());
            Optional<Cable> cable = panel.feeder().flatMap(Feeder::cable);
            Optional<OptionalDouble> ampacity = cable.map(each -> conductor(layout, panel, each, feeder, findings));
            if (cable.isEmpty()) {
                bare.add(panel.id());
            } else if (ampacity.orElseThrow().isEmpty()) {
                tables.add(panel.id());
            }
            device(
                    panel,
                    feeder,
                    worst(layout, panel, MotorFeeder::deviceAmps),
                    ampacity.orElse(OptionalDouble.empty()),
                    findings);
        }
        findings.notChecked(ID, bare, "feeder.cable");
        findings.notChecked(ID, tables, "a verified table for this size, metal, temperature and method");
    }

    /** The line of the feeder on which {@code figure} is greatest. */
    private static MotorFeeder worst(
            Layout layout, Point panel, java.util.function.ToDoubleFunction<MotorFeeder> figure) {
        boolean isFullyRated = panel.feeder().map(Feeder::fullyRated).orElse(false);
        Map<Phase, MotorFeeder> lines = new EnumMap<>(Phase.class);
        panel.system().phases().forEach(phase -> lines.put(phase, new MotorFeeder()));
        behindTransformers(layout, panel)
                .forEach((phase, amps) ->
                        lines.get(phase).addOther(amps, ContinuousLoad.necAmps(amps, true, isFullyRated)));
        for (Placement each : layout.nodeLoads().direct(panel.index())) {
            Optional<MotorDuty> motor = MotorDuty.of(layout, each.load());
            each.phases().stream()
                    .distinct()
                    .map(lines::get)
                    .forEach(line -> add(line, each.load(), motor, isFullyRated));
        }
        return lines.values().stream()
                .max(Comparator.comparing(MotorFeeder::hasUnknown).thenComparingDouble(figure))
                .orElseThrow();
    }

    /** What transformers draw from a point; motors behind them count as other loads. */
    private static Map<Phase, Double> behindTransformers(Layout layout, Point point) {
        Map<Phase, Double> amps = new EnumMap<>(Phase.class);
        if (layout.distribution().feedsTransformers(point.index())) {
            PhaseCurrents direct = new PhaseCurrents(point.system());
            layout.nodeLoads()
                    .direct(point.index())
                    .forEach(each -> direct.add(each.phases(), each.load().runningAmps()));
            layout.fullUse()
                    .running(point)
                    .byPhase()
                    .forEach((phase, all) -> amps.put(phase, Math.max(0, all - direct.amps(phase))));
        }
        return amps;
    }

    private static void add(MotorFeeder line, Load load, Optional<MotorDuty> motor, boolean isFullyRated) {
        if (motor.isEmpty()) {
            line.addOther(load.runningAmps(), ContinuousLoad.necAmps(load.runningAmps(), true, isFullyRated));
        } else if (motor.get().fullLoadAmps().isEmpty()) {
            line.addUnknown();
        } else {
            double one = motor.get().lineAmps() / motor.get().count();
            double branch = motor.get().ownBreakerAmps();
            for (int i = 0; i < motor.get().count(); i++) {
                line.addMotor(one, branch);
            }
        }
    }

    /** Ampacity of the cable, where there is a table. */
    private static OptionalDouble conductor(
            Layout layout, Point panel, Cable cable, MotorFeeder feeder, Remarks findings) {
        Duty duty = ConductorCheck.feeder(layout, panel);
        CableRun run = CableRun.of(layout.project(), cable, duty.breakerAmps()).orElseThrow();
        Optional<Carrying> carrying = Sizing.carrying(run, duty);
        if (carrying.isEmpty()) {
            return OptionalDouble.empty();
        }
        double carries = carrying.get().amps();
        double tabulated = carrying.get().terminalAmps().orElse(carries);
        findings.add(new Quantity(
                        panel.id(),
                        "ampacity",
                        carries,
                        "A",
                        Optional.of(carrying.get().text()))
                .atLeast(feeder.correctedConductorAmps(), "NEC 430.24"));
        findings.add(new Quantity(panel.id(), "ampacity that the motors ask for", feeder.conductorAmps(), "A")
                .atMost(tabulated, "NEC 430.24"));
        // What is added for other continuous loads is held against the table alone, the motors' own after correction.
        boolean isTable = feeder.conductorAmps() > tabulated + 1e-9;
        double needed = isTable ? feeder.conductorAmps() : feeder.correctedConductorAmps();
        double has = isTable ? tabulated : carries;
        if (needed > has + 1e-9) {
            boolean hasHoist = layout.nodeLoads().direct(panel.index()).stream()
                    .flatMap(each -> each.load().equipment().flatMap(Equipment::motor).stream())
                    .anyMatch(Motor::hoist);
            findings.add(Remark.inAmps(ID, panel.id(), needed, has)
                    .kind("cable-too-small")
                    .grade( // Two hoists and more may count for less, by factors that no second copy was read of.
                            hasHoist ? Grade.EXCEEDS_RECOMMENDATION : Grade.BREAKS)
                    .clause(hasHoist ? "NEC 430.24; 610.14(E) allows less for several hoists" : "NEC 430.24")
                    .message("the feeder of " + panel.label() + " (" + run.text() + ") carries "
                            + HUNDREDTHS.amps(has, needed)
                            + " ("
                            + (isTable
                                    ? carrying.get().terminals()
                                    : carrying.get().text()) + ")"
                            + ", 125 % of the largest motor, the other motors and the other loads need "
                            + HUNDREDTHS.amps(needed, has))
                    .cure("take a larger size, or move a motor to another panel")
                    .build());
        }
        return OptionalDouble.of(carries);
    }

    /**
     * @param feeder the line that carries most
     * @param largest the line whose loads allow the largest device
     */
    private static void device(
            Point panel, MotorFeeder feeder, MotorFeeder largest, OptionalDouble ampacity, Remarks findings) {
        double rated = Devices.ofFeeder(panel).ratedAmps();
        double allowed = Math.max(largest.standardDeviceAmps(), byConductor(ampacity));
        findings.add(new Quantity(panel.id(), "largest device that the motors allow", allowed, "A")
                .atLeast(rated, "NEC 430.62 and 240.4"));
        findings.add(new Quantity(panel.id(), "rating that motors and other loads ask for", feeder.ratingAmps(), "A")
                .atMost(rated, "NEC 215.3 and 430.63"));
        String device = "the feeder of " + panel.label() + " has a device of " + HUNDREDTHS.amps(rated);
        if (feeder.ratingAmps() > rated + 1e-9) {
            findings.add(Remark.inAmps(ID, panel.id(), feeder.ratingAmps(), rated)
                    .kind("device-too-small")
                    .grade(Grade.BREAKS)
                    .clause("NEC 215.3 and 430.63")
                    .message(device + ", its motors at full load and its other loads need "
                            + HUNDREDTHS.amps(feeder.ratingAmps(), rated))
                    .cure("take a larger device and conductor, or move loads to another panel")
                    .build());
        } else if (rated > allowed + 1e-9) {
            findings.add(Remark.inAmps(ID, panel.id(), rated, allowed)
                    .kind("device-too-large")
                    .grade(ampacity.isPresent() ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION)
                    .clause("NEC 430.62 and 240.4")
                    .message(device
                            + ", the largest motor's breaker by table 430.52, the other motors and the other loads"
                            + " allow "
                            + HUNDREDTHS.amps(allowed)
                            + (ampacity.isPresent()
                                    ? ", its cable no more"
                                    : " (a cable of more ampacity, not stated, would allow more)"))
                    .cure("take a smaller device")
                    .build());
        }
    }

    /** NEC 240.4(B), (C) and 430.62(B). */
    private static double byConductor(OptionalDouble ampacity) {
        if (ampacity.isEmpty()) {
            return 0;
        }
        double carries = ampacity.getAsDouble();
        return carries > NEXT_SIZE_UP_TO_AMPS
                ? carries
                : Math.min(
                        NEXT_SIZE_UP_TO_AMPS,
                        StandardRatings.atLeast(Practice.NEC, carries).orElse(carries));
    }
}
