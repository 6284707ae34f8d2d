package evenrise.solver.grid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.CyclicBarrier;
import org.junit.jupiter.api.Test;

class LocalGridTest {
    private static GridJob job(int number) {
        return new GridJob(String.format("%064x", number), "job " + number, new byte[] {(byte) number});
    }

    private static List<GridJob> jobs(int count) {
        List<GridJob> jobs = new ArrayList<>();
        for (int i = 0; i < count; i++) {
            jobs.add(job(i));
        }
        return jobs;
    }

    private static Map<String, GridAnswer> landed(GridWork work, int slots, List<GridJob> jobs) {
        Map<String, GridAnswer> landed = new HashMap<>();
        new LocalGrid(work, slots)
                .run(
                        jobs,
                        (job, answer) ->
                                assertThat(landed.put(job.name(), answer)).isNull(),
                        new StopSignal());
        return landed;
    }

    @Test
    void landsEveryJobOnce() {
        Map<String, GridAnswer> landed = landed((input, stop) -> new byte[] {(byte) (input[0] + 1)}, 3, jobs(50));

        assertThat(landed).hasSize(50);
        assertThat(landed.get("job 7"))
                .isEqualTo(landed.get("job 7"))
                .isInstanceOfSatisfying(
                        GridAnswer.Done.class, done -> assertThat(done.output()).containsExactly(8));
    }

    @Test
    void worksInAsManySlotsAsItHas() {
        // Nobody passes the barrier before three are at it.
        CyclicBarrier barrier = new CyclicBarrier(3);
        Map<String, GridAnswer> landed = landed(
                (input, stop) -> {
                    try {
                        barrier.await();
                    } catch (Exception e) {
                        throw new IllegalStateException(e);
                    }
                    return input;
                },
                3,
                jobs(9));

        assertThat(landed.values()).allMatch(GridAnswer.Done.class::isInstance);
    }

    @Test
    void namesWhatAJobFailsAtAndGoesOn() {
        Map<String, GridAnswer> landed = landed(
                (input, stop) -> switch (input[0]) {
                    case 0 -> throw new GridWork.InvalidInput("no project");
                    case 1 -> throw new OutOfMemoryError("full");
                    case 2 -> throw new IllegalStateException("broken");
                    case 3 -> throw new StackOverflowError();
                    default -> input;
                },
                2,
                jobs(6));

        assertThat(landed.get("job 0")).isEqualTo(new GridAnswer.Failed(GridAnswer.Cause.INVALID, "no project"));
        assertThat(landed.get("job 1")).isEqualTo(new GridAnswer.Failed(GridAnswer.Cause.OUT_OF_MEMORY, "full"));
        assertThat(landed.get("job 2"))
                .isInstanceOfSatisfying(
                        GridAnswer.Failed.class,
                        failed -> assertThat(failed.words()).contains("broken"));
        assertThat(landed.get("job 3")).isInstanceOf(GridAnswer.Failed.class);
        assertThat(landed.get("job 5")).isInstanceOf(GridAnswer.Done.class);
    }

    @Test
    void endsSoonWhenItIsStoppedAndLandsNothingMore() {
        StopSignal stop = new StopSignal();
        List<String> landed = new ArrayList<>();
        GridWork work = (input, signal) -> {
            if (input[0] == 0) {
                return input;
            }
            CountDownLatch ended = new CountDownLatch(1);
            signal.during(
                    () -> {
                        try {
                            ended.await();
                        } catch (InterruptedException e) {
                            throw new IllegalStateException(e);
                        }
                    },
                    ended::countDown);
            return input;
        };

        new LocalGrid(work, 2)
                .run(
                        jobs(5),
                        (job, answer) -> {
                            landed.add(job.name());
                            stop.stop();
                        },
                        stop);

        assertThat(landed).containsExactly("job 0");
    }

    @Test
    void endsWhenAnAnswerCannotBeKept() {
        assertThatThrownBy(() -> new LocalGrid((input, stop) -> input, 2)
                        .run(
                                jobs(20),
                                (job, answer) -> {
                                    throw new IllegalStateException("disk full");
                                },
                                new StopSignal()))
                .hasMessage("disk full");
    }

    @Test
    void wantsASlot() {
        assertThatThrownBy(() -> new LocalGrid((input, stop) -> input, 0)).hasMessageContaining("at least 1");
    }
}
