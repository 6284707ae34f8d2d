package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;
import static evenrise.model.contract.Figures.TENTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.DipCriterion;
import evenrise.model.project.Electrical;
import evenrise.model.project.RideThrough;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.Placement;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * A motor that starts in service, across the line, while everything else is in full use: its branch breaker, the peak at
 * each node, and how far the voltage dips there.
 */
final class MotorServiceCheck implements ElectricalCheck {
    private static final String ID = "motor-in-service";
    private static final String STATED = "inrush_limit_a, as the project states";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        List<Placement> motors = layout.placements().stream()
                .filter(Placement::fits)
                .filter(each -> MotorStarting.lockedRotorAmps(layout, each).isPresent())
                .toList();
        if (motors.isEmpty()) {
            return;
        }
        motors.forEach(each -> branch(layout, each, findings));
        Fed.all(layout).forEach(fed -> peak(layout, fed, findings));
        List<Point> known = Feeders.behindKnownSources(layout);
        if (known.isEmpty()) {
            findings.notCheckedAnywhere(
                    ID,
                    NodeFigures.SUPPLY,
                    motors.stream().map(Placement::id).toList(),
                    SourceModel.of(layout.project()).map(SourceModel::needs).orElse("electrical.source"));
            return;
        }
        List<String> told = known.stream().map(Point::id).toList();
        MotorDips dips = new MotorDips(layout, Feeders.behindSources(layout), known);
        motors.stream()
                .filter(each -> told.contains(each.assignment().panel()))
                .forEach(each -> dips(layout, each, dips, findings));
        layout.placements().stream()
                .filter(each -> each.fits() && each.load().rideThrough().isPresent())
                .filter(each -> told.contains(each.assignment().panel()))
                .filter(each -> motors.stream().anyMatch(motor -> !motor.id().equals(each.id())))
                .forEach(each -> findings.made(ID, each.id()));
        findings.notChecked(
                ID,
                layout.distribution().points().stream()
                        .map(Point::id)
                        .filter(id -> !told.contains(id))
                        .toList(),
                "electrical.source, or source.behind of the distribution point that feeds it");
        findings.notChecked(
                ID,
                Feeders.bare(layout),
                "feeder.cable; the dip is taken as "
                        + (Feeders.isStar(layout) ? "the supply's" : "that of what feeds it, as far as feeders go"));
        findings.notChecked(
                ID, Feeders.bareTransformers(layout), "transformer.rated_kva and impedance_pct; it is taken for ideal");
    }

    private static String label(Layout layout, String node) {
        return layout.distribution().point(node).orElseThrow().label();
    }

    private static void branch(Layout layout, Placement motor, Remarks findings) {
        Devices.Rated breaker = Devices.ofBranch(motor.load());
        double lockedRotor = MotorStarting.lockedRotorAmps(layout, motor).orElseThrow();
        if (breaker.band().isPresent()) {
            findings.made(ID, motor.id());
        }
        if (breaker.band().isPresent()) {
            findings.add(new Quantity(motor.id(), "locked-rotor current at its breaker", lockedRotor, "A")
                    .atMost(breaker.holdsAmps(), "NEC 430.52(B)"));
        }
        if (breaker.band().isEmpty() || lockedRotor <= breaker.holdsAmps()) {
            return;
        }
        boolean surely = lockedRotor > breaker.tripsAmps();
        findings.add(Remark.builder()
                .check(ID)
                .kind("trips-at-start")
                .grade(surely ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION)
                .place(motor.id())
                .figure(lockedRotor)
                .limit(surely ? breaker.tripsAmps() : breaker.holdsAmps())
                .unit("A")
                .clause("NEC 430.52(B)")
                .message("motor " + Phrase.quoted(motor.id()) + " draws " + HUNDREDTHS.amps(lockedRotor)
                        + " at standstill; " + breaker.text() + ": it " + (surely ? "trips" : "may trip")
                        + " when the motor starts")
                .cure("take a range that trips later, or a soft starter")
                .build());
    }

    private static void peak(Layout layout, Fed fed, Remarks findings) {
        Optional<MotorStarting> alone = MotorStarting.alone(layout, fed.seen());
        Optional<MotorStarting> together = MotorStarting.together(layout, fed.seen());
        alone.ifPresent(start -> {
            findings.add(new Quantity(fed.node(), "peak when a motor starts in service", start.peakAmps(), "A")
                    .atMost(fed.limits().inrushLimitAmps(), STATED));
            limit(
                    fed,
                    start,
                    Grade.BREAKS,
                    "when motor " + Phrase.quoted(start.motor()) + " starts while all else is in full use",
                    findings);
        });
        together.ifPresent(start -> {
            findings.add(new Quantity(fed.node(), "peak when all motors start at once", start.peakAmps(), "A")
                    .atMost(fed.limits().inrushLimitAmps(), STATED));
            limit(
                    fed,
                    start,
                    Grade.EXCEEDS_RECOMMENDATION,
                    "if all its motors start at once while all else is in full use",
                    findings);
        });
    }

    private static void limit(Fed fed, MotorStarting start, Grade grade, String when, Remarks findings) {
        OptionalDouble limit = fed.limits().inrushLimitAmps();
        limit.ifPresent(any -> findings.made(ID, fed.node()));
        if (limit.isPresent() && start.peakAmps() > limit.getAsDouble()) {
            findings.add(Remark.builder()
                    .check(ID)
                    .kind("over-inrush-limit")
                    .grade(grade)
                    .place(fed.node())
                    .figure(start.peakAmps())
                    .limit(limit)
                    .unit("A")
                    .message(fed.label() + " peaks at " + HUNDREDTHS.amps(start.peakAmps(), limit.getAsDouble())
                            + " on phase "
                            + start.phase() + " " + when + ", inrush_limit_a allows "
                            + HUNDREDTHS.amps(limit.getAsDouble(), start.peakAmps()))
                    .cure("start it softly, or keep motors from starting together")
                    .build());
        }
    }

    private static void dips(Layout layout, Placement motor, MotorDips dips, Remarks findings) {
        MotorDips.Start start = dips.of(motor);
        Optional<DipVerdict.Change> allowed = DipVerdict.Change.strictest(layout.project());
        start.nodes().forEach(node -> {
            Quantity dip = new Quantity(
                    node,
                    "voltage dip when motor '" + motor.id() + "' starts in service",
                    start.mostPercent(node),
                    "%");
            findings.add(allowed.map(it -> dip.atMost(it.usualPercent(), it.clause()))
                    .orElse(dip));
        });
        List<Placement> others = layout.placements().stream()
                .filter(each -> each.fits() && !each.id().equals(motor.id()) && start.tells(each))
                .filter(each -> each.load().rideThrough().isPresent())
                .toList();
        others.stream()
                .min(Comparator.comparingDouble(each -> start.remainsAtLeastPercent(each) - needsPercent(each)))
                .ifPresent(each -> findings.add(new Quantity(
                                each.id(),
                                "voltage that remains when motor '" + motor.id() + "' starts in service",
                                start.remainsAtLeastPercent(each),
                                "%")
                        .atLeast(needsPercent(each), "ride_through, as the project states")));
        others.stream()
                .filter(each -> start.remainsAtLeastPercent(each) < needsPercent(each))
                .min(Comparator.comparingDouble(each -> start.remainsAtMostPercent(each) - needsPercent(each)))
                .ifPresent(victim -> findings.add(brownOut(motor, victim, start)));
        layout.project()
                .electrical()
                .map(Electrical::dipCriteria)
                .orElse(List.of())
                .forEach(criterion -> change(layout, criterion, motor, start, findings));
    }

    private static double needsPercent(Placement load) {
        return load.load().rideThrough().map(RideThrough::remainingPercent).orElse(0.0);
    }

    /** The load that lacks most, whether or not others do, too. */
    private static Remark brownOut(Placement motor, Placement victim, MotorDips.Start start) {
        double needs = needsPercent(victim);
        boolean surely = start.remainsAtMostPercent(victim) < needs;
        return Remark.builder()
                .check(ID)
                .kind("starves-load")
                .grade(surely ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION)
                .place(victim.id())
                .figure(start.remainsAtLeastPercent(victim))
                .limit(needs)
                .unit("%")
                .message("when motor " + Phrase.quoted(motor.id()) + " starts while all else is in full use, "
                        + TENTHS.percent(start.remainsAtLeastPercent(victim), needs) + " of the voltage remain at load "
                        + Phrase.quoted(victim.id()) + " until the motor is up to speed, it needs "
                        + TENTHS.percent(needs, start.remainsAtLeastPercent(victim)) + unsure(surely))
                .cure("start the motor softly, or feed the two apart")
                .build();
    }

    private static String unsure(boolean surely) {
        return surely ? "" : " (at the worst power factor; equipment.motor.locked_rotor_power_factor is not stated)";
    }

    private static void change(
            Layout layout, DipCriterion criterion, Placement motor, MotorDips.Start start, Remarks findings) {
        Optional<DipVerdict.Change> limit = DipVerdict.Change.of(criterion);
        String node = start.nodes().stream()
                .max(Comparator.comparingDouble(start::mostPercent))
                .orElseThrow();
        double most = start.mostPercent(node);
        if (limit.isEmpty() || most <= limit.get().usualPercent()) {
            return;
        }
        boolean isTooMuch = most > limit.get().mostPercent();
        boolean surely = start.leastPercent(node) > limit.get().mostPercent();
        double allowed = isTooMuch ? limit.get().mostPercent() : limit.get().usualPercent();
        findings.add(Remark.builder()
                .check(ID)
                .kind("dips-too-far")
                .grade(surely ? Grade.BREAKS : Grade.EXCEEDS_RECOMMENDATION)
                .place(node)
                .figure(most)
                .limit(allowed)
                .unit("%")
                .clause(limit.get().clause())
                .message("when motor " + Phrase.quoted(motor.id()) + " starts in service, " + label(layout, node)
                        + " dips by " + TENTHS.percent(most) + ", allowed are " + TENTHS.percent(allowed)
                        + unsure(!isTooMuch || surely))
                .cure("start it softly, or take a stiffer source")
                .build());
    }
}
