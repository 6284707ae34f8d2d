package evenrise.solver.grid;

import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.function.BiConsumer;

/** Slots of this process: a thread each, which takes the next job when it has done one. */
public final class LocalGrid implements WorkGrid {
    private final GridWork work;
    private final int slots;

    /** What a slot says: an answer of a job, or that it takes no more. */
    private record Word(GridJob job, GridAnswer answer) {
        static final Word END = new Word(null, null);
    }

    public LocalGrid(GridWork work, int slots) {
        if (slots < 1) {
            throw new IllegalArgumentException("slots is " + slots + ", expected at least 1");
        }
        this.work = work;
        this.slots = slots;
    }

    @Override
    public int slots() {
        return slots;
    }

    @Override
    public void run(List<GridJob> jobs, BiConsumer<GridJob, GridAnswer> landed, StopSignal stop) {
        BlockingQueue<GridJob> waiting = new LinkedBlockingQueue<>(jobs);
        BlockingQueue<Word> said = new LinkedBlockingQueue<>();
        List<Thread> threads = new ArrayList<>();
        int running = Math.min(slots, jobs.size());
        for (int i = 0; i < running; i++) {
            Thread thread = new Thread(() -> takeTurns(waiting, said, stop), "slot-" + (i + 1));
            thread.setDaemon(true);
            threads.add(thread);
        }
        threads.forEach(Thread::start);
        try {
            for (int ended = 0; ended < running; ) {
                Word word = said.take();
                if (word == Word.END) {
                    ended++;
                } else if (!stop.hasCome()) {
                    landed.accept(word.job(), word.answer());
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            stop.stop();
        } catch (RuntimeException e) {
            stop.stop();
            throw e;
        }
    }

    private void takeTurns(BlockingQueue<GridJob> waiting, BlockingQueue<Word> said, StopSignal stop) {
        try {
            for (GridJob job = waiting.poll(); job != null && !stop.hasCome(); job = waiting.poll()) {
                said.add(new Word(job, GridAnswer.of(work, job.input(), stop)));
            }
        } finally {
            said.add(Word.END);
        }
    }
}
