package evenrise.solver.hardship;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import evenrise.solver.cli.WholeProgram;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Random;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Takes neighbours of valid projects, plans and scripts through every command. */
final class PathRun {
    private static final com.sun.management.ThreadMXBean THREADS =
            (com.sun.management.ThreadMXBean) ManagementFactory.getThreadMXBean();
    private static final Pattern OUR_FRAME = Pattern.compile("at (evenrise\\.[\\w.$]+\\([\\w.]+:\\d+\\))");
    /** What no figure is. */
    private static final Pattern NO_FIGURE = Pattern.compile("\\bNaN\\b|Infinity|\\bnull (A|s|V|%)|∞");

    private final Path folder;
    private final ObjectMapper json = new ObjectMapper();
    private final List<JsonNode> projects = new ArrayList<>();
    private final Schema projectSchema = Schema.of("project");
    private final Schema planSchema = Schema.of("plan");
    private final Schema scriptSchema = Schema.of("script");
    private final Map<String, String> faults = new LinkedHashMap<>();
    private final Map<JsonNode, Long> usual = new IdentityHashMap<>();
    private long number;
    private int walks;
    private int planned;
    private long commands;
    private long mostNanos;
    private long allocated;
    private String slowest = "";

    PathRun(Path folder) throws IOException {
        this.folder = folder;
        for (String each : List.of(
                "quay-works/project.json",
                "tin-shed/project.json",
                "copper-mill/project.json",
                "willow-chapel/project.json",
                "lantern-yard/project.json",
                "overloaded-club/project.json")) {
            projects.add(json.readTree(Source.dataset(each)));
        }
        projects.add(json.readTree(SMALL));
    }

    /**
     * So many times what its valid neighbour allocates may a file allocate on its way, and with the square of its size,
     * as pairs of loads are looked at.
     */
    private static final int MOST_TIMES = 20;

    /** What happens in the hard cases. */
    static final String DAY = """
        {"format": "evenrise-script/1", "name": "day", "events": [
         {"at_s": 0, "what": "system-on"}, {"at_s": 60, "what": "emergency"}, {"at_s": 90, "what": "release"},
         {"at_s": 200, "what": "mains", "percent": 0}, {"at_s": 201, "what": "mains", "percent": 100}]}
        """;

    static final String SMALL = """
        {"format": "evenrise-project/1", "name": "Small hall",
         "supply": {"system": "three-phase", "line_to_neutral_v": 120, "frequency_hz": 60, "rated_a": 400},
         "panels": [{"id": "P1", "slots": 12, "rated_a": 225}],
         "board_types": [{"id": "eight", "outputs": 8, "start_delay_s": [0, 0.5], "step_s": [0.25, 0.5], "price": 0}],
         "boards": [{"id": "B1", "type": "eight", "panel": "P1"}],
         "catalogue": {"currency": "EUR", "panel_types": [{"id": "T12", "slots": 12, "rated_a": 225, "price": 900}]},
         "loads": [
          {"id": "dsp", "role": "processing", "breaker_a": 20, "running_a": 10, "settle_s": 2},
          {"id": "amp", "name": "Sub left", "role": "amplifier", "breaker_a": 32, "running_a": 20, "idle_a": 10, "inrush_peak_a": 100},
          {"id": "fan", "role": "auxiliary", "poles": 3, "breaker_a": 32, "running_a": 20}]}
        """;

    Map<String, String> faults() {
        return faults;
    }

