package evenrise.model.file;

import evenrise.model.check.PortfolioChecks;
import evenrise.model.portfolio.Portfolio;
import java.nio.file.Path;

/** Reads which plans are to be found in one run. */
public final class PortfolioFile {
    private static final FileKind<Portfolio> KIND = new FileKind<>(Portfolio.class, "the portfolio", Portfolio.FORMAT) {
        @Override
        void check(Portfolio portfolio, Problems problems) {
            if (problems.unread().isEmpty()) {
                PortfolioChecks.errors(portfolio).forEach(problems::add);
            }
        }
    };

    private PortfolioFile() {}

    /** Reports every problem in one pass, also those of the file itself; throws nothing. */
    public static Reading<Portfolio> read(Path file) {
        return KIND.read(file);
    }
}
