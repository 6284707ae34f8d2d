package evenrise.solver.bench;

import evenrise.model.project.Project;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Planner;
import evenrise.solver.portfolio.AnotherTry;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * Whether what a search says of another annealing comes true: at each annealing, what its own record up to there said that
 * it would bring, beside what it brought. Counts moves, so that it finds the same each time.
 */
final class AnotherTryBenchmark {
    private static final List<String> USUAL = List.of("tin-shed", "quay-works", "lantern-yard", "fennel-studio");
    private static final long MOVES = 300_000;
    private static final int SEEDS = 10;

    private AnotherTryBenchmark() {}

    static void print(BenchSettings settings) {
        System.out.printf(
                Locale.ROOT,
                "What another annealing was said to bring and what it brought, %,d moves, seeds 1 to %d, one thread:%n",
                MOVES,
                SEEDS);
        BenchTable table =
                new BenchTable("project", "annealings foretold", "said, mean", "brought, mean", "said / brought");
        table.head(System.out);
        boolean isChosen = !System.getProperty("bench.projects", "").isBlank();
        for (String name : isChosen ? settings.projects() : USUAL) {
            row(table, name);
        }
    }

    private static void row(BenchTable table, String name) {
        Project project = BenchProjects.read(name);
        int foretold = 0;
        double said = 0;
        double brought = 0;
        for (long seed = 1; seed <= SEEDS; seed++) {
            List<Double> ends = new Planner(
                            new PlanningRequest(project, Optional.empty(), new Budget.Moves(MOVES), seed, 1), any -> {})
                    .plan()
                    .ends();
            for (int known = AnotherTry.FEWEST; known < ends.size(); known++) {
                List<Double> before = ends.subList(0, known);
                foretold++;
                said += AnotherTry.gain(before).orElseThrow();
                brought += Math.max(0, Collections.min(before) - ends.get(known));
            }
        }
        table.row(
                System.out,
                List.of(
                        BenchProjects.label(name),
                        Integer.toString(foretold),
                        text(said / Math.max(1, foretold)),
                        text(brought / Math.max(1, foretold)),
                        brought > 0 ? text(said / brought) : "-"));
    }

    private static String text(double value) {
        return String.format(Locale.ROOT, "%.3f", value);
    }
}
