package evenrise.model.review;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.source.StepDip;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.Electrical;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.RideThrough;
import evenrise.model.project.SourceKind;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * How far the voltage dips at each step of the sequence behind the real source, whether that keeps the criteria that the
 * project names, and whether the sequence browns out what is on already.
 */
final class VoltageDipCheck implements ElectricalCheck {
    private static final String ID = "voltage-dip";

    @Override
    public String id() {
        return ID;
    }

    @Override
    public void review(Layout layout, Findings findings) {
        Optional<SourceModel> model = SourceModel.of(layout.project());
        Optional<Impedance> source = model.flatMap(SourceModel::forDips);
        if (source.isEmpty()) {
            String needs = model.map(SourceModel::needs).orElse("electrical.source");
            findings.notChecked(ID, List.of(NodeFigures.SUPPLY), needs);
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
        StepDips dips = StepDips.of(layout, source.get(), feeders);
        List<StepDips.Step> worst = worstOfEachNode(layout, dips);
        worst.forEach(step -> quantities(model.get(), step, findings));
        criteria(layout, dips, worst, findings);
        victims(layout, dips, findings);
    }

    private static List<StepDips.Step> worstOfEachNode(Layout layout, StepDips dips) {
        List<String> nodes = new ArrayList<>(List.of(NodeFigures.SUPPLY));
        layout.project().panels().forEach(panel -> nodes.add(panel.id()));
        List<StepDips.Step> worst = new ArrayList<>();
        for (String node : nodes) {
            layout.project().supply().system().phases().stream()
                    .flatMap(phase -> dips.steps(node, phase).stream())
                    .max(Comparator.comparingDouble(StepDips.Step::totalPercent))
                    .ifPresent(worst::add);
        }
        return worst;
    }

    private static void quantities(SourceModel model, StepDips.Step step, Findings findings) {
        findings.add(new Quantity(step.node(), "deepest dip", step.percent(), "%"));
        findings.add(new Quantity(step.node(), "voltage low before it", step.steadyPercent(), "%"));
        if (model.source().kind() == SourceKind.GENERATOR) {
            double linear = StepDip.linearOfMostPercent(step.percent());
            findings.add(new Quantity(step.node(), "deepest dip, linear form", linear, "%"));
            findings.add(new Quantity(step.node(), "deepest dip, divider form", StepDip.dividedPercent(linear), "%"));
        }
    }

    private static void criteria(Layout layout, StepDips dips, List<StepDips.Step> worst, Findings findings) {
        Electrical electrical = layout.project().electrical().orElseThrow();
        if (electrical.dipCriteria().isEmpty()) {
            findings.notChecked(ID, List.of(Findings.PLANT), "electrical.dip_criteria");
        }
        electrical
                .dipCriteria()
                .forEach(criterion -> worst.forEach(step -> DipVerdict.of(criterion, step, dips.decay(step))
                        .ifPresent(verdict -> findings.add(new Remark(
                                ID,
                                verdict.grade(),
                                step.node(),
                                OptionalDouble.of(verdict.percent()),
                                OptionalDouble.of(verdict.limitPercent()),
                                "%",
                                verdict.clause(),
                                text(step) + ", " + verdict.text() + ". Maybe give load " + Say.quoted(step.load())
                                        + " less inrush, a moment of its own, or a stiffer source.")))));
    }

    /** What is on rides through every later step, or the first that it does not is named. */
    private static void victims(Layout layout, StepDips dips, Findings findings) {
        List<String> unknown = new ArrayList<>();
        Set<String> told = new HashSet<>();
        Map<String, Integer> more = new HashMap<>();
        for (Placement each : layout.placements()) {
            Load load = each.load();
            if (!each.fits()) {
                continue;
            }
            if (load.rideThrough().isEmpty()) {
                unknown.add(load.id());
                continue;
            }
            victim(each, load.rideThrough().get(), dips).ifPresent(step -> {
                String key = step.node() + step.phase() + step.atSeconds();
                if (told.add(key)) {
                    findings.add(brownedOut(each, step));
                } else {
                    more.merge(text(step), 1, Integer::sum);
                }
            });
        }
        more.forEach((step, count) -> findings.add(new Remark(
                ID,
                Grade.BREAKS,
                Findings.PLANT,
                OptionalDouble.of(count),
                OptionalDouble.empty(),
                "",
                "",
                step + ": " + count + " more loads that are on do not ride through.")));
        findings.notChecked(ID, unknown, "ride_through");
    }

    private static Optional<StepDips.Step> victim(Placement each, RideThrough needs, StepDips dips) {
        double on = each.onSeconds().orElse(Double.NEGATIVE_INFINITY);
        double most = 100 - needs.remainingPercent();
        Optional<StepDips.Step> found = Optional.empty();
        for (Phase phase : each.phases()) {
            Optional<StepDips.Step> step = dips.worstAfter(each.assignment().panel(), phase, on)
                    .filter(deep -> deep.totalPercent() > most)
                    .filter(deep ->
                            1000 * dips.decay(deep).secondsAbove(most - deep.steadyPercent()) > needs.withoutMillis());
            found = found.or(() -> step);
        }
        return found;
    }

    private static Remark brownedOut(Placement each, StepDips.Step step) {
        RideThrough needs = each.load().rideThrough().orElseThrow();
        return new Remark(
                ID,
                Grade.BREAKS,
                each.id(),
                OptionalDouble.of(100 - step.totalPercent()),
                OptionalDouble.of(needs.remainingPercent()),
                "%",
                "",
                text(step) + ": load " + Say.quoted(each.id()) + ", on already, needs "
                        + Say.percent(needs.remainingPercent()) + " and does without for "
                        + String.format(Locale.ROOT, "%.0f ms", needs.withoutMillis())
                        + ". Maybe bring load " + Say.quoted(step.load())
                        + " on earlier, limit its inrush, or feed the two apart.");
    }

    private static String text(StepDips.Step step) {
        return String.format(
                Locale.ROOT,
                "when load '%s' comes on at %.2f s, %s phase %s dips by at most %.1f %% to %.1f %% of nominal",
                step.load(),
                step.atSeconds(),
                Say.node(step.node()),
                step.phase(),
                step.percent(),
                100 - step.totalPercent());
    }
}
