package evenrise.solver.hardship;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Random;

/** Reads neighbours of valid files, one a number, the same each time. */
final class ReaderRun {
    private static final com.sun.management.ThreadMXBean THREADS =
            (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    private static final int MOST_SHOWN = 1500;

    /** What reading an input of at most a megabyte may allocate in all; most of it lives for a moment only. */
    private static final long MOST_ALLOCATED_BYTES = 1L << 30;

    private final Path folder;
    private final Map<Source, List<byte[]>> seeds = new LinkedHashMap<>();
    private final Map<String, String> faults = new LinkedHashMap<>();
    private long mostAllocated;
    private long mostCpuNanos;
    private String slowest = "";
    private int accepted;
    private int read;

    ReaderRun(Path folder) {
        this.folder = folder;
        for (Source each : Source.values()) {
            seeds.put(each, each.seeds());
        }
    }

    /** Kind of fault to the first example of it. */
    Map<String, String> faults() {
        return faults;
    }

    void trial(Source source, long number) throws IOException {
        Random chance = new Random(number * 31 + source.ordinal());
        List<byte[]> of = seeds.get(source);
        byte[] seed = of.get(chance.nextInt(of.size()));
        byte[] bytes = source.neighbour(seed, chance);
        String name = List.of("f.json", "f.yaml", "f").get(chance.nextInt(3));
        read(source, bytes, name, number);
    }

    void read(Source source, byte[] bytes, String name, long number) throws IOException {
        long before = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId());
        long cpu = THREADS.getCurrentThreadCpuTime();
        Optional<Fault> fault = Optional.empty();
        List<String> messages = List.of();
        try {
            messages = source.read(bytes, name, folder);
        } catch (RuntimeException | Error e) {
            fault = Optional.of(Fault.of(e));
        }
        long allocated = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId()) - before;
        long nanos = THREADS.getCurrentThreadCpuTime() - cpu;
        accepted += fault.isEmpty() && messages.isEmpty() ? 1 : 0;
        if (fault.isEmpty()) {
            fault = messages.stream().flatMap(each -> Fault.in(each).stream()).findFirst();
        }
        mostAllocated = Math.max(mostAllocated, allocated);
        read++;
        if (fault.isEmpty() && allocated > MOST_ALLOCATED_BYTES && bytes.length <= 1 << 20) {
            fault = Optional.of(new Fault("takes too much", (allocated >> 20) + " MB for " + bytes.length + " bytes"));
        }
        if (nanos > mostCpuNanos) {
            mostCpuNanos = nanos;
            slowest = source + " " + number + " " + bytes.length + " bytes, " + (allocated >> 20) + " MB allocated";
        }
        if (fault.isPresent()) {
            String shown = fault.get().what();
            if (faults.putIfAbsent(
                            source + ": " + fault.get().kind(),
                            "input " + number + ": " + shown.substring(0, Math.min(MOST_SHOWN, shown.length())))
                    == null) {
                Files.write(folder.resolve(source + "-" + number + "-" + name), bytes);
            }
        }
    }

    /** Neighbours by their numbers, of one kind of file after the other. */
    void trials(long first, long count, List<Source> sources) throws IOException {
        for (long number = first; number < first + count; number++) {
            trial(sources.get((int) (number % sources.size())), number);
        }
    }

    int accepted() {
        return accepted;
    }

    /** Figures of the run; times are this machine's. */
    String summary() {
        return String.format(
                Locale.ROOT,
                "%d read, %d of them fine, %d kinds of faults; most processor time of one: %.2f s (%s); most allocated"
                        + " for one: %d MB%n",
                read,
                accepted,
                faults.size(),
                mostCpuNanos / 1e9,
                slowest,
                mostAllocated >> 20);
    }
}
