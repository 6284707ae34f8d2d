package evenrise.solver.app;

import java.nio.file.Path;
import java.time.Duration;
import java.util.Optional;

/**
 * Numbers of panels and boards are to be compared for an estimate.
 *
 * @param project with a catalogue
 * @param folder for projects, plans, table and chart; made where there is none
 * @param panels numbers of panels; empty for the least that counting allows, and two more
 * @param boards alike, for each number of panels
 * @param effort moves of each search, its seed, and scenarios side by side; a time is no measure here
 * @param tries make-ups that may be planned to find the least price
 * @param spare room that panels and boards leave at least; empty for the usual of bids, where the project asks for none
 * @param leastOnly whether the least price is all that is asked, and no front
 * @param draws prices at quantities that are drawn, where the project leaves some open; 0 for none
 * @param catalogue prices in the place of the project's own, .csv or .xlsx
 * @param limit time after which it ends with what it has, and tells what was not looked at; empty for none
 * @param grid machines that plan in the place of this one; changes no plan
 * @since 0.1.0
 */
public record CompareRequest(
        Source project,
        Path folder,
        Optional<Range> panels,
        Optional<Range> boards,
        Effort effort,
        int tries,
        Optional<Spares> spare,
        boolean leastOnly,
        int draws,
        Optional<Path> catalogue,
        Optional<Duration> limit,
        Optional<GridAccess> grid) {
    public static final long USUAL_MOVES = 60_000;
    public static final int USUAL_TRIES = 60;
    public static final int MOST_DRAWS = 100_000;

    /** From so many to so many, both included. */
    public record Range(int least, int most) {
        public Range {
            if (least < 1 || most < least) {
                throw new IllegalArgumentException("expected 1 or more, as N or N..M with N at most M");
            }
        }
    }

    /**
     * Room for later.
     *
     * @param slots free in each panel
     * @param outputs free on each board in use
     * @param runningPercent of each panel's allowed running current
     */
    public record Spares(int slots, int outputs, double runningPercent) {
        public Spares {
            if (slots < 0 || outputs < 0 || !(runningPercent >= 0 && runningPercent < 100)) {
                throw new IllegalArgumentException("expected numbers from 0, and a percentage below 100");
            }
        }
    }

    public CompareRequest {
        if (effort.moves().isEmpty()) {
            throw new IllegalArgumentException("a comparison counts moves, so that all its plans are found alike");
        }
        if (draws < 0 || draws > MOST_DRAWS) {
            throw new IllegalArgumentException("expected 0 to " + MOST_DRAWS + " draws");
        }
        if (tries < 0) {
            throw new IllegalArgumentException("expected 0 or more make-ups to try");
        }
    }

    /** With the usual number of tries, and the front. */
    public CompareRequest(Source project, Path folder, Optional<Range> panels, Optional<Range> boards, Effort effort) {
        this(
                project,
                folder,
                panels,
                boards,
                effort,
                USUAL_TRIES,
                Optional.empty(),
                false,
                0,
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /** The usual numbers and moves. */
    public static CompareRequest of(Path project, Path folder) {
        return new CompareRequest(
                Source.file(project), folder, Optional.empty(), Optional.empty(), Effort.ofMoves(USUAL_MOVES));
    }
}
