package evenrise.model.review;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.source.StepDip;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.DipCriterion;
import evenrise.model.project.Electrical;
import evenrise.model.project.Panel;
import evenrise.model.project.PlantPart;
import evenrise.model.project.SourceKind;
import evenrise.model.review.DipVerdict.Way;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/**
 * How far the voltage dips and swells at each step of the sequence behind the real source, and whether that keeps the
 * criteria that the project names; {@link BrownOuts} tells what it does to what is on already, {@link SteadyVoltage} what full use
 * does.
 */
final class VoltageDipCheck implements ElectricalCheck {
    static final String ID = "voltage-dip";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public Set<PlantPart> beyond() {
        return Set.of(PlantPart.NODES, PlantPart.FED_FROM, PlantPart.SYSTEMS);
    }

    @Override
    public void review(Layout layout, Findings findings) {
        Optional<SourceModel> model = SourceModel.of(layout.project());
        Optional<Impedance> source = model.flatMap(SourceModel::forDips);
        if (source.isEmpty()) {
            String needs = model.map(SourceModel::needs).orElse("electrical.source");
            List<String> places = new ArrayList<>(nodes(layout));
            layout.project().loads().forEach(load -> places.add(load.id()));
            findings.notCheckedAnywhere(ID, NodeFigures.SUPPLY, places, needs);
            return;
        }
        Map<String, Impedance> feeders = Feeders.impedances(layout);
        findings.notChecked(
                ID,
                layout.project().panels().stream()
                        .map(Panel::id)
                        .filter(panel -> !feeders.containsKey(panel))
                        .toList(),
                "feeder.cable; the dip is taken as the supply's");
        findings.notChecked(
                ID, layout.peakBasis().withoutInrush(), "inrush_peak_a; these dip for their idle current alone");
        StepDips dips = StepDips.of(layout, Feeders.plant(layout, source.get()));
        nodes(layout).forEach(node -> quantities(model.get(), node, dips.steps(node), findings));
        criteria(layout, dips, findings);
        SteadyVoltage.review(layout, source.get(), findings);
        BrownOuts.review(layout, dips, findings);
    }

    private static List<String> nodes(Layout layout) {
        List<String> nodes = new ArrayList<>(List.of(NodeFigures.SUPPLY));
        layout.project().panels().forEach(panel -> nodes.add(panel.id()));
        return nodes;
    }

    private static void quantities(SourceModel model, String node, List<DipStep> steps, Findings findings) {
        if (steps.isEmpty()) {
            return;
        }
        Dip deepest = StepDips.greatest(
                        steps, DipStep::bound, DipStep::mostLowPercent, Dip::lowPercent, Double.NEGATIVE_INFINITY)
                .orElseThrow();
        figure(node, "deepest dip", deepest.fallPercent(), findings);
        double byPhasors = deepest(steps);
        figure(node, "deepest dip by phasors", byPhasors, findings);
        figure(node, "deepest dip at stated power factors", deepestAsStated(steps), findings);
        figure(node, "voltage low before it", deepest.step().steadyLowPercent(), findings);
        figure(node, "highest swell", highest(steps, DipStep::bound), findings);
        figure(node, "highest swell by phasors", highest(steps, DipStep::phasors), findings);
        steps.stream().map(DipStep::at).distinct().forEach(at -> {
            List<DipStep> here =
                    steps.stream().filter(step -> step.at().equals(at)).toList();
            figure(node, "dip by phasors, " + at.text(), deepest(here), findings);
            figure(node, "swell by phasors, " + at.text(), highest(here, DipStep::phasors), findings);
        });
        if (model.source().kind() == SourceKind.GENERATOR) {
            figure(node, "deepest dip, linear form", deepest.fallPercent(), findings);
            figure(node, "deepest dip, divider form", StepDip.dividedPercent(deepest.fallPercent()), findings);
        }
    }

    private static double deepest(List<DipStep> steps) {
        return StepDips.greatest(steps, DipStep::phasors, DipStep::mostFallPercent, Dip::fallPercent, 0)
                .map(Dip::fallPercent)
                .orElse(0.0);
    }

    private static double deepestAsStated(List<DipStep> steps) {
        return steps.stream().mapToDouble(DipStep::statedDipPercent).max().orElse(0);
    }

