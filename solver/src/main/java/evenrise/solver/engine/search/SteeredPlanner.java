package evenrise.solver.engine.search;

import evenrise.solver.engine.Budget;
import evenrise.solver.engine.Progress;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanSnapshot;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;

/** Searches side by side, each led by a {@link Steering} of its own; what they find, the steerings keep. */
public final class SteeredPlanner {
    private final WorkingPlan start;
    private final Consumer<Progress> listener;
    private final List<Search> searches = new ArrayList<>();
    private volatile boolean stopped;

    /** @param start where every search begins */
    public SteeredPlanner(CompiledProject compiled, PlanSnapshot start, Consumer<Progress> listener) {
        this.start = WorkingPlan.of(compiled, start);
        this.listener = listener;
    }

    /** Searches in one thread a steering until the budget is used or {@link #stop()} is called; gives the moves tried. */
    public long search(List<? extends Steering> steerings, Budget budget, long seed) {
        long startNanos = System.nanoTime();
        SearchProgress progress = new SearchProgress(startNanos, listener);
        progress.offer(start.copy(), PlanScoreCalculator.score(start.sums()), 0);
        synchronized (searches) {
            steerings.forEach(
                    each -> searches.add(Search.steered(start.copy(), each, budget, seed, startNanos, progress)));
        }
        if (stopped) {
            stop();
        }
        long moves = SideBySide.run(searches, this::stop, () -> {}).stream()
                .mapToLong(Search.Result::moves)
                .sum();
        progress.finish();
        return moves;
    }

    /** Ends the search soon; what was found stays. */
    public void stop() {
        stopped = true;
        synchronized (searches) {
            searches.forEach(Search::stop);
        }
    }
}
