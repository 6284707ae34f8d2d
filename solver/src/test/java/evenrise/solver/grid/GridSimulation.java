package evenrise.solver.grid;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.PriorityQueue;
import java.util.Set;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;

/**
 * A driver and its workers as events in time, with the ledger that the program itself uses: jobs of drawn lengths, a driver
 * that handles one answer at a time, workers that are lost at a rate, noticed after a while and replaced.
 */
final class GridSimulation {
    /**
     * @param workers at any time, but for the while in which one is replaced
     * @param slots of each
     * @param jobs to be done
     * @param lengthsSeconds that jobs are drawn from
     * @param dispatchSeconds that the driver is busy with a job, there and back
     * @param lossesAnHour of each worker
     * @param noticeSeconds until a loss is known
     * @param replaceSeconds from then until another worker is there
     */
    record Case(
            int workers,
            int slots,
            int jobs,
            List<Double> lengthsSeconds,
            double dispatchSeconds,
            double lossesAnHour,
            double noticeSeconds,
            double replaceSeconds) {}

    /**
     * @param seconds from the first job to the last answer
     * @param efficiency work that landed, to what all slots could have done in that time
     * @param driverBusy part of the time
     * @param losses of workers
     * @param lostWork to all work done
     * @param parked jobs, each taken for the fault of two losses
     */
    record Outcome(double seconds, double efficiency, double driverBusy, int losses, double lostWork, int parked) {}

    private record Event(double at, long number, Runnable what) {}

    private final Case asked;
    private final RandomGenerator random;
    private final PriorityQueue<Event> events = new PriorityQueue<>((a, b) -> {
        int byTime = Double.compare(a.at(), b.at());
        return byTime != 0 ? byTime : Long.compare(a.number(), b.number());
    });
    private final JobLedger<Integer> ledger;
    private final Map<String, Double> lengths = new HashMap<>();
    private final Map<Integer, Map<String, Double>> begun = new HashMap<>();
    private final Set<Integer> dead = new HashSet<>();
    /** What waits for the driver: answers, and workers with free slots. */
    private final Deque<Runnable> waiting = new ArrayDeque<>();

    private boolean isBusy;
    private double now;
    private long numbers;
    private int born;
    private double busy;
    private double done;
    private double lost;
    private int losses;
    private int parked;
    private double end;

    private GridSimulation(Case asked, long seed) {
        this.asked = asked;
        this.random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        List<GridJob> jobs = new ArrayList<>();
        for (int i = 0; i < asked.jobs(); i++) {
            GridJob job = new GridJob(String.format("%064x", i), "job " + i, new byte[0]);
            lengths.put(
                    job.key(),
                    asked.lengthsSeconds()
                            .get(random.nextInt(asked.lengthsSeconds().size())));
            jobs.add(job);
        }
        ledger = new JobLedger<>(jobs);
    }

    static Outcome of(Case asked, long seed) {
        return new GridSimulation(asked, seed).run();
    }

    private Outcome run() {
        for (int i = 0; i < asked.workers(); i++) {
            joins();
        }
        while (!ledger.isDone()) {
            Event next = events.poll();
            now = next.at();
            next.what().run();
        }
        double all = end * asked.workers() * asked.slots();
        return new Outcome(end, done / all, busy / end, losses, lost / (lost + done), parked);
    }

    private void at(double seconds, Runnable what) {
        events.add(new Event(seconds, numbers++, what));
    }

    private void joins() {
        int worker = born++;
        begun.put(worker, new HashMap<>());
        ledger.joined(worker, asked.slots());
        if (asked.lossesAnHour() > 0) {
            at(now - Math.log(1 - random.nextDouble()) * 3600 / asked.lossesAnHour(), () -> dies(worker));
        }
        for (int i = 0; i < asked.slots(); i++) {
            driver(() -> gives(worker));
        }
    }

    /** The driver does one thing after another, each of which keeps it busy as long. */
    private void driver(Runnable what) {
        waiting.add(what);
        if (!isBusy) {
            handles();
        }
    }

    private void handles() {
        Runnable what = waiting.poll();
        isBusy = what != null;
        if (isBusy) {
            double half = asked.dispatchSeconds() / 2;
            busy += half;
            at(now + half, () -> {
                what.run();
                handles();
            });
        }
    }

    private void gives(int worker) {
        Optional<GridJob> next = dead.contains(worker) ? Optional.empty() : ledger.next(worker);
        next.ifPresent(job -> {
            begun.get(worker).put(job.key(), now);
            at(now + lengths.get(job.key()), () -> ends(worker, job));
        });
    }

    private void ends(int worker, GridJob job) {
        if (!dead.contains(worker)) {
            begun.get(worker).remove(job.key());
            driver(() -> lands(worker, job));
        }
    }

    private void lands(int worker, GridJob job) {
        if (ledger.answered(worker, job, new GridAnswer.Done(new byte[0])).isPresent()) {
            done += lengths.get(job.key());
            end = now;
        }
        if (!ledger.isDone()) {
            driver(() -> gives(worker));
        }
    }

    private void dies(int worker) {
        dead.add(worker);
        losses++;
        begun.get(worker).values().forEach(since -> lost += now - since);
        at(now + asked.noticeSeconds(), () -> {
            parked += ledger.lost(worker).size();
            end = Math.max(end, ledger.isDone() ? now : end);
            // What was lost goes to whoever is idle.
            ledger.workers().forEach(each -> driver(() -> gives(each)));
            at(now + asked.replaceSeconds(), this::joins);
        });
    }
}