    void trial(long which) throws IOException {
        number = which;
        Random chance = new Random(which * 7 + 3);
        long startedCpu = THREADS.getCurrentThreadCpuTime();
        JsonNode seed = projects.get(chance.nextInt(projects.size()));
        boolean isPlanMutated = chance.nextInt(4) == 0;
        JsonNode project =
                isPlanMutated ? seed : new TreeMutator(projectSchema, chance.nextInt(8) > 0, chance).mutated(seed);
        walk(
                JsonText.of(project),
                plan -> isPlanMutated ? mutatedPlan(plan, chance) : plan,
                JsonText.of(script(chance)),
                chance);
        long nanos = THREADS.getCurrentThreadCpuTime() - startedCpu;
        long took = allocated;
        double larger = Math.max(
                1, (double) JsonText.of(project).length() / JsonText.of(seed).length());
        if (took > MOST_TIMES * larger * larger * usual(seed)) {
            fault("takes many times what its neighbour takes", (took >> 20) + " MB instead of " + (usual(seed) >> 20));
        }
        if (nanos > mostNanos) {
            mostNanos = nanos;
            slowest = "input " + which;
        }
    }

    /** What the valid neighbour allocates on its way, in bytes; printed documents left out. */
    private long usual(JsonNode seed) throws IOException {
        Long known = usual.get(seed);
        if (known == null) {
            walk(JsonText.of(seed), plan -> plan, JsonText.of(json.readTree(DAY)), new Random(1));
            known = allocated;
            usual.put(seed, known);
        }
        return known;
    }

