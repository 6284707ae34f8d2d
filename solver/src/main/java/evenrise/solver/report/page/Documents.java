package evenrise.solver.report.page;

import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Metrics;
import evenrise.model.plan.Plan;
import evenrise.model.plan.Review;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Supply;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PhasePeak;
import evenrise.model.rules.Placement;
import evenrise.model.rules.Verdict;
import evenrise.model.scatter.NodeScatter;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.TreeSet;

/** Makes the documents of a plan from its layout, the referee's verdict and the electrical review. */
public final class Documents {
    private static final int SAMPLES = 500;

    private Documents() {}

    /**
     * @param earlier a plan to tell the differences to
     * @param scatter of trials; none where there were none
     */
    public static Document of(
            Imprint imprint,
            Layout layout,
            Verdict verdict,
            Review review,
            Optional<Plan> earlier,
            List<NodeScatter> scatter) {
        Grids grids = new Grids(layout);
        List<Grid> all = new ArrayList<>(List.of(
                grids.circuits(),
                grids.landing(),
                grids.settings(),
                grids.balance(),
                grids.groups(),
                grids.peak(verdict),
                grids.review(review),
                grids.events(),
                grids.bill(),
                grids.commissioning(),
                grids.labels()));
        if (!scatter.isEmpty()) {
            all.add(grids.percentiles(scatter));
        }
        if (earlier.isPresent()) {
            all.add(grids.differences(earlier));
        }
        List<Phase> phases = layout.project().supply().system().phases();
        return new Document(
                imprint,
                facts(layout, verdict),
                verdict.violations().stream()
                        .map(each -> Plain.text(each.rule() + ": " + each.message(), 2000))
                        .toList(),
                Cautions.ALL,
                new Schedules(layout).all(),
                all,
                phases.stream().map(phase -> envelope(layout, phase)).toList(),
                layout.placements().stream()
                        .filter(Placement::fits)
                        .map(Documents::played)
                        .toList(),
                layout.times().durationSeconds(),
                layout.project().timingToleranceSeconds(),
                phases.stream().map(Phase::name).toList(),
                colours(layout.project().supply()),
                colourSource(layout.project().supply()));
    }

    private static List<Fact> facts(Layout layout, Verdict verdict) {
        Metrics metrics = verdict.metrics();
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact(
                "Peak inrush",
                String.format(Locale.ROOT, "%.1f A", metrics.peakInrushAmps()),
                String.format(
                        Locale.ROOT, "upper bound, phase %s at %.2f s", metrics.peakPhase(), metrics.peakAtSeconds())));
        facts.add(new Fact(
                "Sequence", String.format(Locale.ROOT, "%.2f s", metrics.durationSeconds()), "to the last switch-on"));
        facts.add(new Fact(
                "Imbalance", String.format(Locale.ROOT, "%.2f %%", metrics.supplyImbalancePercent()), "of the supply"));
        facts.add(new Fact(
                "Worst panel",
                String.format(Locale.ROOT, "%.2f %%", metrics.worstPanelImbalancePercent()),
                "imbalance"));
        facts.add(new Fact(
                "Neutral", String.format(Locale.ROOT, "%.1f A", metrics.supplyNeutralAmps()), "of the supply, rms"));
        facts.add(new Fact("Boards", String.valueOf(metrics.boardsUsed()), "in use"));
        facts.add(new Fact(
                "Loads",
                String.valueOf(layout.project().loads().size()),
                "in " + layout.project().panels().size() + " panels"));
        facts.add(new Fact(
                "Hard rules",
                metrics.hardViolations() == 0 ? "all kept" : metrics.hardViolations() + " broken",
                "as the referee counts"));
        return facts;
    }

    private static PlayedLoad played(Placement each) {
        InrushEnvelope envelope = InrushEnvelope.of(each.load(), 0);
        return new PlayedLoad(
                each.id(),
                Plain.text(each.load().name(), 120),
                each.load().role().name().toLowerCase(Locale.ROOT),
                each.load().shutdownGroup().orElse(""),
                each.assignment().panel(),
                Grids.slots(each),
                Grids.phases(each),
                each.board().map(board -> board.id()).orElse(""),
                each.onSeconds().orElse(-1),
                envelope.baseAmps(),
                envelope.excessAmps(),
                envelope.halfLifeSeconds(),
                each.load().runningAmps());
    }

    /** At even instants and wherever a load comes on, where the peaks are. */
    private static Envelope envelope(Layout layout, Phase phase) {
        double tolerance = layout.project().timingToleranceSeconds();
        double end = layout.times().durationSeconds() * 1.05 + 1;
        List<Placement> touching = layout.placements().stream()
                .filter(each -> each.fits() && each.phases().contains(phase))
                .sorted(Comparator.comparingDouble(each -> each.onSeconds().orElse(-1)))
                .toList();
        TreeSet<Double> instants = new TreeSet<>();
        for (int i = 0; i <= SAMPLES; i++) {
            instants.add(end * i / SAMPLES);
        }
        touching.forEach(each -> each.onSeconds().ifPresent(on -> instants.add(Math.max(0, on - tolerance))));
        List<Double> seconds = List.copyOf(instants);
        double[] amps = new double[seconds.size()];
        for (Placement each : touching) {
            InrushEnvelope envelope = InrushEnvelope.of(each.load(), tolerance);
            for (int i = 0; i < amps.length; i++) {
                amps[i] += each.onSeconds().isPresent()
                        ? envelope.amps(each.onSeconds().getAsDouble(), seconds.get(i))
                        : envelope.baseAmps();
            }
        }
        PhasePeak peak = layout.nodes().get(0).peaks().stream()
                .filter(each -> each.phase() == phase)
                .findFirst()
                .orElseThrow();
        return new Envelope(
                phase.name(), seconds, java.util.Arrays.stream(amps).boxed().toList(), peak.amps(), peak.atSeconds());
    }

    /** Of conductors, by the practice that fits voltage and frequency; black on dark paper is drawn grey. */
    private static List<String> colours(Supply supply) {
        if (supply.frequencyHertz() < 55) {
            return List.of("#8a5a2b", "#2b2b2b", "#8f8f8f");
        }
        return supply.lineToNeutralVolts() > 200 && supply.system() == PhaseSystem.THREE_PHASE
                ? List.of("#8a5a2b", "#d9822b", "#c9b400")
                : List.of("#2b2b2b", "#b3261e", "#1f4fa3");
    }

    private static String colourSource(Supply supply) {
        if (supply.frequencyHertz() < 55) {
            return "Phase colours of conductors: brown, black, grey (IEC 60445)";
        }
        return supply.lineToNeutralVolts() > 200 && supply.system() == PhaseSystem.THREE_PHASE
                ? "Phase colours of conductors: brown, orange, yellow (practice in the United States above 150 V to ground)"
                : "Phase colours of conductors: black, red, blue (practice in the United States)";
    }
}
