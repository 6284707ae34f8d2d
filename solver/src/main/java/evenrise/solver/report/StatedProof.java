package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.Plan;
import evenrise.model.rules.Proof;
import evenrise.model.rules.Tolerances;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Holds what a plan file says of bounds, gap and optimality against its own assignments and against bounds computed
 * here. A search may have proven more than the short arguments that an audit repeats; what they do not reach is said.
 */
final class StatedProof {
    private static final double TOLERANCE_PERCENT = 1e-4;

    private final Evaluation evaluation;
    private final Optional<StatedRewiring> moves;
    private final Plan stated;
    private final double objective;
    private final boolean keepsAll;

    /** @param moves that the plan file states and this audit does not count */
    StatedProof(Evaluation evaluation, Optional<StatedRewiring> moves) {
        this.moves = moves;
        this.evaluation = evaluation;
        this.stated = evaluation.layout().plan();
        this.objective = evaluation.verdict().metrics().objective()
                + moves.map(StatedRewiring::amps).orElse(0.0);
        this.keepsAll = evaluation.verdict().violations().isEmpty();
    }

    /** What does not follow, whatever was proven. */
    List<StatedFigure> differences() {
        List<StatedFigure> different = new ArrayList<>();
        Optional<Bounds> bounds = stated.bounds();
        Proof follows = bounds.filter(any -> keepsAll)
                .map(any -> Proof.ofWhole(objective, any.objective()))
                .orElse(new Proof(OptionalDouble.empty(), false));
        if (keepsAll && bounds.isPresent() && bounds.get().objective() > objective + Proof.PROVEN_AMPS) {
            different.add(new StatedFigure("bounds.objective", bounds.get().objective(), "at most " + text(objective)));
        }
        double peak = evaluation.verdict().metrics().peakInrushAmps();
        if (keepsAll && bounds.isPresent() && bounds.get().peakInrushAmps() > peak + Tolerances.AMPS) {
            different.add(
                    new StatedFigure("bounds.peak_inrush_a", bounds.get().peakInrushAmps(), "at most " + text(peak)));
        }
        if (stated.gapPercent().isPresent() && !isSameGap(follows.gapPercent())) {
            different.add(new StatedFigure(
                    "gap_pct",
                    stated.gapPercent().getAsDouble(),
                    follows.gapPercent().isPresent()
                            ? (Object) follows.gapPercent().getAsDouble()
                            : "none"));
        }
        if (stated.optimal() && !follows.isOptimal()) {
            different.add(new StatedFigure("optimal", true, false));
        }
        return different;
    }

    /** What may be right and is not proven here. */
    List<String> notFollowed() {
        List<String> notes = new ArrayList<>();
        double stands = stated.bounds().map(Bounds::objective).orElse(0.0);
        double own = evaluation.bounds().objective();
        if (stands > own + Proof.PROVEN_AMPS) {
            notes.add("The plan file's lower bound of the objective, " + text(stands)
                    + ", is above what this audit proves, " + text(own)
                    + ": a longer proof may have shown it; this audit does not.");
        }
        if (stated.optimal() && !evaluation.proof().isOptimal()) {
            notes.add("The plan file calls itself optimal; this audit does not prove it.");
        }
        moves.filter(each -> each.amps() > 0).ifPresent(each -> notes.add(each.words()));
        return notes;
    }

    private boolean isSameGap(OptionalDouble follows) {
        return follows.isPresent()
                && Math.abs(follows.getAsDouble() - stated.gapPercent().getAsDouble()) <= TOLERANCE_PERCENT;
    }

    private static String text(double amps) {
        return Decimals.fixed(amps, 2);
    }
}
