package evenrise.solver.app;

import evenrise.solver.report.ProgressText;
import java.util.Optional;

/**
 * How far a job has come.
 *
 * @param at what of the stage it is at, in words; empty where the stage says all
 * @param elapsedSeconds since the job began
 * @param search how far its search has come; empty before there is a first plan, and for a job that searches nothing
 * @since 0.1.0
 */
public record JobProgress(Stage stage, String at, double elapsedSeconds, Optional<SearchStanding> search) {
    public JobProgress(Stage stage, double elapsedSeconds, Optional<SearchStanding> search) {
        this(stage, "", elapsedSeconds, search);
    }

    /** What the job does. */
    public String words() {
        return at.isEmpty() ? stage.words() : stage.words() + " " + at;
    }

    /** One line of at most 79 columns. */
    public String line() {
        return stage == Stage.SEARCHING ? standing() : ProgressText.line(elapsedSeconds, words());
    }

    /** The same of the search, whatever the job is at. */
    public String standing() {
        return ProgressText.line(elapsedSeconds, search.map(each -> each.at(elapsedSeconds)));
    }
}
