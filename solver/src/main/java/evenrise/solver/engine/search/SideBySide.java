package evenrise.solver.engine.search;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;

/** Runs searches at once, each in a thread of its own. */
final class SideBySide {
    private SideBySide() {}

    /**
     * What each search gives, in their order.
     *
     * @param stop ends them all soon; called where the calling thread is interrupted or what it does fails
     * @param meanwhile what the calling thread does once they have begun
     */
    static List<Search.Result> run(List<Search> searches, Runnable stop, Runnable meanwhile) {
        ExecutorService pool = Executors.newFixedThreadPool(searches.size());
        try {
            List<Future<Search.Result>> futures =
                    searches.stream().map(pool::submit).toList();
            meanwhile.run();
            List<Search.Result> results = new ArrayList<>();
            for (Future<Search.Result> future : futures) {
                results.add(future.get());
            }
            return results;
        } catch (InterruptedException e) {
            stop.run();
            Thread.currentThread().interrupt();
            throw new IllegalStateException("the search was interrupted", e);
        } catch (RuntimeException | Error e) {
            stop.run();
            throw e;
        } catch (ExecutionException e) {
            throw new IllegalStateException("the search failed", e.getCause());
        } finally {
            pool.shutdown();
        }
    }
}
