package evenrise.solver.grid.ignite;

import evenrise.solver.grid.GridEngine.WorkerPost;
import evenrise.solver.grid.GridSite;
import evenrise.solver.grid.GridUnavailable;
import evenrise.solver.grid.GridWork;
import evenrise.solver.grid.StopSignal;
import java.util.concurrent.CountDownLatch;
import java.util.function.Consumer;
import org.apache.ignite.IgniteException;
import org.apache.ignite.IgniteState;
import org.apache.ignite.Ignition;
import org.apache.ignite.IgnitionListener;

/** A worker from its start to its stop. One that was away, as after a pause of its machine, joins again. */
final class IgniteWorker {
    private final GridSite site;
    private final WorkerPost post;
    private final GridWork work;
    private final Consumer<String> said;
    private final StopSignal stop;

    IgniteWorker(GridSite site, WorkerPost post, GridWork work, Consumer<String> said, StopSignal stop) {
        this.site = site;
        this.post = post;
        this.work = work;
        this.said = said;
        this.stop = stop;
    }

    void run() {
        Thread own = Thread.currentThread();
        stop.during(
                () -> {
                    while (!stop.hasCome()) {
                        stay();
                    }
                    // The interruption has done what it was for.
                    Thread.interrupted();
                },
                own::interrupt);
    }

    private void stay() {
        CountDownLatch ended = new CountDownLatch(1);
        said.accept("joining " + site.hosts());
        try (EngineNode node = EngineNode.joined(site, EngineNode.Role.worker(post, work), (ignite, failure) -> {
            ended.countDown();
            return true;
        })) {
            String name = node.ignite().name();
            IgnitionListener listener = (stopped, state) -> {
                if (name.equals(stopped) && state != IgniteState.STARTED) {
                    ended.countDown();
                }
            };
            Ignition.addListener(listener);
            said.accept("ready, " + post.slots() + (post.slots() == 1 ? " slot" : " slots") + ", at "
                    + node.ignite().cluster().localNode().addresses() + ":" + node.port());
            try {
                ended.await();
                said.accept("was away; joining again");
            } finally {
                Ignition.removeListener(listener);
            }
        } catch (InterruptedException | IgniteException e) {
            unlessStopped(new GridUnavailable("the engine ended: " + e.getMessage() + ".", e));
        } catch (GridUnavailable e) {
            unlessStopped(e);
        }
    }

    private void unlessStopped(GridUnavailable failure) {
        if (!stop.hasCome()) {
            throw failure;
        }
    }
}
