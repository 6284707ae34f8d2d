package evenrise.solver.browser;

import evenrise.solver.app.JobControl;
import evenrise.solver.app.PortfolioRequest;
import evenrise.solver.app.StandIns;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** A project in a folder, and beside it a portfolio of it: as it is and with lighter loads, by two seeds. */
final class SmallPortfolio {
    private static final String FILE = """
            {
              "format": "evenrise-portfolio/1",
              "projects": ["project.json"],
              "variants": [
                {"name": "as-is"},
                {"name": "light", "changes": [{"at": "/loads/*/running_a", "factor": 0.9}]}
              ],
              "first_seed": 1,
              "seeds": 2,
              "moves": 3000
            }
            """;

    private SmallPortfolio() {}

    static void in(Path folder) {
        try {
            Files.createDirectories(folder);
            Files.copy(Path.of("../datasets/fennel-studio/project.json"), folder.resolve("project.json"));
            Path file = folder.resolve("studio.portfolio.json");
            Files.writeString(file, FILE);
            StandIns.withoutProofs()
                    .portfolio(
                            new PortfolioRequest(
                                    List.of(file),
                                    folder.resolve("overnight"),
                                    Optional.empty(),
                                    OptionalInt.empty(),
                                    OptionalInt.of(1),
                                    Optional.empty()),
                            JobControl.NONE);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
