package evenrise.model.review;

import static evenrise.model.contract.Figures.TENTHS;
import static evenrise.model.contract.Figures.WHOLE;

import evenrise.model.contract.Phrase;
import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LinePower;
import evenrise.model.electrical.conductor.VoltageDrop;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.RideThrough;
import evenrise.model.review.DipVerdict.Way;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Whether every load that is on rides through every later step, at its own place: between its own lines or line and neutral,
 * behind its own branch, with what that loses to its idle current. Of each step the first load that does not is named.
 */
final class BrownOuts {
    /** One load that a step is too much for. */
    private record Victim(Placement load, Dip dip, boolean isSwell, double percent, double limitPercent) {
        Way way() {
            return isSwell ? Way.SWELL : Way.DIP;
        }

        boolean isByBoundAlone() {
            return dip.isByBound();
        }
    }

    private final Layout layout;
    private final StepDips dips;
    private final Set<Panel> told;

    private BrownOuts(Layout layout, StepDips dips, Set<Panel> told) {
        this.layout = layout;
        this.dips = dips;
        this.told = told;
    }

    /** @param told panels whose sources are known */
    static void review(Layout layout, StepDips dips, List<Panel> told, Remarks findings) {
        new BrownOuts(layout, dips, Set.copyOf(told)).review(findings);
    }

    private void review(Remarks findings) {
        List<String> unknown = new ArrayList<>();
        Map<String, List<Victim>> byStep = new LinkedHashMap<>();
        for (Placement each : layout.placements()) {
            if (!each.fits() || !told.contains(each.panel().orElseThrow())) {
                continue;
            }
            if (each.load().rideThrough().isPresent()) {
                findings.made(VoltageDipCheck.ID, each.id());
                victim(each, each.load().rideThrough().get())
                        .ifPresent(found -> byStep.computeIfAbsent(key(found), any -> new ArrayList<>())
                                .add(found));
            } else {
                unknown.add(each.id());
            }
        }
        byStep.values().forEach(victims -> findings.add(remark(victims.get(0))));
        byStep.values().stream().filter(victims -> victims.size() > 1).forEach(victims -> findings.add(more(victims)));
        findings.notChecked(VoltageDipCheck.ID, unknown, "ride_through");
    }

    private static String key(Victim victim) {
        DipStep step = victim.dip().step();
        return step.node()
                + '/'
                + step.at()
                + '/'
                + step.atSeconds()
                + '/'
                + victim.isSwell()
                + '/'
                + victim.isByBoundAlone();
    }

    /** By phasors first; by the bound where they keep it. */
    private Optional<Victim> victim(Placement each, RideThrough needs) {
        List<DipStep> later = dips.after(each);
        return Stream.of(DipReading.PHASORS, DipReading.BOUND)
                .flatMap(reading -> Stream.concat(
                        sag(each, needs, later, reading).stream(), swell(each, needs, later, reading).stream()))
                .findFirst();
    }

    private Optional<Victim> sag(Placement each, RideThrough needs, List<DipStep> later, DipReading reading) {
        double branch = branchPercent(each.load());
        double most = 100 - needs.remainingPercent();
        List<DipStep> low = later.stream()
                .filter(step -> step.mostLowPercent(reading) + branch > most
                        && 1000 * step.mostSecondsLow(reading, most - branch) > needs.withoutMillis())
                .toList();
        return Gravest.of(low, reading, step -> step.mostLowPercent(reading), Dip::lowPercent)
                .takeWhile(dip -> dip.lowPercent() + branch > most)
                .filter(dip -> dip.low().isAboveFor(needs.withoutMillis() / 1000, most - branch))
                .findFirst()
                .map(dip -> new Victim(
                        each, dip, false, Math.max(0, 100 - dip.lowPercent() - branch), needs.remainingPercent()));
    }

    private static Optional<Victim> swell(Placement each, RideThrough needs, List<DipStep> later, DipReading reading) {
        if (needs.mostPercent().isEmpty()) {
            return Optional.empty();
        }
        double most = needs.mostPercent().getAsDouble();
        return StepDips.greatest(later, reading, DipStep::mostHighPercent, Dip::highPercent, most - 100)
                .map(dip -> new Victim(each, dip, true, 100 + dip.highPercent(), most));
    }

    /** What its idle current loses on its own cable; nothing where that is unknown. */
    private double branchPercent(Load load) {
        Optional<CableRun> branch = FullUseVoltages.branch(layout, load);
        if (branch.isEmpty()) {
            return 0;
        }
        double perAmp = Demand.voltAmpsPerAmp(layout, load);
        double volts = load.poles() == 3 ? perAmp / Math.sqrt(3) : perAmp;
        double amps = load.idleAmps() / LinePower.rmsOverFundamental(load.harmonicRatio());
        Impedance conductor = branch.get().impedance();
        return 100
                * VoltageDrop.exactVolts(volts, amps, Lag.of(load), conductor, VoltageDrop.ways(load.poles() == 3))
                / volts;
    }

    private static Remark remark(Victim victim) {
        DipStep step = victim.dip().step();
        RideThrough needs = victim.load().load().rideThrough().orElseThrow();
        String wants = victim.isSwell()
                ? "stands at most " + TENTHS.percent(victim.limitPercent())
                : "needs " + TENTHS.percent(needs.remainingPercent()) + " and does without for "
                        + WHOLE.in("ms", needs.withoutMillis());
        return builder(victim)
                .place(victim.load().id())
                .figure(victim.percent())
                .limit(victim.limitPercent())
                .unit("%")
                .message(DipText.of(victim.dip(), victim.way()) + ": load "
                        + Phrase.quoted(victim.load().id()) + ", on already, " + wants
                        + (victim.isByBoundAlone() ? "; by phasors it rides through" : ""))
                .cure("bring load " + Phrase.quoted(step.load())
                        + " on earlier, limit its inrush, or feed the two apart")
                .build();
    }

    private static Remark more(List<Victim> victims) {
        Victim first = victims.get(0);
        int count = victims.size() - 1;
        return builder(first)
                .kind("further-brown-outs")
                .place(Remarks.PLANT)
                .subjects(Subjects.loads(victims.stream()
                        .skip(1)
                        .map(each -> each.load().load().id())
                        .toList()))
                .figure(count)
                .message(DipText.of(first.dip(), first.way()) + ": " + count
                        + " more loads that are on do not ride through"
                        + (first.isByBoundAlone() ? " by the bound; by phasors they do." : "."))
                .build();
    }

    private static evenrise.model.plan.RemarkBuilder builder(Victim victim) {
        return Remark.builder()
                .check(VoltageDipCheck.ID)
                .kind("browns-out")
                .grade(victim.isByBoundAlone() ? Grade.EXCEEDS_RECOMMENDATION : Grade.BREAKS);
    }
}
