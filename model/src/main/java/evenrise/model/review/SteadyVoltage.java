package evenrise.model.review;

import static evenrise.model.contract.Figures.TENTHS;

import evenrise.model.contract.Phrase;
import evenrise.model.electrical.source.Plant;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.DipCriterion;
import evenrise.model.project.Panel;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** The voltage that every load finds at full use, behind source, feeder and its branch, held against ANSI C84.1 where that is named. */
final class SteadyVoltage {
    private static final String CLAUSE = "ANSI C84.1 range A, utilization";

    private SteadyVoltage() {}

    /** @param told panels whose sources are known */
    static void review(Layout layout, Plant plant, List<Panel> told, Remarks findings) {
        FullUseVoltages use = new FullUseVoltages(layout, plant);
        boolean isHeld =
                layout.project().electrical().orElseThrow().dipCriteria().contains(DipCriterion.ANSI_C84_1);
        OptionalDouble most = isHeld ? OptionalDouble.of(DipVerdict.RANGE_A_PERCENT) : OptionalDouble.empty();
        for (Panel panel : told) {
            layout.in(panel)
                    .forEach(each ->
                            findings.add(new Quantity(each.id(), "voltage low at full use", use.lowPercent(each), "%")
                                    .atMost(most, CLAUSE)));
        }
        if (!isHeld) {
            return;
        }
        for (Panel panel : told) {
            low(layout, panel, use).ifPresent(findings::add);
            high(panel, use).ifPresent(findings::add);
        }
        findings.notChecked(
                VoltageDipCheck.ID,
                layout.placements().stream()
                        .filter(each -> each.fits()
                                && FullUseVoltages.branch(layout, each.load()).isEmpty())
                        .map(Placement::id)
                        .toList(),
                "circuit.cable; the steady voltage is taken as the panel's");
    }

    private static Optional<Remark> low(Layout layout, Panel panel, FullUseVoltages use) {
        List<Placement> below = layout.in(panel).stream()
                .filter(each -> use.lowPercent(each) > DipVerdict.RANGE_A_PERCENT)
                .sorted(Comparator.<Placement>comparingDouble(use::lowPercent).reversed())
                .toList();
        if (below.isEmpty()) {
            return Optional.empty();
        }
        Placement worst = below.get(0);
        double percent = use.lowPercent(worst);
        boolean hasBranch = FullUseVoltages.branch(layout, worst.load()).isPresent();
        String others = below.size() > 1 ? " (" + (below.size() - 1) + " more loads of its panel are too low)" : "";
        return Optional.of(remark(
                "low-at-full-use",
                worst.id(),
                percent,
                DipVerdict.RANGE_A_PERCENT,
                "at full use the voltage at load " + Phrase.quoted(worst.id()) + " in panel "
                        + Phrase.quoted(panel.id())
                        + " is low by " + TENTHS.percent(percent, DipVerdict.RANGE_A_PERCENT) + " behind source, feeder"
                        + (hasBranch ? " and branch" : ", its branch not counted") + others + ", allowed are "
                        + TENTHS.percent(DipVerdict.RANGE_A_PERCENT, percent),
                "take a larger feeder or branch, or a stiffer source"));
    }

    private static Optional<Remark> high(Panel panel, FullUseVoltages use) {
        double percent = use.highPercent(panel).orElse(0);
        return percent <= DipVerdict.RANGE_A_ABOVE_PERCENT
                ? Optional.empty()
                : Optional.of(remark(
                        "high-at-full-use",
                        panel.id(),
                        percent,
                        DipVerdict.RANGE_A_ABOVE_PERCENT,
                        "at full use a voltage of panel " + Phrase.quoted(panel.id()) + " is "
                                + TENTHS.percent(percent, DipVerdict.RANGE_A_ABOVE_PERCENT)
                                + " above nominal, lifted through the feeder's neutral, allowed are "
                                + TENTHS.percent(DipVerdict.RANGE_A_ABOVE_PERCENT, percent),
                        "balance its phases or take a larger neutral"));
    }

    private static Remark remark(String kind, String place, double percent, double limit, String message, String cure) {
        return Remark.builder()
                .check(VoltageDipCheck.ID)
                .kind(kind)
                .grade(Grade.BREAKS)
                .place(place)
                .figure(percent)
                .limit(limit)
                .unit("%")
                .clause(CLAUSE)
                .message(message)
                .cure(cure)
                .build();
    }
}
