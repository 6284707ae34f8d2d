package evenrise.model.review;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.PhaseCurrents;
import evenrise.model.electrical.source.Network;
import evenrise.model.electrical.source.StepDip;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.project.DipCriterion;
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
        StepDips dips = StepDips.of(layout, source.get(), feeders);
        List<StepDips.Step> worst = worstOfEachNode(layout, dips);
        worst.forEach(step -> quantities(model.get(), step, findings));
        criteria(layout, dips, findings);
        range(layout, new Network(source.get(), feeders), findings);
        victims(layout, dips, findings);
    }

    private static List<String> nodes(Layout layout) {
        List<String> nodes = new ArrayList<>(List.of(NodeFigures.SUPPLY));
        layout.project().panels().forEach(panel -> nodes.add(panel.id()));
        return nodes;
    }

    private static List<StepDips.Step> worstOfEachNode(Layout layout, StepDips dips) {
        List<StepDips.Step> worst = new ArrayList<>();
        for (String node : nodes(layout)) {
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

    /** Of each node and criterion the gravest step: what changes most, or leaves its band deepest. */
    private static void criteria(Layout layout, StepDips dips, Findings findings) {
        Electrical electrical = layout.project().electrical().orElseThrow();
        if (electrical.dipCriteria().isEmpty()) {
            findings.notCheckedAnywhere(ID, Findings.PLANT, nodes(layout), "electrical.dip_criteria");
        }
        for (DipCriterion criterion : electrical.dipCriteria()) {
            for (String node : nodes(layout)) {
                findings.made(ID, node);
                layout.project().supply().system().phases().stream()
                        .flatMap(phase -> dips.steps(node, phase).stream())
                        .sorted(Comparator.comparingDouble(DipVerdict.gravity(criterion))
                                .reversed())
                        .takeWhile(step -> DipVerdict.mayBreak(criterion, step))
                        .flatMap(step -> DipVerdict.of(criterion, step, dips.decay(step)).stream())
                        .findFirst()
                        .ifPresent(verdict -> findings.add(remark(verdict)));
            }
        }
    }

    private static Remark remark(DipVerdict verdict) {
        return Remark.builder()
                .check(ID)
                .grade(verdict.grade())
                .place(verdict.step().node())
                .figure(verdict.percent())
                .limit(verdict.limitPercent())
                .unit("%")
                .clause(verdict.clause())
                .message(text(verdict.step()) + ", " + verdict.text() + ". Maybe give load "
                        + Say.quoted(verdict.step().load())
                        + " less inrush, a moment of its own, or a stiffer source.")
                .build();
    }

    /** Steady voltage at full use, by |Z| whatever the angles, where ANSI C84.1 is named. */
    private static void range(Layout layout, Network network, Findings findings) {
        boolean isAsked =
                layout.project().electrical().orElseThrow().dipCriteria().contains(DipCriterion.ANSI_C84_1);
        if (!isAsked) {
            return;
        }
        double volts = layout.project().supply().lineToNeutralVolts();
        double source = 100 * network.source().magnitudeOhms() / volts;
        PhaseCurrents supply = new PhaseCurrents(layout.project().supply().system());
        layout.placements().stream()
                .filter(Placement::fits)
                .forEach(each -> supply.add(each.phases(), each.load().runningAmps()));
        for (Panel panel : layout.project().panels()) {
            double feeder = network.feeders().containsKey(panel.id())
                    ? 100 * network.feeders().get(panel.id()).magnitudeOhms() / volts
                    : 0;
            PhaseCurrents own = new PhaseCurrents(layout.project().supply().system());
            for (Placement each : layout.in(panel)) {
                double ways = each.load().poles() == 1 ? 1 + 1 / panel.neutralFactor() : 1;
                own.add(each.phases(), ways * each.load().runningAmps());
            }
            for (Phase phase : layout.project().supply().system().phases()) {
                double percent = StepDip.mostPercent(source * supply.amps(phase) + feeder * own.amps(phase));
                if (percent > DipVerdict.RANGE_A_PERCENT) {
                    findings.add(Remark.builder()
                            .check(ID)
                            .grade(Grade.BREAKS)
                            .place(panel.id())
                            .figure(percent)
                            .limit(DipVerdict.RANGE_A_PERCENT)
                            .unit("%")
                            .clause("ANSI C84.1 range A, utilization")
                            .message("at full use phase " + phase + " of panel " + Say.quoted(panel.id())
                                    + " is low by at most "
                                    + Say.percent(percent, DipVerdict.RANGE_A_PERCENT) + ", allowed are "
                                    + Say.percent(DipVerdict.RANGE_A_PERCENT, percent)
                                    + ". Maybe take a larger feeder or a stiffer source.")
                            .build());
                    break;
                }
            }
        }
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
            findings.made(ID, load.id());
            victim(each, load.rideThrough().get(), dips).ifPresent(step -> {
                String key = step.node() + step.phase() + step.atSeconds();
                if (told.add(key)) {
                    findings.add(brownedOut(each, step));
                } else {
                    more.merge(text(step), 1, Integer::sum);
                }
            });
        }
        more.forEach((step, count) -> findings.add(Remark.builder()
                .check(ID)
                .grade(Grade.BREAKS)
                .place(Findings.PLANT)
                .figure(count)
                .unit("")
                .clause("")
                .message(step + ": " + count + " more loads that are on do not ride through.")
                .build()));
        findings.notChecked(ID, unknown, "ride_through");
    }

    private static Optional<StepDips.Step> victim(Placement each, RideThrough needs, StepDips dips) {
        double on = each.onSeconds().orElse(Double.NEGATIVE_INFINITY);
        double most = 100 - needs.remainingPercent();
        return each.phases().stream()
                .flatMap(phase -> dips.deeperAfter(each.assignment().panel(), phase, on, most).stream())
                .filter(deep ->
                        1000 * dips.decay(deep).secondsAbove(most - deep.steadyPercent()) > needs.withoutMillis())
                .findFirst();
    }

    private static Remark brownedOut(Placement each, StepDips.Step step) {
        RideThrough needs = each.load().rideThrough().orElseThrow();
        return Remark.builder()
                .check(ID)
                .grade(Grade.BREAKS)
                .place(each.id())
                .figure(100 - step.totalPercent())
                .limit(needs.remainingPercent())
                .unit("%")
                .clause("")
                .message(text(step) + ": load " + Say.quoted(each.id()) + ", on already, needs "
                        + Say.percent(needs.remainingPercent()) + " and does without for "
                        + String.format(Locale.ROOT, "%.0f ms", needs.withoutMillis())
                        + ". Maybe bring load " + Say.quoted(step.load())
                        + " on earlier, limit its inrush, or feed the two apart.")
                .build();
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
