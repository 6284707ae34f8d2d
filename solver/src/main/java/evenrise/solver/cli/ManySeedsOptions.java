package evenrise.solver.cli;

import evenrise.solver.app.ManySeeds;
import evenrise.solver.app.PortfolioRequest;
import java.util.Optional;
import picocli.CommandLine;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** By which seeds to search, and on which machines. */
final class ManySeedsOptions {
    @Option(
            names = "--seeds",
            paramLabel = "N..M",
            converter = SeedRangeConverter.class,
            description =
                    "Search by each of these seeds with --moves, each by one thread, --threads of them side by side,"
                            + " and take the best. What was found is kept until all have ended, so that the same command goes"
                            + " on.")
    private PortfolioRequest.Seeds seeds;

    @Mixin
    private GridOptions grid;

    /** Empty for one search on this machine. */
    Optional<ManySeeds> manySeeds(CommandLine command) {
        ManySeeds asked = new ManySeeds(Optional.ofNullable(seeds), grid.access(command));
        return asked.seeds().isPresent() || asked.grid().isPresent() ? Optional.of(asked) : Optional.empty();
    }
}
