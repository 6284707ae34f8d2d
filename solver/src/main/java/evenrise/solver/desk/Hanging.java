package evenrise.solver.desk;

import evenrise.model.answer.FreePlace;
import evenrise.model.answer.FreePlaces;
import evenrise.model.answer.TriedPlace;
import evenrise.model.plan.BrokenRule;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Verdict;
import evenrise.solver.desk.DeskAnswers.PlaceView;
import java.util.List;
import java.util.Set;

/**
 * A load in the hand: what each place would break or cost, judged by the referee on the very plan that putting it down there
 * makes. Free slots of a panel that differ in nothing but their number are judged once.
 */
final class Hanging {
    private static final int MOST_WORDS = 4;

    private final Layout layout;
    private final Verdict verdict;
    private final String load;

    Hanging(Layout layout, Verdict verdict, String load) {
        this.layout = layout;
        this.verdict = verdict;
        this.load = load;
    }

    /** Every free slot of some panels, and every free output of the boards that reach one of them. */
    List<PlaceView> freePlaces(Set<String> panels) {
        return new FreePlaces(layout, load)
                .in(panels).parallelStream().map(this::judged).toList();
    }

    PlaceView slot(String panel, int slot) {
        return judged(FreePlace.slots(panel, List.of(slot)));
    }

    PlaceView output(String board, int output) {
        return judged(FreePlace.output(board, output));
    }

    private PlaceView judged(FreePlace place) {
        TriedPlace tried = TriedPlace.of(layout, verdict, load, place);
        return new PlaceView(
                place.panel(),
                place.slots(),
                place.board(),
                place.output(),
                tried.phases(),
                tried.broken().added().size(),
                tried.broken().gone(),
                tried.broken().added().stream()
                        .map(BrokenRule::message)
                        .limit(MOST_WORDS)
                        .toList(),
                tried.objectiveChange(),
                tried.peakChangeAmps());
    }
}