    private String mutatedPlan(String plan, Random chance) {
        try {
            return JsonText.of(new TreeMutator(planSchema, chance.nextInt(8) > 0, chance).mutated(json.readTree(plan)));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /**
     * From a project to everything that is made of it.
     *
     * @param changed what becomes of the plan on the way
     */
    void walk(String project, UnaryOperator<String> changed, String script, Random chance) throws IOException {
        clear();
        walks++;
        allocated = 0;
        Path file = Files.write(at("p.json"), project.getBytes(StandardCharsets.UTF_8));
        Path plan = at("p.plan.json");
        int code = run(
                "plan",
                file,
                "-o",
                plan,
                "--moves",
                "40",
                "--threads",
                "1",
                chance.nextBoolean() ? "--quiet" : "--strict");
        if (code == 3) {
            return;
        }
        planned++;
        if (!Files.exists(plan)) {
            fault("plan without a plan", "exit " + code);
            return;
        }
        String found = Files.readString(plan);
        String told = changed.apply(found);
        Files.write(plan, told.getBytes(StandardCharsets.UTF_8));
        code = run("audit", file, plan, chance.nextBoolean() ? "--all" : "--json");
        if (code == 3) {
            if (told.equals(found)) {
                fault("our own plan is refused", lastErr);
            }
            return;
        }
        run("audit", file, plan, "--next-load", chance.nextBoolean() ? "16" : "99999:3");
        run("audit", file, plan, chance.nextBoolean() ? "--guessed" : "--typical-inrush");
        run("bill", file, plan, "--csv", at("bill.csv"));
        String formats = chance.nextInt(12) == 0 ? "html,pdf,xlsx,csv" : "html,xlsx,csv";
        run("report", file, plan, "-o", at("doc"), "--format", formats, "--date", "2026-01-02", "--trials", "20");
        run("rehearse", file, plan, "--trace", at(chance.nextBoolean() ? "t.csv" : "t.json"));
        Files.write(at("s.json"), script.getBytes(StandardCharsets.UTF_8));
        run("rehearse", file, plan, "--script", at("s.json"), "--all");
        run("rehearse", file, plan, "--trials", "50", "--threads", "1");
        run("rework", file, plan, "-o", at("rw"), "--moves", "40", "--threads", "1", "--quiet");
        if (project.contains("\"catalogue\"") && chance.nextInt(3) == 0) {
            run(
                    "compare",
                    file,
                    "-o",
                    at("cmp"),
                    "--moves",
                    "20",
                    "--threads",
                    "1",
                    "--panels",
                    "1..2",
                    "--boards",
                    "1..2");
        }
    }

    private JsonNode script(Random chance) throws IOException {
        StringBuilder script = new StringBuilder("{\"format\": \"evenrise-script/1\", \"name\": \"x\", \"events\": [");
        double at = 0;
        String[] words = {
            "\"system-on\"}",
            "\"system-off\"}",
            "\"emergency\"}",
            "\"release\"}",
            "\"mains\", \"percent\": 0}",
            "\"mains\", \"percent\": 100}",
            "\"lock\"}",
            "\"unlock\"}",
            "\"mains\", \"percent\": 70, \"phases\": [\"A\"]}"
        };
        int many = 1 + chance.nextInt(8);
        for (int i = 0; i < many; i++) {
            at += chance.nextInt(3) == 0 ? chance.nextDouble() * 1e-3 : chance.nextInt(60);
            script.append(i == 0 ? "" : ", ")
                    .append("{\"at_s\": ")
                    .append(at)
                    .append(", \"what\": ")
                    .append(words[chance.nextInt(words.length)]);
        }
        JsonNode tree = json.readTree(script.append("]}").toString());
        return chance.nextInt(3) == 0
                ? tree
                : new TreeMutator(scriptSchema, chance.nextInt(4) > 0, chance).mutated(tree);
    }

    private String lastErr = "";

    private Path at(String name) {
        return folder.resolve(name);
    }

    private int run(Object... arguments) throws IOException {
        String[] words = Stream.concat(Stream.of(arguments).map(Object::toString), Stream.of("--debug"))
                .toArray(String[]::new);
        long before = THREADS.getThreadAllocatedBytes(Thread.currentThread().getId());
        WholeProgram.Ended ended = WholeProgram.run(number % 50 == 49, words);
        allocated += THREADS.getThreadAllocatedBytes(Thread.currentThread().getId()) - before;
        commands++;
        lastErr = ended.err();
        if (ended.code() == 1) {
            Matcher frame = OUR_FRAME.matcher(ended.err());
            fault(words[0] + " " + (frame.find() ? frame.group(1) : ""), ended.err());
        } else {
            Fault.in(ended.err()).ifPresent(each -> fault(words[0] + " names in a message", each.what()));
            Matcher none = NO_FIGURE.matcher(ended.out());
            if (none.find()) {
                int from = Math.max(0, none.start() - 200);
                fault(
                        words[0] + " shows what is no figure",
                        ended.out().substring(from, Math.min(ended.out().length(), none.end() + 100)));
            }
        }
        if (ended.code() == 2 || ended.code() == 5) {
            fault(words[0] + " ends with " + ended.code(), ended.err());
        }
        return ended.code();
    }

    private void fault(String kind, String what) {
        String shown = "input " + number + ": " + what.substring(0, Math.min(2500, what.length()));
        if (faults.putIfAbsent(kind, shown) == null) {
            try {
                for (String each : List.of("p.json", "p.plan.json", "s.json")) {
                    if (Files.exists(folder.resolve(each))) {
                        Files.copy(
                                folder.resolve(each),
                                Files.createDirectories(folder.resolveSibling(folder.getFileName() + "-found"))
                                        .resolve(number + "." + each),
                                StandardCopyOption.REPLACE_EXISTING);
                    }
                }
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }

    private void clear() throws IOException {
        Files.createDirectories(folder);
        try (Stream<Path> all = Files.walk(folder)) {
            for (Path each : all.sorted(Comparator.reverseOrder()).toList()) {
                if (!each.equals(folder)) {
                    Files.delete(each);
                }
            }
        }
    }

    void trials(long first, long count) throws IOException {
        for (long each = first; each < first + count; each++) {
            trial(each);
        }
    }

    int planned() {
        return planned;
    }

    /** Figures of the run; times are this machine's. */
    String summary() {
        return String.format(
                Locale.ROOT,
                "%d walks, %d of them with a plan, %d commands, %d kinds of faults; most processor time of one walk:"
                        + " %.2f s (%s)%n",
                walks,
                planned,
                commands,
                faults.size(),
                mostNanos / 1e9,
                slowest);
    }
}
