package evenrise.solver.app;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Rewiring;
import evenrise.model.rules.Verdict;
import evenrise.solver.engine.nearby.NearbyPlan;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/** Chooses among plans near an earlier one by how many moves they take, as the referee counts and judges them. */
final class NearEarlier {
    /** A plan, judged: hard rules broken, moves, objective. */
    private record Candidate(Plan plan, int broken, int moves, double objective) {}

    private final FewMoves few;
    private final List<Candidate> candidates;

    NearEarlier(Project project, Plan earlier, FewMoves few, List<NearbyPlan> plans) {
        this.few = few;
        ProjectIndex index = new ProjectIndex(project);
        this.candidates = plans.stream()
                .map(each -> candidate(index, earlier, each.plan()))
                .toList();
    }

    private static Candidate candidate(ProjectIndex index, Plan earlier, Plan bare) {
        Layout layout = Layout.of(index, PlanFinisher.timed(index.project(), bare));
        Verdict verdict = Referee.judge(layout, Optional.of(earlier));
        Rewiring rewiring = Rewiring.of(layout, earlier);
        return new Candidate(
                bare,
                verdict.violations().size(),
                rewiring.breakers() + rewiring.leads(),
                verdict.metrics().objective());
    }

    /**
     * Of those within the number of moves: what breaks fewest rules, then what costs least with its moves, then what moves
     * least. Where the number is too small for a plan that keeps more, says how many moves that took.
     */
    Plan chosen(Consumer<String> note) {
        Comparator<Candidate> best = Comparator.comparingInt(Candidate::broken)
                .thenComparingDouble(
                        each -> each.objective() + few.perMoveAmps().orElse(0) * each.moves())
                .thenComparingInt(Candidate::moves);
        Candidate chosen = candidates.stream()
                .filter(each ->
                        few.most().isEmpty() || each.moves() <= few.most().getAsInt())
                .min(best)
                .orElseThrow();
        candidates.stream()
                .filter(each -> each.broken() < chosen.broken())
                .min(Comparator.comparingInt(Candidate::broken).thenComparingInt(Candidate::moves))
                .ifPresent(better -> note.accept("with at most " + few.most().orElseThrow() + " moves, "
                        + Phrase.counted(chosen.broken(), "place") + " broken; " + better.moves()
                        + " moves were found that leave "
                        + Phrase.counted(better.broken(), "place") + " broken. Maybe allow as many."));
        return chosen.plan();
    }
}
