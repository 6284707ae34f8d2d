package evenrise.solver.grid;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * Who works on what. A job whose worker is lost is a suspect: it runs once more, where no other suspect does, so that a
 * second loss tells which it was. Then it is parked, and those beside it are innocent. Not for several threads.
 *
 * @param <W> names a worker
 */
public final class JobLedger<W> {
    private final Deque<GridJob> waiting = new ArrayDeque<>();
    private final Deque<GridJob> suspects = new ArrayDeque<>();
    private final Map<W, Map<String, GridJob>> running = new LinkedHashMap<>();
    private final Set<String> suspected = new HashSet<>();
    private final Set<String> open = new HashSet<>();
    private final Set<String> shortOfMemory = new HashSet<>();
    private final Map<W, Integer> slots = new LinkedHashMap<>();

    public JobLedger(List<GridJob> jobs) {
        jobs.stream().filter(job -> open.add(job.key())).forEach(waiting::add);
    }

    /** Whether every job has ended. */
    public boolean isDone() {
        return open.isEmpty();
    }

    public int openJobs() {
        return open.size();
    }

    /** A worker that may be given jobs from now on. */
    public void joined(W worker, int slotsOfIt) {
        slots.put(worker, slotsOfIt);
        running.putIfAbsent(worker, new LinkedHashMap<>());
    }

    /** Workers that may be given jobs, in the order in which they joined. */
    public List<W> workers() {
        return List.copyOf(slots.keySet());
    }

    public int allSlots() {
        return slots.values().stream().mapToInt(Integer::intValue).sum();
    }

    /** What a worker is to begin now; empty where it has no free slot, or nothing is left for it. */
    public Optional<GridJob> next(W worker) {
        Map<String, GridJob> has = running.get(worker);
        if (has == null || has.size() >= slots.getOrDefault(worker, 0)) {
            return Optional.empty();
        }
        boolean hasSuspect = has.keySet().stream().anyMatch(suspected::contains);
        Deque<GridJob> from = hasSuspect || suspects.isEmpty() ? waiting : suspects;
        GridJob next = from.poll();
        while (next != null && !open.contains(next.key())) {
            next = from.poll();
        }
        if (next != null) {
            has.put(next.key(), next);
        }
        return Optional.ofNullable(next);
    }

    /**
     * A worker has answered. A job that found too little memory beside others is tried once more.
     *
     * @return what is to land; empty where that has happened, or the job is tried again
     */
    public Optional<GridAnswer> answered(W worker, GridJob job, GridAnswer answer) {
        take(worker, job);
        if (!open.contains(job.key())) {
            return Optional.empty();
        }
        boolean isShort =
                answer instanceof GridAnswer.Failed failed && failed.cause() == GridAnswer.Cause.OUT_OF_MEMORY;
        if (isShort && shortOfMemory.add(job.key())) {
            waiting.add(job);
            return Optional.empty();
        }
        open.remove(job.key());
        return Optional.of(answer);
    }

    /** A worker gives a job back unfinished, since it is about to leave; it gets no more, and the job is no worse for it. */
    public void returned(W worker, GridJob job) {
        slots.remove(worker);
        take(worker, job);
        again(job);
    }

    /** A worker has left on its own account: what it had is no worse for it. */
    public void left(W worker) {
        slots.remove(worker);
        taken(worker).forEach(this::again);
    }

    /**
     * A worker is gone and has not said why.
     *
     * @return jobs that are parked for it
     */
    public List<GridJob> lost(W worker) {
        slots.remove(worker);
        List<GridJob> had = taken(worker);
        List<GridJob> parked = had.stream()
                .filter(job -> open.contains(job.key()) && suspected.contains(job.key()))
                .toList();
        parked.forEach(job -> open.remove(job.key()));
        if (parked.isEmpty()) {
            had.forEach(job -> suspected.add(job.key()));
        }
        had.forEach(this::again);
        return parked;
    }

    private List<GridJob> taken(W worker) {
        Map<String, GridJob> had = running.remove(worker);
        return had == null ? List.of() : new ArrayList<>(had.values());
    }

    private void take(W worker, GridJob job) {
        Map<String, GridJob> has = running.get(worker);
        if (has != null) {
            has.remove(job.key());
        }
    }

    private void again(GridJob job) {
        boolean isRunning = running.values().stream().anyMatch(has -> has.containsKey(job.key()));
        if (open.contains(job.key()) && !isRunning) {
            (suspected.contains(job.key()) ? suspects : waiting).addFirst(job);
        }
    }
}