    private static double highest(List<DipStep> steps, Function<DipStep, Dip> reading) {
        return StepDips.greatest(steps, reading, DipStep::mostHighPercent, Dip::highPercent, 0)
                .map(Dip::highPercent)
                .orElse(0.0);
    }

    private static void figure(String node, String name, double percent, Findings findings) {
        findings.add(new Quantity(node, name, percent, "%"));
    }

    /** Of each node and criterion the gravest step by phasors; where they keep it, the gravest that the bound does not. */
    private static void criteria(Layout layout, StepDips dips, Findings findings) {
        Electrical electrical = layout.project().electrical().orElseThrow();
        if (electrical.dipCriteria().isEmpty()) {
            findings.notCheckedAnywhere(ID, Findings.PLANT, nodes(layout), "electrical.dip_criteria");
        }
        for (DipCriterion criterion : electrical.dipCriteria()) {
            for (String node : nodes(layout)) {
                findings.made(ID, node);
                for (Way way : Way.values()) {
                    gravest(criterion, way, dips.steps(node), DipStep::phasors)
                            .or(() -> gravest(criterion, way, dips.steps(node), DipStep::bound))
                            .ifPresent(findings::add);
                }
            }
        }
        if (electrical.dipCriteria().stream().noneMatch(VoltageDipCheck::judgesSwells)) {
            nodes(layout).forEach(node -> swell(dips.steps(node)).ifPresent(findings::add));
        }
    }

    private static Optional<Remark> gravest(
            DipCriterion criterion, Way way, List<DipStep> steps, Function<DipStep, Dip> reading) {
        return steps.stream()
                .filter(step -> DipVerdict.mayBreak(criterion, way, step))
                .map(reading)
                .filter(dip -> DipVerdict.mayBreak(criterion, way, dip))
                .sorted(Comparator.comparingDouble(DipVerdict.gravity(criterion, way))
                        .reversed())
                .flatMap(dip -> DipVerdict.of(criterion, way, dip).stream().map(verdict -> remark(dip, way, verdict)))
                .findFirst();
    }

    private static Remark remark(Dip dip, Way way, DipVerdict verdict) {
        DipStep step = dip.step();
        boolean isBoundAlone = dip == step.bound();
        return Remark.builder()
                .check(ID)
                .kind("over-criterion")
                .grade(isBoundAlone ? Grade.EXCEEDS_RECOMMENDATION : verdict.grade())
                .place(step.node())
                .figure(verdict.percent())
                .limit(verdict.limitPercent())
                .unit("%")
                .clause(verdict.clause())
                .message(DipText.of(dip, way) + ", " + verdict.text() + (isBoundAlone ? "; by phasors it is kept" : ""))
                .cure("give load " + Say.quoted(step.load()) + " less inrush, a moment of its own, "
                        + (way == Way.SWELL ? "a larger neutral, " : "") + "or a stiffer source")
                .build();
    }

    private static boolean judgesSwells(DipCriterion criterion) {
        return criterion == DipCriterion.ITI || criterion == DipCriterion.EN_50160;
    }

    /** Where no criterion that is named speaks of swells. */
    private static Optional<Remark> swell(List<DipStep> steps) {
        return swell(steps, DipStep::phasors)
                .or(() -> swell(steps, DipStep::bound))
                .map(dip -> Remark.builder()
                        .check(ID)
                        .kind("swells")
                        .grade(Grade.EXCEEDS_RECOMMENDATION)
                        .place(dip.step().node())
                        .figure(dip.highPercent())
                        .limit(DipVerdict.SWELL_PERCENT)
                        .unit("%")
                        .clause("EN 50160 clause 4 (from memory)")
                        .message(DipText.of(dip, Way.SWELL) + ", 10 % above nominal is the most that networks offer")
                        .cure("feed load " + Say.quoted(dip.step().load())
                                + " on a circuit of its own, or take a larger neutral")
                        .build());
    }

    private static Optional<Dip> swell(List<DipStep> steps, Function<DipStep, Dip> reading) {
        return StepDips.greatest(steps, reading, DipStep::mostHighPercent, Dip::highPercent, DipVerdict.SWELL_PERCENT);
    }
}
