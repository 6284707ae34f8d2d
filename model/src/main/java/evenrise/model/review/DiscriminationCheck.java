package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.plan.RemarkBuilder;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Electrical;
import evenrise.model.project.Panel;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Whether a fault behind a device opens that one alone, by currents: up to the least current at which the device before it
 * trips at once. What is beyond only makers' tables show.
 */
final class DiscriminationCheck implements ElectricalCheck {
    private static final String ID = "discrimination";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        List<String> unknown = new ArrayList<>();
        Optional<FaultLevels> faults = FaultLevels.of(layout.project());
        for (Panel panel : layout.project().panels()) {
            Point point = layout.distribution().of(panel);
            List<Devices.Rated> branches = layout.in(panel).stream()
                    .map(each -> Devices.ofBranch(each.load()))
                    .toList();
            List<Devices.Rated> before = stated(Devices.before(point));
            if (!branches.isEmpty()) {
                findings.made(ID, panel.id());
            }
            if (!branches.isEmpty()
                    && (before.isEmpty()
                            || branches.stream().anyMatch(each -> each.band().isEmpty()))) {
                unknown.add(panel.id());
            }
            before.forEach(device -> largest(branches.stream())
                    .ifPresent(branch -> review(layout, device, branch, fault(faults, point), findings)));
        }
        for (Point point : layout.distribution().points()) {
            feeding(layout, point)
                    .forEach(device -> largest(behind(layout, point).stream())
                            .ifPresent(each -> review(layout, device, each, fault(faults, point), findings)));
            if (point.transformer().isPresent()) {
                throughTransformer(layout, point, fault(faults, point), findings);
            }
        }
        findings.notChecked(
                ID,
                unknown,
                "instantaneous ranges or curves of every branch breaker and of the device before them: not shown,"
                        + " ratings alone show none");
    }

    /** Devices of a point that feeds others, at its own voltage; of the supply its main. */
    private static List<Devices.Rated> feeding(Layout layout, Point point) {
        return stated(
                point.isSupply() ? List.of(Devices.ofSupply(layout.project().supply())) : Devices.before(point));
    }

    /** Devices of what a point feeds, at its own voltage: of a transformer the one on its primary side. */
    private static List<Devices.Rated> behind(Layout layout, Point point) {
        return layout.distribution().points().stream()
                .filter(each -> each.parent() == point.index())
                .flatMap(each ->
                        stated(each.transformer().isPresent() ? List.of(Devices.ofFeeder(each)) : Devices.before(each))
                                .stream())
                .toList();
    }

    /** The device before a transformer and the first ones behind it, whose currents it sees by {@link #seenAtMost}. */
    private static void throughTransformer(Layout layout, Point point, OptionalDouble fault, Remarks findings) {
        List<Devices.Rated> own = stated(Devices.ofMain(point).stream().toList());
        stated(List.of(Devices.ofFeeder(point)))
                .forEach(primary -> largest((own.isEmpty() ? behind(layout, point) : own).stream())
                        .ifPresent(secondary ->
                                review(layout, primary.seenThrough(seenAtMost(point)), secondary, fault, findings)));
    }

    /**
     * Primary line current over that of a fault on the secondary, at most: of two lines of a delta-wye one primary line
     * carries 2/√3 of it by ratio, and between the legs of split-phase both halves of the winding carry it.
     */
    private static double seenAtMost(Point point) {
        double ratio = point.transformer().orElseThrow().ratio();
        return switch (point.node()
                .flatMap(DistributionNode::transformer)
                .orElseThrow()
                .connection()) {
            case WYE_WYE -> ratio;
            case DELTA_WYE -> 2 / Math.sqrt(3) * ratio;
            case SINGLE -> point.system() == PhaseSystem.SPLIT_PHASE ? 2 * ratio : ratio;
        };
    }

    private static List<Devices.Rated> stated(List<Devices.Rated> devices) {
        return devices.stream().filter(each -> each.band().isPresent()).toList();
    }

    /** The greatest at a point; of the supply at an assumed angle, where none is stated. */
    private static OptionalDouble fault(Optional<FaultLevels> faults, Point point) {
        return amps(faults.filter(each -> each.knows(point))
                .map(each -> point.isSupply()
                        ? each.greatest(point)
                        : Math.max(
                                each.greatest(point),
                                each.greatestAtAnyAngle(point).orElse(0))));
    }

    /** The one that may need the most to trip at once. */
    private static Optional<Devices.Rated> largest(Stream<Devices.Rated> devices) {
        return devices.filter(each -> each.band().isPresent())
                .max(Comparator.comparingDouble(Devices.Rated::tripsAmps));
    }

    private static OptionalDouble amps(Optional<Double> known) {
        return known.map(OptionalDouble::of).orElse(OptionalDouble.empty());
    }

    private static void review(
            Layout layout, Devices.Rated before, Devices.Rated behind, OptionalDouble fault, Remarks findings) {
        double limit = before.holdsAmps();
        findings.add(new Quantity(before.place(), "discrimination shown up to", limit, "A")
                .atLeast(behind.tripsAmps(), clause(layout)));
        if (limit < behind.tripsAmps() - 1e-9) {
            findings.add(remark(layout, before, behind.tripsAmps(), limit)
                    .kind("may-open-both")
                    .grade(Grade.EXCEEDS_RECOMMENDATION)
                    .message("a fault behind " + behind.text() + " may open both: " + before.text())
                    .cure("take a branch that trips sooner, or a device before it that trips later"
                            + FaultCure.room(layout, before.place()))
                    .build());
        } else if (fault.isEmpty() || fault.getAsDouble() > limit) {
            findings.add(remark(layout, before, fault.orElse(behind.tripsAmps()), limit)
                    .kind("shown-up-to")
                    .grade(Grade.NOTE)
                    .message("a fault behind " + behind.label() + " opens that alone up to " + HUNDREDTHS.amps(limit)
                            + ", where "
                            + before.label() + " may trip, too"
                            + (fault.isPresent()
                                    ? "; faults are up to " + HUNDREDTHS.amps(fault.getAsDouble())
                                            + ", and for those it is not shown"
                                    : "; beyond, it is not shown"))
                    .cure("look it up in the maker's tables of discrimination")
                    .build());
        }
    }

    private static RemarkBuilder remark(Layout layout, Devices.Rated before, double figure, double limit) {
        return Remark.inAmps(ID, before.place(), figure, limit).clause(clause(layout));
    }

    private static String clause(Layout layout) {
        boolean isIec = layout.project().electrical().flatMap(Electrical::practice).stream()
                .anyMatch(Practice.IEC::equals);
        return isIec
                ? "IEC 60364-5-53 clause 536 (clause from memory)"
                : "NEC 240.12 and 700.32, for information (from memory)";
    }
}
