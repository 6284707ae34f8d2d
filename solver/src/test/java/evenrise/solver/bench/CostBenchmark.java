package evenrise.solver.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;

/** What a move costs as projects grow: one thread, each project in a process of its own. */
final class CostBenchmark {
    private static final List<String> USUAL =
            List.of("drawn:3", "drawn:12", "drawn:40", "drawn:100", "drawn:200", "drawn:417");

    private CostBenchmark() {}

    static void print(BenchSettings settings) throws IOException, InterruptedException {
        System.out.printf(
                Locale.ROOT,
                "Cost of a move: one thread, after %1$.0f s to get warm, %1$.0f s from the first plan, which may still break rules, and"
                        + " %1$.0f s from the plan that the project is drawn around, which breaks none."
                        + " Seconds are the processor's.%n",
                settings.seconds() / 2);
        BenchTable table = new BenchTable(
                "project",
                "loads",
                "moves a second",
                "ratio to the first",
                "rules kept",
                "ratio to the first",
                "peak memory MB",
                "first feasible s");
        table.head(System.out);
        boolean isChosen = !System.getProperty("bench.projects", "").isBlank();
        double first = Double.NaN;
        double firstKept = Double.NaN;
        for (String name : isChosen ? settings.projects() : USUAL) {
            Path out = Files.createTempFile("bench", ".txt");
            boolean ended = Child.run(
                    CostRun.class,
                    settings.seconds() * 3 + 60,
                    out,
                    List.of(
                            name,
                            Double.toString(settings.seconds()),
                            Long.toString(settings.seeds().get(0))));
            List<String> said = new ArrayList<>(Files.readAllLines(out));
            Files.delete(out);
            if (!ended || said.size() < 5) {
                table.row(
                        System.out,
                        List.of(BenchProjects.label(name), "-", "-", "-", "-", "-", "-", "no answer: " + said));
                continue;
            }
            double rate = Double.parseDouble(said.get(1));
            double kept = Double.parseDouble(said.get(2));
            first = Double.isNaN(first) ? rate : first;
            firstKept = Double.isNaN(firstKept) ? kept : firstKept;
            table.row(
                    System.out,
                    List.of(
                            BenchProjects.label(name),
                            said.get(0),
                            figure("%,.0f", rate),
                            figure("%.3f", rate / first),
                            figure("%,.0f", kept),
                            figure("%.3f", kept / firstKept),
                            said.get(3),
                            said.get(4)));
        }
    }

    private static String figure(String format, double value) {
        return Double.isNaN(value) ? "-" : String.format(Locale.ROOT, format, value);
    }
}
