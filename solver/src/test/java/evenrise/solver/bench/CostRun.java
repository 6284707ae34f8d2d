package evenrise.solver.bench;

import evenrise.model.project.Project;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.Planner;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * Measures one search of one project. Arguments: project, seconds, seed. Prints loads, moves a second, peak of resident
 * memory in MB and seconds to the first plan that keeps every rule.
 */
final class CostRun {
    /** Held, because a logger that nobody holds forgets its level. */
    private static final Logger ROOT = Logger.getLogger("");

    private CostRun() {}

    public static void main(String[] arguments) throws IOException {
        ROOT.setLevel(Level.OFF);
        Project project = BenchProjects.read(arguments[0]);
        double seconds = Double.parseDouble(arguments[1]);
        long seed = Long.parseLong(arguments[2]);
        PlanningOutcome half = search(project, seconds / 2, seed);
        PlanningOutcome warm = search(project, seconds / 2, seed);
        PlanningOutcome start = search(project, 0.001, seed);
        double searching = warm.seconds() - start.seconds();
        System.out.println(project.loads().size());
        System.out.println(warm.moves() / searching);
        System.out.println(peakMegabytes());
        System.out.println(
                half.firstFeasibleSeconds().isPresent()
                        ? String.format(
                                Locale.ROOT, "%.2f", half.firstFeasibleSeconds().getAsDouble())
                        : "none");
        System.exit(0);
    }

    private static PlanningOutcome search(Project project, double seconds, long seed) {
        Budget budget = new Budget.Time(Duration.ofMillis((long) (seconds * 1000)));
        return new Planner(new PlanningRequest(project, Optional.empty(), budget, seed, 1), progress -> {}).plan();
    }

    /** As the system counts it, where it does; with a heap that grows at will, it is more than what is needed. */
    private static String peakMegabytes() throws IOException {
        Path status = Path.of("/proc/self/status");
        List<String> lines = Files.exists(status) ? Files.readAllLines(status) : List.of();
        return lines.stream()
                .filter(line -> line.startsWith("VmHWM:"))
                .map(line -> Long.toString(Long.parseLong(line.replaceAll("\\D", "")) / 1024))
                .findFirst()
                .orElse("-");
    }
}
