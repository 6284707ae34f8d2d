package evenrise.solver.bench;

import evenrise.solver.grid.ignite.GridBenchmark;

/** Prints what is measured here and now; see DEVELOPERS.md for what may be asked. */
public final class Benchmark {
    private Benchmark() {}

    public static void main(String[] arguments) throws Exception {
        BenchSettings settings = BenchSettings.ofSystemProperties();
        if (settings.lines().isPresent()) {
            LineBenchmark.print(settings);
            return;
        }
        for (String mode : settings.modes()) {
            switch (mode) {
                case "peers" -> PeerBenchmark.print(settings);
                case "cost" -> CostBenchmark.print(settings);
                case "page" -> PageBenchmark.print(settings);
                case "desk" -> DeskBenchmark.print();
                case "prices" -> PricesBenchmark.print(settings);
                case "grid" -> GridBenchmark.print(settings.seconds() / 4);
                case "another" -> AnotherTryBenchmark.print(settings);
                default ->
                    throw new IllegalArgumentException(
                            "bench.mode " + mode + ", expected peers, cost, page, desk, prices, grid or another");
            }
        }
    }
}
