package evenrise.solver.app;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Many plans are to be found in one run.
 *
 * @param inputs a portfolio file, or project files and folders of them
 * @param folder where answers and results go; made where there is none
 * @param seeds first and last seed; empty for what the portfolio file says, or 1
 * @param moves of each search; empty for what the portfolio file says, or {@link #USUAL_MOVES}
 * @param slots plans that are searched side by side by this process; empty for one a processor
 * @param grid machines that search instead; changes no plan
 * @param catalogue prices of all of them in the place of their own, .csv or .xlsx; changes no plan
 * @since 0.1.0
 */
public record PortfolioRequest(
        List<Path> inputs,
        Path folder,
        Optional<Seeds> seeds,
        OptionalInt moves,
        OptionalInt slots,
        Optional<GridAccess> grid,
        Optional<Path> catalogue) {
    public static final int USUAL_MOVES = 200_000;

    /** From so many to so many, both included. */
    public record Seeds(int first, int last) {
        public Seeds {
            if (first < 0 || last < first) {
                throw new IllegalArgumentException("expected 0 or more, as N or N..M with N at most M");
            }
        }
    }

    public PortfolioRequest {
        inputs = List.copyOf(inputs);
    }

    /** With the prices that the projects have. */
    public PortfolioRequest(
            List<Path> inputs,
            Path folder,
            Optional<Seeds> seeds,
            OptionalInt moves,
            OptionalInt slots,
            Optional<GridAccess> grid) {
        this(inputs, folder, seeds, moves, slots, grid, Optional.empty());
    }
}
