package evenrise.solver.grid;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.random.RandomGenerator;
import java.util.random.RandomGeneratorFactory;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class JobLedgerTest {
    private static final GridAnswer DONE = new GridAnswer.Done(new byte[0]);
    private static final GridAnswer SHORT = new GridAnswer.Failed(GridAnswer.Cause.OUT_OF_MEMORY, "heap");

    private static final List<GridJob> JOBS = IntStream.range(0, 100)
            .mapToObj(number -> new GridJob(String.format("%064x", number), "job " + number, new byte[0]))
            .toList();

    private static GridJob job(int number) {
        return JOBS.get(number);
    }

    private static JobLedger<String> ledger(int jobs) {
        List<GridJob> all = new ArrayList<>();
        for (int i = 0; i < jobs; i++) {
            all.add(job(i));
        }
        return new JobLedger<>(all);
    }

    @Test
    void givesAWorkerAsManyJobsAsItHasSlots() {
        JobLedger<String> ledger = ledger(3);
        ledger.joined("a", 2);

        assertThat(ledger.next("a")).contains(job(0));
        assertThat(ledger.next("a")).contains(job(1));
        assertThat(ledger.next("a")).isEmpty();

        ledger.answered("a", job(0), DONE);

        assertThat(ledger.next("a")).contains(job(2));
        assertThat(ledger.next("stranger")).isEmpty();
    }

    @Test
    void takesTheFirstAnswerOfAJobAlone() {
        JobLedger<String> ledger = ledger(1);
        ledger.joined("a", 1);
        ledger.joined("b", 1);
        ledger.next("a");
        ledger.lost("a");
        ledger.next("b");

        assertThat(ledger.answered("b", job(0), DONE)).contains(DONE);
        assertThat(ledger.answered("a", job(0), DONE)).isEmpty();
        assertThat(ledger.isDone()).isTrue();
    }

    @Test
    void givesAJobThatAnsweredLateToNobodyElse() {
        JobLedger<String> ledger = ledger(1);
        ledger.joined("a", 1);
        ledger.joined("b", 1);
        ledger.next("a");
        ledger.lost("a");

        assertThat(ledger.answered("a", job(0), DONE)).contains(DONE);
        assertThat(ledger.next("b")).isEmpty();
    }

    @Test
    void parksAJobThatTakesTwoWorkersAndNoOther() {
        JobLedger<String> ledger = ledger(4);
        ledger.joined("a", 2);
        ledger.next("a");
        ledger.next("a");

        assertThat(ledger.lost("a")).isEmpty();
        ledger.joined("b", 3);
        GridJob suspect = ledger.next("b").orElseThrow();
        ledger.next("b");
        ledger.next("b");

        assertThat(suspect).isEqualTo(job(1));
        assertThat(ledger.lost("b")).containsExactly(suspect);
        assertThat(ledger.openJobs()).isEqualTo(3);
    }

    @Test
    void runsTwoSuspectsApart() {
        JobLedger<String> ledger = ledger(2);
        ledger.joined("a", 2);
        ledger.next("a");
        ledger.next("a");
        ledger.lost("a");
        ledger.joined("b", 2);
        ledger.joined("c", 2);

        assertThat(ledger.next("b")).isPresent();
        assertThat(ledger.next("b")).isEmpty();
        assertThat(ledger.next("c")).isPresent();
    }

    @Test
    void holdsNothingAgainstJobsOfAWorkerThatLeaves() {
        JobLedger<String> ledger = ledger(1);
        for (String worker : List.of("a", "b", "c")) {
            ledger.joined(worker, 1);
            ledger.next(worker);
            ledger.left(worker);
        }
        ledger.joined("d", 1);
        ledger.next("d");

        assertThat(ledger.lost("d")).isEmpty();
        assertThat(ledger.isDone()).isFalse();
    }

    @Test
    void givesNothingMoreToAWorkerThatGivesAJobBack() {
        JobLedger<String> ledger = ledger(1);
        ledger.joined("a", 1);
        ledger.next("a");

        ledger.returned("a", job(0));

        assertThat(ledger.next("a")).isEmpty();
        assertThat(ledger.workers()).isEmpty();
        ledger.joined("b", 1);
        assertThat(ledger.next("b")).contains(job(0));
    }

    @Test
    void triesAJobThatWasShortOfMemoryOnceMore() {
        JobLedger<String> ledger = ledger(1);
        ledger.joined("a", 1);
        ledger.next("a");

        assertThat(ledger.answered("a", job(0), SHORT)).isEmpty();
        assertThat(ledger.next("a")).contains(job(0));
        assertThat(ledger.answered("a", job(0), SHORT)).contains(SHORT);
    }

    @Test
    void takesTwoJobsOfOneKeyForOne() {
        JobLedger<String> ledger = new JobLedger<>(List.of(job(1), job(1)));

        assertThat(ledger.openJobs()).isEqualTo(1);
    }

    /** Whatever happens to workers, each job ends once; the one that kills takes two workers at most. */
    @ParameterizedTest
    @ValueSource(ints = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void endsEveryJobOnceHoweverWorkersComeAndGo(int seed) {
        RandomGenerator random = RandomGeneratorFactory.of("L64X128MixRandom").create(seed);
        int jobs = 60;
        GridJob killer = job(random.nextInt(jobs));
        JobLedger<String> ledger = ledger(jobs);
        Map<String, Integer> ended = new TreeMap<>();
        Map<String, List<GridJob>> running = new TreeMap<>();
        int killed = 0;
        int born = 0;
        while (!ledger.isDone()) {
            if (running.size() < 3) {
                String worker = "w" + born++;
                running.put(worker, new ArrayList<>());
                ledger.joined(worker, 1 + random.nextInt(3));
            }
            for (String worker : List.copyOf(running.keySet())) {
                Optional<GridJob> next = ledger.next(worker);
                next.ifPresent(running.get(worker)::add);
                List<GridJob> has = running.get(worker);
                if (has.contains(killer)) {
                    killed++;
                    ledger.lost(worker).forEach(parked -> ended.merge(parked.name(), 1, Integer::sum));
                    running.remove(worker);
                } else if (random.nextInt(20) == 0) {
                    ledger.left(worker);
                    running.remove(worker);
                } else if (!has.isEmpty()) {
                    GridJob done = has.remove(random.nextInt(has.size()));
                    ledger.answered(worker, done, DONE).ifPresent(any -> ended.merge(done.name(), 1, Integer::sum));
                }
            }
        }

        assertThat(ended).hasSize(jobs);
        assertThat(ended.values()).containsOnly(1);
        assertThat(killed).isEqualTo(2);
    }
}
