package evenrise.solver.cli;

import evenrise.model.plan.Plan;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.Progress;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.concurrent.CountDownLatch;

/** The program with a search that goes on until it is stopped; it says so once it searches. */
final class StandInMain {
    private StandInMain() {}

    public static void main(String[] arguments) {
        PlannerSource endless = (request, listener, note) -> new PlannerSource.Search() {
            private final CountDownLatch stopped = new CountDownLatch(1);

            @Override
            public PlanningOutcome plan() {
                listener.accept(new Progress(0, 1, 117.3, 100, 100, 0));
                try {
                    stopped.await();
                } catch (InterruptedException e) {
                    throw new IllegalStateException(e);
                }
                return new PlanningOutcome(SmallHall.sound(), 1, 1, OptionalDouble.of(0));
            }

            @Override
            public Optional<Plan> best() {
                return Optional.of(SmallHall.sound());
            }

            @Override
            public void stop() {
                stopped.countDown();
            }
        };
        System.exit(Evenrise.run(Terminal.ofProcess(), endless, arguments));
    }
}
