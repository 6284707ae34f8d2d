package evenrise.solver.app;

import java.nio.file.Path;
import java.util.List;
import java.util.Optional;

/**
 * Several ways to build a thing are to be offered side by side.
 *
 * @param title stands above them
 * @param alternates the first is what the others are told apart from
 * @param catalogue prices of all of them in the place of their own, .csv or .xlsx
 * @param draws prices at quantities that are drawn, for alternates that leave some open; 0 for none
 * @param folder for page, sheet and table; made where there is none
 * @since 0.1.0
 */
public record OfferRequest(String title, List<Named> alternates, Optional<Path> catalogue, int draws, Path folder) {
    /** More do not fit beside each other. */
    public static final int MOST = 6;

    /** A project and a plan of it, and what it is called. */
    public record Named(String name, Source project, Source plan) {}

    public OfferRequest {
        alternates = List.copyOf(alternates);
        if (alternates.isEmpty() || alternates.size() > MOST) {
            throw new IllegalArgumentException("expected 1 to " + MOST + " alternates");
        }
        if (draws < 0 || draws > CompareRequest.MOST_DRAWS) {
            throw new IllegalArgumentException("expected 0 to " + CompareRequest.MOST_DRAWS + " draws");
        }
        if (alternates.stream().map(Named::name).distinct().count() < alternates.size()) {
            throw new IllegalArgumentException("expected a name of its own for each alternate");
        }
    }
}
