package evenrise.solver.hardship;

import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;

/** Reads neighbours of valid files, one a number, the same each time. */
final class ReaderRun {
    private static final com.sun.management.ThreadMXBean THREADS =
            (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    private static final int MOST_SHOWN = 1500;

    private final Path folder;
    private final Map<Source, List<byte[]>> seeds = new LinkedHashMap<>();
    private final Map<String, String> faults = new LinkedHashMap<>();
    long mostAllocated;
    long mostCpuNanos;
    String slowest = "";
    int accepted;

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
        try {
            List<String> messages = source.read(bytes, name, folder);
            accepted += messages.isEmpty() ? 1 : 0;
            List<Fault> inMessages = new ArrayList<>();
            messages.forEach(each -> Fault.in(each).ifPresent(inMessages::add));
            fault = inMessages.stream().findFirst();
        } catch (RuntimeException | Error e) {
            fault = Optional.of(Fault.of(e));
        }
        long allocated = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId()) - before;
        long nanos = THREADS.getCurrentThreadCpuTime() - cpu;
        mostAllocated = Math.max(mostAllocated, allocated);
        if (nanos > mostCpuNanos) {
            mostCpuNanos = nanos;
            slowest = source + " " + number + " " + bytes.length + " bytes, " + allocated / 1000000 + " MB allocated";
        }
        if (fault.isPresent()) {
            String shown = fault.get().what();
            if (faults.putIfAbsent(source + ": " + fault.get().kind(), "input " + number + ": "
                            + shown.substring(0, Math.min(MOST_SHOWN, shown.length())))
                    == null) {
                Files.write(folder.resolve(source + "-" + number + "-" + name), bytes);
            }
        }
    }

    /** Long run: {@code FOLDER FIRST COUNT [SOURCE]}. */
    public static void main(String[] arguments) throws IOException {
        ReaderRun run = new ReaderRun(Files.createDirectories(Path.of(arguments[0])));
        long first = Long.parseLong(arguments[1]);
        long count = Long.parseLong(arguments[2]);
        List<Source> sources =
                arguments.length > 3 ? List.of(Source.valueOf(arguments[3])) : List.of(Source.values());
        long begin = System.nanoTime();
        for (long i = first; i < first + count; i++) {
            Source source = sources.get((int) (i % sources.size()));
            int before = run.faults.size();
            run.trial(source, i);
            if (run.faults.size() > before) {
                System.out.println(List.copyOf(run.faults.entrySet()).get(before));
            }
            if ((i + 1 - first) % 5000 == 0) {
                System.out.printf("%d read, %d without a word, %.0f s, slowest %.2f s (%s)%n", i + 1 - first, run.accepted, (System.nanoTime() - begin) / 1e9, run.mostCpuNanos / 1e9, run.slowest);
            }
        }
        System.out.printf("%d read, %d without a word, %.0f s, slowest %.2f s (%s), most allocated %d MB%n", count, run.accepted, (System.nanoTime() - begin) / 1e9, run.mostCpuNanos / 1e9, run.slowest, run.mostAllocated / 1000000);
    }
}
