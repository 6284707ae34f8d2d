package evenrise.solver.compare;

import evenrise.model.plan.Plan;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.Function;

/** Plans scenarios by threads of this process. */
public final class ScenarioPool implements ScenarioPlanner {
    private final int threads;
    private final Function<Sweep.Found, Plan> finisher;
    private final Set<ScenarioSearch> running = ConcurrentHashMap.newKeySet();
    private volatile boolean isStopped;

    /** @param finisher completes and signs what was found */
    public ScenarioPool(int threads, Function<Sweep.Found, Plan> finisher) {
        this.threads = threads;
        this.finisher = finisher;
    }

    @Override
    public void run(List<Order> orders, Landing landing) {
        ExecutorService pool = Executors.newFixedThreadPool(threads);
        try {
            List<Future<?>> futures = new ArrayList<>();
            for (int i = 0; i < orders.size(); i++) {
                int number = i;
                futures.add(pool.submit(() -> plan(number, orders.get(number), landing)));
            }
            for (Future<?> future : futures) {
                future.get();
            }
        } catch (InterruptedException e) {
            stop();
            Thread.currentThread().interrupt();
        } catch (ExecutionException e) {
            stop();
            if (e.getCause() instanceof RuntimeException failure) {
                throw failure;
            }
            throw new IllegalStateException("a scenario failed", e.getCause());
        } finally {
            pool.shutdownNow();
        }
    }

    private void plan(int number, Order order, Landing landing) {
        if (isStopped) {
            return;
        }
        ScenarioSearch search = new ScenarioSearch(order.sought().get());
        running.add(search);
        if (isStopped) {
            search.stop();
        }
        Sweep.Found found = search.found();
        running.remove(search);
        if (!isStopped) {
            Plan plan = finisher.apply(found);
            synchronized (this) {
                landing.land(number, plan);
            }
        }
    }

    @Override
    public void stop() {
        isStopped = true;
        running.forEach(ScenarioSearch::stop);
    }
}
