package evenrise.model.review;

import evenrise.model.contract.Phrase;
import evenrise.model.electrical.source.Plant;
import evenrise.model.electrical.source.StepDip;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.DipCriterion;
import evenrise.model.project.Electrical;
import evenrise.model.project.Overlap;
import evenrise.model.project.Panel;
import evenrise.model.project.SourceKind;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.review.DipVerdict.Way;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * How far the voltage dips and swells at each step of the sequence behind the real source, and whether that keeps the
 * criteria that the project names; {@link BrownOuts} tells what it does to what is on already, {@link SteadyVoltage} what full use
 * does.
 */
final class VoltageDipCheck implements ElectricalCheck {
    static final String ID = "voltage-dip";
    private static final String SWELL = "EN 50160 clause 4 (from memory)";

    /** Loads times points of a tree whose every step is looked at: a minute or two on one processor, a gigabyte. */
    private static final int LARGEST_TREE = 500_000;

    private final int largestTree;

    VoltageDipCheck() {
        this(LARGEST_TREE);
    }

    /** @param largestTree loads times points of a tree that are not too many */
    VoltageDipCheck(int largestTree) {
        this.largestTree = largestTree;
    }

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Remarks findings) {
        Optional<SourceModel> model = SourceModel.of(layout.project());
        List<Point> known = Feeders.behindKnownSources(layout);
        if (known.isEmpty()) {
            String needs = model.map(SourceModel::needs).orElse("electrical.source");
            List<String> places = new ArrayList<>(nodes(layout));
            layout.project().loads().forEach(load -> places.add(load.id()));
            findings.notCheckedAnywhere(ID, NodeFigures.SUPPLY, places, needs);
            return;
        }
        boolean isStar = Feeders.isStar(layout);
        findings.notChecked(
                ID,
                Feeders.bare(layout),
                "feeder.cable; the dip is taken as "
                        + (isStar ? "the supply's" : "that of what feeds it, as far as feeders go"));
        findings.notChecked(
                ID, Feeders.bareTransformers(layout), "transformer.rated_kva and impedance_pct; it is taken for ideal");
        findings.notChecked(
                ID,
                layout.distribution().points().stream()
                        .filter(point -> !known.contains(point))
                        .map(Point::id)
                        .toList(),
                "electrical.source, or source.behind of the distribution point that feeds it");
        if (layout.project().overlap() == Overlap.ANY && layout.project().hasClocks()) {
            findings.notChecked(
                    ID,
                    layout.project().systems().stream().map(SwitchedSystem::id).toList(),
                    "dips when several systems start at once; each was taken to start while the others are in full"
                            + " use");
        }
        findings.notChecked(
                ID, layout.peakBasis().withoutInrush(), "inrush_peak_a; these dip for their idle current alone");
        // What is behind unknown sources is not told.
        Plant plant = Feeders.behindSources(layout);
        if (!isStar && known.size() * layout.project().loads().size() > largestTree) {
            tooLarge(layout, known, plant, findings);
            return;
        }
        StepDips dips = StepDips.of(layout, plant);
        List<Panel> panels =
                known.stream().flatMap(point -> point.panel().stream()).toList();
        List<String> told = known.stream().map(Point::id).toList();
        known.forEach(point -> quantities(
                SourceModel.of(layout.project(), layout.distribution().top(point))
                        .orElseThrow(),
                point.id(),
                dips.steps(point.id()),
                new Held(
                        DipVerdict.Change.strictest(layout.project()),
                        layout.project().electrical().orElseThrow().dipCriteria()),
                findings));
        criteria(layout, told, dips, findings);
        SteadyVoltage.review(layout, plant, panels, findings);
        BrownOuts.review(layout, dips, panels, findings);
    }

    /** Steady voltages alone: every step at every point of a larger tree takes too long. */
    private static void tooLarge(Layout layout, List<Point> known, Plant plant, Remarks findings) {
        List<String> told = known.stream().map(Point::id).toList();
        findings.notChecked(
                ID,
                told,
                "dips and swells of every step: with "
                        + layout.project().loads().size() + " loads and " + known.size()
                        + " points of a tree they take too long, and are not worked out");
        List<Panel> panels =
                known.stream().flatMap(point -> point.panel().stream()).toList();
        findings.notChecked(
                ID,
                panels.stream()
                        .flatMap(panel -> layout.in(panel).stream())
                        .map(Placement::id)
                        .toList(),
                "whether they ride through the dips and swells of so large a tree");
        SteadyVoltage.review(layout, plant, panels, findings);
    }

    private static List<String> nodes(Layout layout) {
        return layout.distribution().points().stream().map(Point::id).toList();
    }

    /** What depths of dips and swells are held against, where a criterion does so whatever they last. */
    private record Held(Optional<DipVerdict.Change> change, List<DipCriterion> criteria) {
        Quantity dip(Quantity figure) {
            return change.map(it -> figure.atMost(it.usualPercent(), it.clause()))
                    .orElse(figure);
        }

        /** Not by a criterion that goes by depth and time alone. */
        Quantity swell(Quantity figure) {
            boolean isByTime = criteria.contains(DipCriterion.ITI) && !criteria.contains(DipCriterion.EN_50160);
            return isByTime ? figure : figure.atMost(DipVerdict.SWELL_PERCENT, SWELL);
        }
    }

    private static void quantities(SourceModel model, String node, List<DipStep> steps, Held held, Remarks findings) {
        if (steps.isEmpty()) {
            return;
        }
        Dip deepest = StepDips.greatest(
                        steps, DipReading.BOUND, DipStep::mostLowPercent, Dip::lowPercent, Double.NEGATIVE_INFINITY)
                .orElseThrow();
        findings.add(held.dip(new Quantity(node, "deepest dip", deepest.fallPercent(), "%")));
        double byPhasors = deepest(steps);
        findings.add(held.dip(new Quantity(node, "deepest dip by phasors", byPhasors, "%")));
        figure(node, "deepest dip at stated power factors", deepestAsStated(steps), findings);
        figure(node, "voltage low before it", deepest.step().steadyLowPercent(), findings);
        findings.add(held.swell(new Quantity(node, "highest swell", highest(steps, DipReading.BOUND), "%")));
        findings.add(
                held.swell(new Quantity(node, "highest swell by phasors", highest(steps, DipReading.PHASORS), "%")));
        steps.stream().map(DipStep::at).distinct().forEach(at -> {
            List<DipStep> here =
                    steps.stream().filter(step -> step.at().equals(at)).toList();
            figure(node, "dip by phasors, " + at.text(), deepest(here), findings);
            figure(node, "swell by phasors, " + at.text(), highest(here, DipReading.PHASORS), findings);
        });
        if (model.source().kind() == SourceKind.GENERATOR) {
            figure(node, "deepest dip, linear form", deepest.fallPercent(), findings);
            figure(node, "deepest dip, divider form", StepDip.dividedPercent(deepest.fallPercent()), findings);
        }
    }

    private static double deepest(List<DipStep> steps) {
        return StepDips.greatest(steps, DipReading.PHASORS, DipStep::mostFallPercent, Dip::fallPercent, 0)
                .map(Dip::fallPercent)
                .orElse(0.0);
    }

    private static double deepestAsStated(List<DipStep> steps) {
        return steps.stream().mapToDouble(DipStep::statedDipPercent).max().orElse(0);
    }

    private static double highest(List<DipStep> steps, DipReading reading) {
        return StepDips.greatest(steps, reading, DipStep::mostHighPercent, Dip::highPercent, 0)
                .map(Dip::highPercent)
                .orElse(0.0);
    }

    private static void figure(String node, String name, double percent, Remarks findings) {
        findings.add(new Quantity(node, name, percent, "%"));
    }

    /** Of each node and criterion the gravest step by phasors; where they keep it, the gravest that the bound does not. */
    private static void criteria(Layout layout, List<String> told, StepDips dips, Remarks findings) {
        Electrical electrical = layout.project().electrical().orElseThrow();
        if (electrical.dipCriteria().isEmpty()) {
            findings.notCheckedAnywhere(ID, Remarks.PLANT, told, "electrical.dip_criteria");
        }
        for (DipCriterion criterion : electrical.dipCriteria()) {
            for (String node : told) {
                findings.made(ID, node);
                for (Way way : Way.values()) {
                    gravest(criterion, way, dips.steps(node), DipReading.PHASORS)
                            .or(() -> gravest(criterion, way, dips.steps(node), DipReading.BOUND))
                            .ifPresent(findings::add);
                }
            }
        }
        if (electrical.dipCriteria().stream().noneMatch(VoltageDipCheck::judgesSwells)) {
            told.forEach(node -> swell(dips.steps(node)).ifPresent(findings::add));
        }
    }

    private static Optional<Remark> gravest(DipCriterion criterion, Way way, List<DipStep> steps, DipReading reading) {
        List<DipStep> grave = steps.stream()
                .filter(step -> DipVerdict.mayBreak(criterion, way, step, reading))
                .toList();
        return Gravest.of(
                        grave,
                        reading,
                        DipVerdict.mostGravity(criterion, way, reading),
                        DipVerdict.gravity(criterion, way))
                .filter(dip -> DipVerdict.mayBreak(criterion, way, dip))
                .flatMap(dip -> DipVerdict.of(criterion, way, dip).stream().map(verdict -> remark(dip, way, verdict)))
                .findFirst();
    }

    private static Remark remark(Dip dip, Way way, DipVerdict verdict) {
        DipStep step = dip.step();
        boolean isBoundAlone = dip.isByBound();
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
                .cure("give load " + Phrase.quoted(step.load()) + " less inrush, a moment of its own, "
                        + (way == Way.SWELL ? "a larger neutral, " : "") + "or a stiffer source")
                .build();
    }

    private static boolean judgesSwells(DipCriterion criterion) {
        return criterion == DipCriterion.ITI || criterion == DipCriterion.EN_50160;
    }

    /** Where no criterion that is named speaks of swells. */
    private static Optional<Remark> swell(List<DipStep> steps) {
        return swell(steps, DipReading.PHASORS)
                .or(() -> swell(steps, DipReading.BOUND))
                .map(dip -> Remark.builder()
                        .check(ID)
                        .kind("swells")
                        .grade(Grade.EXCEEDS_RECOMMENDATION)
                        .place(dip.step().node())
                        .figure(dip.highPercent())
                        .limit(DipVerdict.SWELL_PERCENT)
                        .unit("%")
                        .clause(SWELL)
                        .message(DipText.of(dip, Way.SWELL) + ", 10 % above nominal is the most that networks offer")
                        .cure("feed load " + Phrase.quoted(dip.step().load())
                                + " on a circuit of its own, or take a larger neutral")
                        .build());
    }

    private static Optional<Dip> swell(List<DipStep> steps, DipReading reading) {
        return StepDips.greatest(steps, reading, DipStep::mostHighPercent, Dip::highPercent, DipVerdict.SWELL_PERCENT);
    }
}
