package evenrise.solver.bench;

import com.sun.management.OperatingSystemMXBean;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Planner;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * Measures searches of one project. Arguments: project, seconds, seed. Prints loads, moves a second from the first plan,
 * the same from a plan that breaks no rule, peak of resident memory in MB and seconds to the first plan that keeps every
 * rule. Seconds of moves are the processor's, which other work on the machine takes nothing from.
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
        Optional<Plan> kept = BenchProjects.layout(arguments[0]);
        PlanningOutcome half = search(project, Optional.empty(), seconds / 2, seed);
        System.out.println(project.loads().size());
        System.out.println(rate(project, Optional.empty(), seconds / 2, seed));
        System.out.println(kept.isPresent() ? rate(project, kept, seconds / 2, seed) : Double.NaN);
        System.out.println(peakMegabytes());
        System.out.println(
                half.firstFeasibleSeconds().isPresent()
                        ? String.format(
                                Locale.ROOT, "%.2f", half.firstFeasibleSeconds().getAsDouble())
                        : "none");
        System.exit(0);
    }

    /** Moves by processor time, less what it takes to compile the project and to begin. */
    private static double rate(Project project, Optional<Plan> from, double seconds, long seed) {
        double before = processorSeconds();
        PlanningOutcome start = search(project, from, 0.001, seed);
        double between = processorSeconds();
        PlanningOutcome warm = search(project, from, seconds, seed);
        double searching = processorSeconds() - between - (between - before);
        return (warm.moves() - start.moves()) / searching;
    }

    private static PlanningOutcome search(Project project, Optional<Plan> from, double seconds, long seed) {
        Budget budget = new Budget.Time(Duration.ofMillis((long) (seconds * 1000)));
        return new Planner(new PlanningRequest(project, from, budget, seed, 1), progress -> {}).plan();
    }

    private static double processorSeconds() {
        return ManagementFactory.getPlatformMXBean(OperatingSystemMXBean.class).getProcessCpuTime() / 1e9;
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
