package evenrise.solver.bench;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** What a move costs as projects grow: one thread, each project in a process of its own. */
final class CostBenchmark {
    private static final List<String> USUAL =
            List.of("drawn:3", "drawn:12", "drawn:40", "drawn:100", "drawn:200", "drawn:417");

    private CostBenchmark() {}

    static void print(BenchSettings settings) throws IOException, InterruptedException {
        System.out.printf(
                Locale.ROOT,
                "Cost of a move: one thread, %.0f s each; moves of the second half of the time, when the machine is warm.%n",
                settings.seconds());
        BenchTable table = new BenchTable(
                "project", "loads", "moves a second", "peak memory MB", "first feasible s", "ratio to the first");
        table.head(System.out);
        boolean isChosen = !System.getProperty("bench.projects", "").isBlank();
        Optional<Double> first = Optional.empty();
        for (String name : isChosen ? settings.projects() : USUAL) {
            Path out = Files.createTempFile("bench", ".txt");
            boolean ended = Child.run(
                    CostRun.class,
                    settings.seconds() * 2 + 60,
                    out,
                    List.of(
                            name,
                            Double.toString(settings.seconds()),
                            Long.toString(settings.seeds().get(0))));
            List<String> said = new ArrayList<>(Files.readAllLines(out));
            Files.delete(out);
            if (!ended || said.size() < 4) {
                table.row(System.out, List.of(BenchProjects.label(name), "-", "-", "-", "-", "no answer: " + said));
                continue;
            }
            double rate = Double.parseDouble(said.get(1));
            first = first.isPresent() ? first : Optional.of(rate);
            table.row(
                    System.out,
                    List.of(
                            BenchProjects.label(name),
                            said.get(0),
                            String.format(Locale.ROOT, "%,.0f", rate),
                            said.get(2),
                            said.get(3),
                            PeerBenchmark.number(rate / first.get(), 3)));
        }
    }
}
