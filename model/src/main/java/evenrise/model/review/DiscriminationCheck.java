package evenrise.model.review;

import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Electrical;
import evenrise.model.project.Panel;
import evenrise.model.project.Practice;
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
    public void review(Layout layout, Findings findings) {
        List<String> unknown = new ArrayList<>();
        List<Devices.Rated> feeders = new ArrayList<>();
        Optional<FaultLevels> faults = FaultLevels.of(layout.project());
        for (Panel panel : layout.project().panels()) {
            OptionalDouble fault = amps(faults.map(each -> Math.max(
                    each.greatest(panel), each.greatestAtAnyAngle(panel).orElse(0))));
            List<Devices.Rated> branches = layout.in(panel).stream()
                    .map(each -> Devices.ofBranch(each.load()))
                    .toList();
            List<Devices.Rated> before = Devices.ofPanel(panel).stream()
                    .filter(each -> each.band().isPresent())
                    .toList();
            feeders.addAll(before);
            if (!branches.isEmpty()) {
                findings.made(ID, panel.id());
            }
            if (!branches.isEmpty()
                    && (before.isEmpty()
                            || branches.stream().anyMatch(each -> each.band().isEmpty()))) {
                unknown.add(panel.id());
            }
            before.forEach(device ->
                    largest(branches.stream()).ifPresent(branch -> review(layout, device, branch, fault, findings)));
        }
        Devices.Rated main = Devices.ofSupply(layout.project().supply());
        if (main.band().isPresent()) {
            largest(feeders.stream())
                    .ifPresent(each ->
                            review(layout, main, each, amps(faults.map(FaultLevels::greatestAtSupply)), findings));
        }
        findings.notChecked(
                ID,
                unknown,
                "instantaneous ranges or curves of every branch breaker and of the device before them: not shown,"
                        + " ratings alone show none");
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
            Layout layout, Devices.Rated before, Devices.Rated behind, OptionalDouble fault, Findings findings) {
        double limit = before.holdsAmps();
        findings.add(new Quantity(before.place(), "discrimination shown up to", limit, "A"));
        if (limit < behind.tripsAmps() - 1e-9) {
            findings.add(remark(
                    layout,
                    Grade.EXCEEDS_RECOMMENDATION,
                    before,
                    behind.tripsAmps(),
                    limit,
                    "a fault behind " + behind.text() + " may open both: " + before.text()
                            + ". Maybe take a branch that trips sooner, or a device before it that trips later"
                            + FaultCure.room(layout, before.place()) + "."));
        } else if (fault.isEmpty() || fault.getAsDouble() > limit) {
            findings.add(remark(
                    layout,
                    Grade.NOTE,
                    before,
                    fault.orElse(behind.tripsAmps()),
                    limit,
                    "a fault behind " + behind.label() + " opens that alone up to " + Say.amps(limit) + ", where "
                            + before.label() + " may trip, too"
                            + (fault.isPresent()
                                    ? "; faults are up to " + Say.amps(fault.getAsDouble())
                                            + ", and for those it is not shown"
                                    : "; beyond, it is not shown")
                            + ". Maybe look it up in the maker's tables of discrimination."));
        }
    }

    private static Remark remark(
            Layout layout, Grade grade, Devices.Rated before, double figure, double limit, String message) {
        boolean isIec = layout.project().electrical().flatMap(Electrical::practice).stream()
                .anyMatch(Practice.IEC::equals);
        return Remark.builder()
                .check(ID)
                .grade(grade)
                .place(before.place())
                .figure(figure)
                .limit(limit)
                .unit("A")
                .clause(
                        isIec
                                ? "IEC 60364-5-53 clause 536 (clause from memory)"
                                : "NEC 240.12 and 700.32, for information (from memory)")
                .message(message)
                .build();
    }
}
