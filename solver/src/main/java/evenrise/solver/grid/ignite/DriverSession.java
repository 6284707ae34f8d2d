package evenrise.solver.grid.ignite;

import evenrise.solver.grid.AnswerBytes;
import evenrise.solver.grid.GridAnswer;
import evenrise.solver.grid.GridJob;
import evenrise.solver.grid.GridSite;
import evenrise.solver.grid.JobLedger;
import evenrise.solver.grid.StopSignal;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import java.util.function.BiConsumer;
import java.util.function.Consumer;
import org.apache.ignite.Ignite;
import org.apache.ignite.IgniteException;
import org.apache.ignite.cluster.ClusterNode;
import org.apache.ignite.cluster.ClusterTopologyException;
import org.apache.ignite.compute.ComputeTaskFuture;
import org.apache.ignite.events.DiscoveryEvent;
import org.apache.ignite.events.EventType;
import org.apache.ignite.lang.IgnitePredicate;

/** One stay among the workers. Everything that happens comes to one thread, in a queue. */
final class DriverSession implements AutoCloseable {
    private static final long PATIENCE_MILLIS = 8_000;

    private final GridSite site;
    private final JobLedger<UUID> ledger;
    private final BiConsumer<GridJob, GridAnswer> landed;
    private final Consumer<String> said;
    private final BlockingQueue<Runnable> happened = new LinkedBlockingQueue<>();
    private final Map<UUID, String> names = new HashMap<>();
    private final Map<String, ComputeTaskFuture<byte[]>> running = new HashMap<>();
    private final EngineNode node;
    private boolean hasEnded;
    private int mostSlots;

    DriverSession(
            GridSite site, JobLedger<UUID> ledger, BiConsumer<GridJob, GridAnswer> landed, Consumer<String> said) {
        this.site = site;
        this.ledger = ledger;
        this.landed = landed;
        this.said = said;
        this.node = EngineNode.joined(site, EngineNode.Role.driver(PATIENCE_MILLIS), (ignite, failure) -> {
            happened.add(this::end);
            return true;
        });
    }

    int mostSlots() {
        return mostSlots;
    }

    /** Until all jobs have ended, the stop comes, or no worker is left. */
    void run(StopSignal stop) {
        Ignite ignite = node.ignite();
        IgnitePredicate<DiscoveryEvent> listener = event -> {
            happened.add(() -> changed(event));
            return true;
        };
        ignite.events().localListen(listener, EventType.EVTS_DISCOVERY);
        ignite.cluster().forRemotes().nodes().forEach(this::joined);
        if (ledger.workers().isEmpty()) {
            throw JoinFailure.nobody(site);
        }
        stop.during(() -> serve(stop), () -> happened.add(this::end));
    }

    private void serve(StopSignal stop) {
        try {
            while (!ledger.isDone() && !hasEnded && !ledger.workers().isEmpty()) {
                ledger.workers().forEach(this::fill);
                Runnable next = happened.poll(1, TimeUnit.SECONDS);
                if (next != null && !stop.hasCome()) {
                    next.run();
                }
                hasEnded |= stop.hasCome();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            stop.stop();
        }
        if (ledger.workers().isEmpty() && !ledger.isDone() && !hasEnded) {
            said.accept("no worker is left; looking for others at " + site.hosts());
        }
    }

    private void end() {
        hasEnded = true;
    }

    private void changed(DiscoveryEvent event) {
        ClusterNode other = event.eventNode();
        switch (event.type()) {
            case EventType.EVT_NODE_JOINED -> joined(other);
            case EventType.EVT_NODE_LEFT -> gone(other, " has left", () -> ledger.left(other.id()));
            case EventType.EVT_NODE_FAILED -> gone(other, " is lost", () -> lost(other.id()));
            default -> {
                // Segmented: this process was away, and is no longer one of them.
                end();
            }
        }
    }

    private void joined(ClusterNode other) {
        Integer slots = other.attribute(EngineNode.SLOTS);
        if (slots != null && site.software().equals(other.attribute(SameSoftware.ATTRIBUTE))) {
            String name = other.addresses().stream().findFirst().orElse("?") + " ("
                    + other.id().toString().substring(0, 8) + ")";
            if (names.putIfAbsent(other.id(), name) == null) {
                ledger.joined(other.id(), slots);
                mostSlots = Math.max(mostSlots, ledger.allSlots());
                said.accept("worker " + name + " with " + slots + (slots == 1 ? " slot" : " slots"));
            }
        }
    }

    private void gone(ClusterNode other, String how, Runnable taken) {
        String name = names.remove(other.id());
        if (name != null) {
            said.accept("worker " + name + how);
            taken.run();
        }
    }

    private void lost(UUID worker) {
        for (GridJob parked : ledger.lost(worker)) {
            landed.accept(
                    parked,
                    new GridAnswer.Failed(
                            GridAnswer.Cause.WORKER_LOST, "two workers that ran it ended; it is not tried again"));
        }
    }

    private void fill(UUID worker) {
        ClusterNode there = node.ignite().cluster().node(worker);
        if (there == null) {
            // Word of its end is on its way.
            return;
        }
        for (Optional<GridJob> next = ledger.next(worker); next.isPresent(); next = ledger.next(worker)) {
            GridJob job = next.get();
            ComputeTaskFuture<byte[]> future = node.ignite()
                    .compute(node.ignite().cluster().forNode(there))
                    .executeAsync(new OneJob(job.input()), null);
            running.put(job.key(), future);
            future.listen(done -> happened.add(() -> ended(worker, job, future)));
        }
    }

    private void ended(UUID worker, GridJob job, ComputeTaskFuture<byte[]> future) {
        running.remove(job.key(), future);
        Optional<GridAnswer> answer;
        try {
            answer = AnswerBytes.read(future.get());
        } catch (ClusterTopologyException e) {
            if (node.ignite().cluster().node(worker) == null) {
                // Word of the worker's end is on its way, or has come.
                return;
            }
            answer = Optional.empty();
        } catch (IgniteException | IllegalArgumentException e) {
            answer = Optional.of(new GridAnswer.Failed(GridAnswer.Cause.THROWN, String.valueOf(e.getMessage())));
        }
        if (answer.isEmpty()) {
            ledger.returned(worker, job);
        } else {
            ledger.answered(worker, job, answer.get()).ifPresent(lands -> landed.accept(job, lands));
        }
    }

    /** What still runs is stopped; what did not land is open as before. */
    @Override
    public void close() {
        for (ComputeTaskFuture<byte[]> each : new ArrayList<>(running.values())) {
            try {
                each.cancel();
            } catch (IgniteException e) {
                // It ends with its driver.
            }
        }
        ledger.workers().forEach(ledger::left);
        node.close();
    }
}
