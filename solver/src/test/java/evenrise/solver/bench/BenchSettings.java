package evenrise.solver.bench;

import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What to measure, from system properties.
 *
 * @param projects files, datasets or drawn projects
 * @param seconds of each run: of the processor for each thread where methods are compared, else by the clock
 * @param threads searches of the engine, workers of the exact solver
 * @param lines folder of assembly lines
 */
record BenchSettings(
        List<String> modes,
        List<String> projects,
        double seconds,
        int threads,
        List<Long> seeds,
        List<Peer> peers,
        Optional<Path> lines,
        int mostTasks) {

    static BenchSettings ofSystemProperties() {
        return new BenchSettings(
                list("bench.mode", "peers"),
                list("bench.projects", "willow-chapel,lumen-theatre,meridian-hall,drawn:3,drawn:12"),
                Double.parseDouble(property("bench.seconds", "20")),
                Integer.parseInt(property(
                        "bench.threads", Integer.toString(Runtime.getRuntime().availableProcessors()))),
                list("bench.seeds", "1").stream().map(Long::valueOf).toList(),
                list("bench.methods", "engine,cp-sat,cp-sat-warm,annealing,late-acceptance,tempering,list").stream()
                        .map(Peer::of)
                        .toList(),
                Optional.of(property("bench.lines", ""))
                        .filter(folder -> !folder.isBlank())
                        .map(Path::of),
                Integer.parseInt(property("bench.tasks", "30")));
    }

    private static String property(String key, String byDefault) {
        String given = System.getProperty(key, "");
        return given.isBlank() || given.startsWith("${") ? byDefault : given;
    }

    private static List<String> list(String key, String byDefault) {
        return Arrays.stream(property(key, byDefault).split(","))
                .map(String::strip)
                .toList();
    }
}
