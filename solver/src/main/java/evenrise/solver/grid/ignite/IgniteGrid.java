package evenrise.solver.grid.ignite;

import evenrise.solver.grid.GridAnswer;
import evenrise.solver.grid.GridJob;
import evenrise.solver.grid.GridSite;
import evenrise.solver.grid.GridUnavailable;
import evenrise.solver.grid.JobLedger;
import evenrise.solver.grid.StopSignal;
import evenrise.solver.grid.WorkGrid;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BiConsumer;
import java.util.function.Consumer;

/** Slots of every worker that is there, or comes; a job goes where a slot is free. */
final class IgniteGrid implements WorkGrid {
    private final GridSite site;
    private final Consumer<String> said;
    private volatile int mostSlots;

    IgniteGrid(GridSite site, Consumer<String> said) {
        this.site = site;
        this.said = said;
    }

    @Override
    public int slots() {
        return mostSlots;
    }

    /** @throws evenrise.solver.grid.GridUnavailable where there is no worker, or none any more */
    @Override
    public void run(List<GridJob> jobs, BiConsumer<GridJob, GridAnswer> landed, StopSignal stop) {
        JobLedger<UUID> ledger = new JobLedger<>(jobs);
        while (!ledger.isDone() && !stop.hasCome()) {
            // Joined anew where all workers were lost, or this process was away for long: those that come do not find
            // it.
            Optional<DriverSession> joined = joined(ledger, landed, stop);
            if (joined.isPresent()) {
                try (DriverSession session = joined.get()) {
                    session.run(stop);
                    mostSlots = Math.max(mostSlots, session.mostSlots());
                }
            }
        }
    }

    /** Empty where the stop came meanwhile. */
    private Optional<DriverSession> joined(
            JobLedger<UUID> ledger, BiConsumer<GridJob, GridAnswer> landed, StopSignal stop) {
        AtomicReference<DriverSession> session = new AtomicReference<>();
        try {
            stop.during(
                    () -> session.set(new DriverSession(site, ledger, landed, said)),
                    Thread.currentThread()::interrupt);
        } catch (GridUnavailable e) {
            if (!stop.hasCome()) {
                throw e;
            }
        }
        if (stop.hasCome()) {
            // The interruption has done what it was for.
            Thread.interrupted();
        }
        return Optional.ofNullable(session.get());
    }
}
