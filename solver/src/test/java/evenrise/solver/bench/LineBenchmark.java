package evenrise.solver.bench;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Proof;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.Progress;
import evenrise.solver.engine.search.Instances;
import evenrise.solver.engine.search.Planner;
import evenrise.solver.exact.ExactProver;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import java.util.stream.Stream;

/**
 * Assembly lines, least cycle time for a number of stations, against their published optima: a folder of JSON files with
 * {@code times}, {@code precedence} (pairs, from 1) and {@code optimum} (stations to cycle time).
 */
final class LineBenchmark {
    private static final double SAME = 1e-3;

    /** Held, because a logger that nobody holds forgets its level. */
    private static final Logger ROOT = Logger.getLogger("");

    private final BenchSettings settings;
    private final BenchTable table =
            new BenchTable("line", "tasks", "stations", "optimum", "ours", "reached s", "ended s", "bound", "proven");

    private int rows;
    private int reached;
    private int proven;

    private LineBenchmark(BenchSettings settings) {
        this.settings = settings;
    }

    static void print(BenchSettings settings) throws IOException {
        ROOT.setLevel(Level.OFF);
        new LineBenchmark(settings).run();
    }

    private void run() throws IOException {
        System.out.printf(
                Locale.ROOT,
                "Assembly lines: at most %.0f s each, %d searches beside a prover with as many workers.%n",
                settings.seconds(),
                settings.threads());
        table.head(System.out);
        ObjectMapper mapper = new ObjectMapper();
        try (Stream<Path> files = Files.list(settings.lines().orElseThrow())) {
            for (Path file : files.filter(each -> each.toString().endsWith(".json"))
                    .sorted()
                    .toList()) {
                JsonNode line = mapper.readTree(file.toFile());
                if (line.get("times").size() <= settings.mostTasks()) {
                    for (Map.Entry<String, JsonNode> each : line.get("optimum").properties()) {
                        row(
                                line,
                                Integer.parseInt(each.getKey()),
                                each.getValue().asInt());
                    }
                }
            }
        }
        System.out.printf("%d of %d reached, %d proven.%n", reached, rows, proven);
    }

    private void row(JsonNode line, int stations, int optimum) {
        Project project = Instances.assemblyLine(line.get("name").asText(), times(line), precedence(line), stations);
        List<Progress> seen = new ArrayList<>();
        PlanningRequest request = new PlanningRequest(
                project,
                Optional.empty(),
                new Budget.Time(Duration.ofMillis((long) (settings.seconds() * 1000))),
                settings.seeds().get(0),
                settings.threads());
        PlanningOutcome outcome = new Planner(
                        request,
                        progress -> {
                            synchronized (seen) {
                                seen.add(progress);
                            }
                        },
                        new ExactProver(settings.threads(), System.out::println))
                .plan();
        Plan plan = PlanFinisher.timed(project, outcome.plan());
        Verdict verdict = Referee.judge(project, plan);
        double ours = verdict.violations().isEmpty() ? verdict.metrics().objective() : Double.NaN;
        boolean isReached = ours <= optimum + SAME;
        boolean isProven = ours <= outcome.provenObjective() + Proof.PROVEN_AMPS;
        Optional<Double> when = seen.stream()
                .filter(each -> each.hardViolations() == 0 && each.objective() <= optimum + SAME)
                .map(Progress::elapsedSeconds)
                .findFirst();
        rows++;
        reached += isReached ? 1 : 0;
        proven += isProven ? 1 : 0;
        table.row(
                System.out,
                List.of(
                        line.get("name").asText(),
                        Integer.toString(project.loads().size()),
                        Integer.toString(stations),
                        Integer.toString(optimum),
                        PeerBenchmark.number(ours, 3),
                        when.map(seconds -> PeerBenchmark.number(seconds, 2)).orElse("-"),
                        PeerBenchmark.number(outcome.seconds(), 1),
                        PeerBenchmark.number(outcome.provenObjective(), 3),
                        isProven ? "yes" : "no"));
    }

    private static int[] times(JsonNode line) {
        JsonNode times = line.get("times");
        int[] all = new int[times.size()];
        for (int i = 0; i < all.length; i++) {
            all[i] = times.get(i).asInt();
        }
        return all;
    }

    private static int[][] precedence(JsonNode line) {
        JsonNode pairs = line.get("precedence");
        int[][] all = new int[pairs.size()][];
        for (int i = 0; i < all.length; i++) {
            all[i] = new int[] {pairs.get(i).get(0).asInt(), pairs.get(i).get(1).asInt()};
        }
        return all;
    }
}
