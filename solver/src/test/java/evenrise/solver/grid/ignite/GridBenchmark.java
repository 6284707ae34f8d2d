package evenrise.solver.grid.ignite;

import evenrise.solver.grid.GridAnswer;
import evenrise.solver.grid.GridJob;
import evenrise.solver.grid.LocalGrid;
import evenrise.solver.grid.StopSignal;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.lang.management.ThreadMXBean;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.function.DoubleSupplier;
import java.util.stream.IntStream;

/**
 * What it costs that jobs are carried: the same equal jobs by a plain pool of threads, by the slots of one process, and by a
 * worker process on loopback, one after another, again and again; and what one job costs its driver.
 */
public final class GridBenchmark {
    private static final int JOBS = 24;
    private static final int ROUNDS = 3;
    private static final int SMALL_JOBS = 2_000;
    private static final int SLOTS = Runtime.getRuntime().availableProcessors();
    private static final long CALIBRATION = 200_000_000L;

    private GridBenchmark() {}

    /** @param seconds of the processor that a job takes */
    public static void print(double seconds) throws Exception {
        long iterations = iterations(seconds);
        System.out.printf(
                Locale.ROOT,
                "%d jobs of about %.1f s, %d side by side, in seconds of the clock, and of the processor in all processes:%n",
                JOBS,
                seconds,
                SLOTS);
        System.out.println("| round | plain pool | slots of this process | a worker process |");
        System.out.println("| --- | --- | --- | --- |");
        List<String> jobs = IntStream.range(0, JOBS)
                .mapToObj(i -> "spin:" + i + ":" + iterations)
                .toList();
        try (Fleet fleet = new Fleet(1, List.of())) {
            Fleet.Member worker = fleet.worker(0, "1", "-", SLOTS);
            worker.await("ready");
            Fleet.Member driver = fleet.driver("1", "-");
            driver.await("ready");
            carried(driver, jobs.subList(0, SLOTS));
            for (int round = 1; round <= ROUNDS; round++) {
                Took pool = Took.by(() -> pool(jobs), GridBenchmark::own);
                Took local = Took.by(() -> local(jobs), GridBenchmark::own);
                Took carried =
                        Took.by(() -> carried(driver, jobs), () -> own() + cpuSeconds(worker) + cpuSeconds(driver));
                System.out.printf(
                        Locale.ROOT, "| %d | %s | %s | %s |%n", round, pool, local.beside(pool), carried.beside(pool));
            }
            small(driver);
        }
    }

    /** @param clock in seconds, as the processor's */
    private record Took(double clock, double processor) {
        static Took by(Task task, DoubleSupplier processor) {
            double before = processor.getAsDouble();
            double clock = seconds(task);
            return new Took(clock, processor.getAsDouble() - before);
        }

        String beside(Took other) {
            return String.format(
                    Locale.ROOT,
                    "%s (%+.1f %%, %+.1f %%)",
                    this,
                    100 * (clock / other.clock - 1),
                    100 * (processor / other.processor - 1));
        }

        @Override
        public String toString() {
            return String.format(Locale.ROOT, "%.2f, %.2f", clock, processor);
        }
    }

    private static double own() {
        return ProcessHandle.current().info().totalCpuDuration().orElseThrow().toNanos() / 1e9;
    }

    private static void small(Fleet.Member driver) throws Exception {
        List<String> jobs =
                IntStream.range(0, SMALL_JOBS).mapToObj(i -> "echo:" + i + ":-").toList();
        carried(driver, jobs.subList(0, SMALL_JOBS / 4));
        double before = cpuSeconds(driver);
        double wall = seconds(() -> carried(driver, jobs));
        double after = cpuSeconds(driver);
        System.out.printf(
                Locale.ROOT,
                "%d jobs that do nothing: %.2f ms each of the clock, %.2f ms of the driver's processor, files among it.%n",
                SMALL_JOBS,
                1000 * wall / SMALL_JOBS,
                1000 * (after - before) / SMALL_JOBS);
    }

    private static double cpuSeconds(Fleet.Member member) {
        return member.cpu().toNanos() / 1e9;
    }

    /** How often a loop runs in so many seconds of a processor. */
    private static long iterations(double seconds) {
        FleetWork.spin(CALIBRATION);
        ThreadMXBean threads = ManagementFactory.getThreadMXBean();
        long before = threads.getCurrentThreadCpuTime();
        FleetWork.spin(CALIBRATION);
        double taken = (threads.getCurrentThreadCpuTime() - before) / 1e9;
        return (long) (CALIBRATION * seconds / taken);
    }

    private static double seconds(Task task) {
        long start = System.nanoTime();
        try {
            task.run();
        } catch (Exception e) {
            throw new IllegalStateException(e);
        }
        return (System.nanoTime() - start) / 1e9;
    }

    private interface Task {
        void run() throws Exception;
    }

    private static void pool(List<String> jobs) throws Exception {
        ExecutorService threads = Executors.newFixedThreadPool(SLOTS);
        List<Future<GridAnswer>> answers = new ArrayList<>();
        for (String each : jobs) {
            GridJob job = FleetMember.job(each);
            answers.add(threads.submit(() -> GridAnswer.of(new FleetWork(any -> {}), job.input(), new StopSignal())));
        }
        for (Future<GridAnswer> answer : answers) {
            answer.get();
        }
        threads.shutdown();
    }

    private static void local(List<String> jobs) {
        new LocalGrid(new FleetWork(any -> {}), SLOTS)
                .run(jobs.stream().map(FleetMember::job).toList(), (job, answer) -> {}, new StopSignal());
    }

    private static void carried(Fleet.Member driver, List<String> jobs) throws IOException, InterruptedException {
        Path folder = Files.createTempDirectory("grid-bench");
        driver.tell(folder + " " + String.join(" ", jobs));
        driver.await("run ended");
    }
}
