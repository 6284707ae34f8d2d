package evenrise.solver.desk;

import evenrise.solver.app.DraftedCure;
import evenrise.solver.app.DraftedWork;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** What windows are told of cures of a plan as built. */
public final class CureAnswers {
    private CureAnswers() {}

    /**
     * The search for cures, and what it found.
     *
     * @param state none, running, found or failed
     * @param search counts the searches, so that a window knows which it shows
     * @param tried moves
     * @param isOfNow whether what is cured is what lies on the desk
     * @param words what it is at, or why it failed
     * @param headline what the plan as built breaks and what was found to cure it
     * @param chosen which the command would take
     * @param kept names of plans that work may lead to in place of a search
     */
    public record CuresView(
            String state,
            int search,
            double elapsedSeconds,
            long tried,
            OptionalDouble objective,
            OptionalInt hardViolations,
            boolean isOfNow,
            List<String> words,
            List<String> notes,
            String headline,
            int leastMoves,
            Optional<DraftedCure> built,
            List<DraftedCure> cures,
            int chosen,
            boolean isMeasured,
            List<String> kept) {}

    /**
     * The order of a cure's work.
     *
     * @param search that found the cure
     */
    public record CureOrderView(int search, int cure, DraftedWork work) {}

    /** @param png the page as a picture, Base64 */
    public record CureSheetView(int page, int pages, String png) {}

    /** @param files names of what is in the folder now */
    public record CureWrittenView(String folder, List<String> files) {}
}
