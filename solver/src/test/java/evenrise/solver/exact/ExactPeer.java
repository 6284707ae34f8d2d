package evenrise.solver.exact;

import com.google.ortools.sat.CpModel;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Referee;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;

/**
 * A peer for the benchmark: the whole contract as one integer program, solved by CP-SAT in the same time with as many
 * workers as the engine has threads, with or without a plan to begin at.
 */
public final class ExactPeer {
    /**
     * @param plan the best plan that keeps every rule, if one was found
     * @param boundAmps what is proven of the objective
     * @param note how it ended, and how large the model was
     */
    public record Answer(Optional<Plan> plan, double boundAmps, String note) {}

    /** By the clock; what ends it is the stop. */
    private static final double MOST_SECONDS = 3600;

    private ExactPeer() {}

    /**
     * @param from a plan to begin at
     * @param stopper is given what ends the solver soon
     */
    public static Answer run(Project project, Optional<Plan> from, Consumer<Runnable> stopper, int workers, long seed) {
        ExactEffort effort = ExactEffort.seconds(MOST_SECONDS, workers, seed);
        long start = System.nanoTime();
        AtomicReference<Plan> best = new AtomicReference<>();
        double[] bound = {0};
        ExactModel model = new ExactModel(project, true);
        model.minimize(ExactKnown.peak(0));
        from.ifPresent(model::hint);
        double built = (System.nanoTime() - start) / 1e9;
        ExactSearch search = new ExactSearch(
                project,
                model,
                true,
                effort,
                amps -> {
                    synchronized (bound) {
                        bound[0] = Math.max(bound[0], amps);
                    }
                },
                plan -> best.accumulateAndGet(plan, (one, other) -> better(project, one, other)));
        stopper.accept(search::stop);
        ExactSearch.End end = search.run();
        String size = "%s, %,d variables, built in %.1f s".formatted(end, variables(model.model()), built);
        return new Answer(Optional.ofNullable(best.get()), bound[0], size);
    }

    private static Plan better(Project project, Plan one, Plan other) {
        return one == null || objective(project, other) <= objective(project, one) ? other : one;
    }

    private static double objective(Project project, Plan plan) {
        return Referee.judge(project, plan).metrics().objective();
    }

    private static int variables(CpModel model) {
        return model.getBuilder().getVariablesCount();
    }
}
