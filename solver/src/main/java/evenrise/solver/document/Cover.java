package evenrise.solver.document;

import evenrise.model.contract.Phrase;
import evenrise.model.contract.Words;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Metrics;
import evenrise.model.plan.PeakBasis;
import evenrise.model.plan.RangePeak;
import evenrise.model.plan.Review;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Supply;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeStart;
import evenrise.model.rules.PhasePeak;
import evenrise.model.rules.Tolerances;
import evenrise.solver.report.GuessedField;
import evenrise.solver.report.PeakWords;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** The figures that matter. */
final class Cover {
    private Cover() {}

    static List<Fact> facts(Evaluation evaluation) {
        Layout layout = evaluation.layout();
        Review review = evaluation.review();
        Metrics metrics = evaluation.verdict().metrics();
        Project project = layout.project();
        List<Fact> facts = new ArrayList<>();
        facts.add(new Fact("Supply", Unrounded.amps(project.supply().ratedAmps()), system(project.supply())));
        PeakBasis basis = layout.peakBasis();
        RangePeak peak = basis.supply();
        facts.add(new Fact(
                "Peak inrush",
                format("%.1f A", metrics.peakInrushAmps()),
                format(
                        "at nominal voltage, %s, phase %s at %.2f s%s%s%s",
                        PeakWords.nominal(peak),
                        metrics.peakPhase(),
                        metrics.peakAtSeconds(),
                        ofWhat(layout),
                        limit(project.supply().inrushLimitAmps()),
                        lacking(basis.withoutInrush(), "no inrush")
                                + (basis.guessed().isEmpty()
                                        ? ""
                                        : "; guessed for "
                                                + Phrase.counted(basis.guessed().size(), "load")))));
        facts.add(new Fact(
                "Peak over the voltage range",
                format("%.1f A", peak.rangeAmps()),
                format(
                        "%s, %s (%s)%s",
                        PeakWords.range(basis),
                        PeakWords.overRange(peak),
                        basis.voltageFrom(),
                        lacking(basis.withoutWaveform(), "no waveform")),
                project.supply().inrushLimitAmps().orElse(Double.MAX_VALUE) + Tolerances.AMPS < peak.rangeAmps()));
        metrics.sourcePeaksAmps()
                .ifPresent(amps -> facts.add(new Fact(
                        "Peaks of sources",
                        format("%.1f A", amps),
                        "of the further sources, summed, each its greatest")));
        facts.add(new Fact("Sequence", format("%.2f s", metrics.durationSeconds()), toTheLast(layout)));
        facts.add(new Fact("Imbalance", format("%.2f %%", metrics.supplyImbalancePercent()), "of the supply"));
        facts.add(new Fact(
                "Worst panel",
                format("%.2f %%", metrics.worstPanelImbalancePercent()),
                "imbalance, panel " + worst(layout, point -> point.panel().isPresent())));
        metrics.worstNodeImbalancePercent()
                .ifPresent(percent -> facts.add(new Fact(
                        "Worst bus",
                        format("%.2f %%", percent),
                        "imbalance, bus "
                                + worst(layout, point -> point.node().isPresent() && !point.isFurtherSource()))));
        facts.add(new Fact("Neutral", format("%.1f A", metrics.supplyNeutralAmps()), "of the supply, rms"));
        facts.add(new Fact(
                "Boards",
                String.valueOf(metrics.boardsUsed()),
                "in use, of " + project.boards().size()));
        facts.add(new Fact(
                "Loads",
                String.valueOf(project.loads().size()),
                "in " + Phrase.counted(project.panels().size(), "panel")
                        + (project.nodes().isEmpty()
                                ? ""
                                : ", behind " + Phrase.counted(project.nodes().size(), "distribution point"))));
        if (!project.scenes().isEmpty()) {
            facts.add(new Fact(
                    "Scenes",
                    String.valueOf(project.scenes().size()),
                    "running currents, neutrals and imbalance are the worst scene's"));
        }
        GuessedField.figures(project)
                .ifPresent(figures -> facts.add(new Fact(
                        "Guessed",
                        figures,
                        "of " + GuessedField.loads(project)
                                + ", stated by nobody: confirm each by a datasheet or on site")));
        facts.add(new Fact(
                "Hard rules",
                metrics.hardViolations() == 0 ? "all kept" : metrics.hardViolations() + " broken",
                "checked on the finished plan",
                metrics.hardViolations() > 0));
        facts.add(new Fact(
                "Electrical review",
                limits(review),
                Phrase.counted(review.count(Grade.EXCEEDS_RECOMMENDATION), "recommendation") + " exceeded, "
                        + Phrase.counted(review.count(Grade.NOTE), "note"),
                review.count(Grade.BREAKS) > 0));
        evaluation.withoutPlace().ifPresent(what -> facts.add(new Fact("All figures", "not of all loads", what, true)));
        return facts;
    }

    private static String lacking(List<String> loads, String what) {
        return loads.isEmpty()
                ? ""
                : "; " + Phrase.counted(loads.size(), "load") + (loads.size() == 1 ? " states " : " state ") + what;
    }

    /** Never says of a part of the checks what would be true of all. */
    private static String limits(Review review) {
        int all = review.checksMade() + review.checksNotMade();
        if (review.count(Grade.BREAKS) > 0) {
            return Phrase.counted(review.count(Grade.BREAKS), "limit") + " broken";
        }
        return review.checksMade() == 0
                ? "no check made"
                : review.checksMade() + " of " + Phrase.counted(all, "check") + " made, none broken";
    }

    /** The first that is as bad as any. */
    private static String worst(Layout layout, Predicate<Point> which) {
        return layout.distribution().points().stream()
                .filter(which)
                .map(point -> layout.nodes().get(point.index()))
                .reduce((kept, next) -> next.imbalancePercent() > kept.imbalancePercent() ? next : kept)
                .map(NodeFigures::node)
                .orElse("");
    }

    /** Whose command the peak's time counts from. */
    private static String ofWhat(Layout layout) {
        if (!layout.project().hasClocks()) {
            return "";
        }
        PhasePeak peak = layout.worstPeak(Distribution.SUPPLY);
        return layout.starts(Distribution.SUPPLY).stream()
                .filter(start -> start.peaks().get(peak.phase()).amps() >= peak.amps() - Tolerances.AMPS)
                .findFirst()
                .flatMap(NodeStart::system)
                .map(system -> " from the start signal of " + system + ", the others in use")
                .orElse(" with all in use");
    }

    private static String toTheLast(Layout layout) {
        Map<Optional<String>, Double> ends = layout.clocks().ends();
        if (ends.size() < 2) {
            return "to the last switch-on";
        }
        return ends.entrySet().stream()
                .map(each -> each.getKey().orElse("") + " " + format("%.2f s", each.getValue()))
                .collect(Collectors.joining(", ", "to the last switch-on of the longest: ", ""));
    }

    /** Voltage, phases and frequency. */
    static String system(Supply supply) {
        return system(supply.system(), supply.lineToNeutralVolts(), supply.frequencyHertz());
    }

    static String system(PhaseSystem system, double lineToNeutralVolts, double hertz) {
        return format(
                "%s, %s V to neutral, %s Hz",
                Words.word(system), Unrounded.rated(lineToNeutralVolts), Unrounded.rated(hertz));
    }

    private static String limit(OptionalDouble amps) {
        return amps.isPresent() ? "; " + Unrounded.amps(amps.getAsDouble()) + " allowed" : "";
    }

    private static String format(String pattern, Object... values) {
        return String.format(Locale.ROOT, pattern, values);
    }
}
