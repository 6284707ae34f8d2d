package evenrise.solver.bench;

import evenrise.model.file.SideNotes;
import evenrise.model.project.Catalogue;
import evenrise.model.project.Project;
import evenrise.solver.compare.BidSpare;
import evenrise.solver.compare.Comparison;
import evenrise.solver.compare.LeastPrice;
import evenrise.solver.compare.ScenarioPool;
import evenrise.solver.compare.Sweep;
import evenrise.solver.compare.Variation;
import java.lang.management.ManagementFactory;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/**
 * How long it takes until the cheapest make-ups are listed by price, before any plan: the first time, with everything cold,
 * and the best of five. Times are of the processor, so that others on the machine do not count.
 */
final class PricesBenchmark {
    private static final int TIMES = 5;
    private static final String LENDER = "copper-mill";

    private record Listed(LeastPrice prices, double seconds) {}

    private PricesBenchmark() {}

    static void print(BenchSettings settings) throws Exception {
        System.out.println("Make-ups by price, before any plan; a project without a catalogue has that of " + LENDER
                + ", and boards without a price cost 70 and 40 an output.");
        BenchTable table =
                new BenchTable("project", "loads", "make-ups", "listed below", "first s", "best of " + TIMES + " s");
        table.head(System.out);
        Project lender = BenchProjects.read(LENDER);
        for (String name : settings.projects()) {
            Project project = withCatalogue(BenchProjects.read(name), lender);
            Listed first = listed(project);
            double best = first.seconds();
            for (int i = 1; i < TIMES; i++) {
                best = Math.min(best, listed(project).seconds());
            }
            table.row(
                    System.out,
                    List.of(
                            BenchProjects.label(name),
                            Integer.toString(project.loads().size()),
                            Integer.toString(first.prices().makeUps().size()),
                            String.format(Locale.ROOT, "%.2f", first.prices().completeBelow()),
                            String.format(Locale.ROOT, "%.2f", first.seconds()),
                            String.format(Locale.ROOT, "%.2f", best)));
        }
    }

    private static Project withCatalogue(Project project, Project lender) {
        if (project.catalogue().isPresent()) {
            return project;
        }
        Catalogue catalogue = lender.catalogue().orElseThrow();
        return project.with()
                .catalogue(Optional.of(catalogue))
                .boardTypes(project.boardTypes().stream()
                        .map(type -> type.price() > 0 ? type : type.withPrice(40 * type.outputs() + 70))
                        .toList())
                .build();
    }

    private static Listed listed(Project project) throws Exception {
        Path folder = Files.createTempDirectory("prices");
        long begin = ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime();
        Variation variation = new Variation(BidSpare.USUAL.on(project));
        Sweep none = new Sweep(variation, folder, SideNotes.NONE, 1, 1, true, new ScenarioPool(1, any -> {
            throw new IllegalStateException("nothing is planned here");
        }));
        LeastPrice prices = new Comparison(variation, List.of(), Optional.empty(), Optional.empty())
                .leastPrice(none, 0, state -> {}, finding -> {});
        double seconds = (ManagementFactory.getThreadMXBean().getCurrentThreadCpuTime() - begin) / 1e9;
        Files.delete(folder);
        return new Listed(prices, seconds);
    }
}
