package evenrise.solver.app;

import evenrise.model.plan.Plan;
import evenrise.solver.compare.Sweep;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.Progress;
import evenrise.solver.engine.search.Planner;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CountDownLatch;
import java.util.function.Consumer;
import java.util.function.Function;

/** Jobs with a search that knows its plan in the engine's place. */
public final class StandIns {
    private StandIns() {}

    /**
     * @param found what every search finds
     * @param asked takes every request of a search
     */
    public static Jobs finding(Plan found, Consumer<PlanningRequest> asked) {
        return new Jobs((request, listener, note) -> {
            asked.accept(request);
            return new PlannerSource.Search() {
                @Override
                public PlanningOutcome plan() {
                    listener.accept(new Progress(0.5, 1000, 117.3, 100, 100, 0));
                    return new PlanningOutcome(found, 1000, 0.5, OptionalDouble.of(0.1));
                }

                @Override
                public void stop() {}
            };
        });
    }

    /** Searches go on until they are stopped. */
    public static Jobs endless(Plan found) {
        return new Jobs((request, listener, note) -> new PlannerSource.Search() {
            private final CountDownLatch stopped = new CountDownLatch(1);

            @Override
            public PlanningOutcome plan() {
                listener.accept(new Progress(0, 1, 117.3, 100, 100, 0));
                try {
                    stopped.await();
                } catch (InterruptedException e) {
                    throw new IllegalStateException(e);
                }
                return new PlanningOutcome(found, 1, 1, OptionalDouble.of(0));
            }

            @Override
            public Optional<Plan> best() {
                return Optional.of(found);
            }

            @Override
            public void stop() {
                stopped.countDown();
            }
        });
    }

    /** The engine, without the exact solver beside it, which takes most of the time of a short search. */
    public static Jobs withoutProofs() {
        return new Jobs((request, listener, note) -> {
            QuietLibraries.hush();
            Planner planner = new Planner(request, listener);
            return new PlannerSource.Search() {
                @Override
                public PlanningOutcome plan() {
                    return planner.plan();
                }

                @Override
                public void stop() {
                    planner.stop();
                }
            };
        });
    }

    /** How every job finishes a plan. */
    public static Function<Sweep.Found, Plan> finisher() {
        return CompareJob::finished;
    }
}
