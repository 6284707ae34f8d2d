package evenrise.model.handout;

import evenrise.model.answer.BrokenAnew;
import evenrise.model.answer.FreePlace;
import evenrise.model.answer.FreePlaces;
import evenrise.model.answer.HandMove;
import evenrise.model.answer.TriedPlace;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.LoadMove;
import evenrise.model.plan.Plan;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import java.util.ArrayList;
import java.util.List;

/** A plan that somebody tries changes of: moves put down one after the other, the last taken back first, each judged. */
public final class Tryout {
    private final Handout handout;
    private final Verdict first;
    private final List<LoadMove> moves = new ArrayList<>();
    private final List<Layout> layouts = new ArrayList<>();
    private Verdict verdict;

    public Tryout(Handout handout) {
        this.handout = handout;
        layouts.add(Layout.of(handout.project(), handout.plan()));
        this.first = Referee.judge(layout());
        this.verdict = first;
    }

    /** Puts a load down; a plan that cannot be made is refused, and nothing is changed. */
    void move(LoadMove move) {
        Plan plan = new HandMove(layout(), move.load()).to(move);
        layouts.add(Layout.of(layout().index(), plan));
        moves.add(move);
        verdict = Referee.judge(layout());
    }

    /** Takes the last move back; of none nothing. */
    void undo() {
        if (!moves.isEmpty()) {
            moves.remove(moves.size() - 1);
            layouts.remove(layouts.size() - 1);
            verdict = Referee.judge(layout());
        }
    }

    /** What each free slot of a panel would break or cost. */
    List<TriedPlace> slots(String load, String panel) {
        return tried(load, new FreePlaces(layout(), load).slotsOf(panel));
    }

    /** What each free output of a board would; none where the board does not reach the load. */
    List<TriedPlace> outputs(String load, String board) {
        return tried(load, new FreePlaces(layout(), load).outputsOf(board));
    }

    private List<TriedPlace> tried(String load, List<FreePlace> places) {
        return places.stream()
                .map(place -> TriedPlace.of(layout(), verdict, load, place))
                .toList();
    }

    Handout handout() {
        return handout;
    }

    /** The plan as it is now. */
    public Layout layout() {
        return layouts.get(layouts.size() - 1);
    }

    /** What the rules say of the plan as it came. */
    Verdict first() {
        return first;
    }

    /** What they say of it now. */
    public Verdict verdict() {
        return verdict;
    }

    /** Since the plan came. */
    List<LoadMove> moves() {
        return List.copyOf(moves);
    }

    /** What is broken now and was not when the plan came. */
    BrokenAnew brokenSince() {
        return BrokenAnew.of(first.violations(), verdict.violations());
    }

    /** In words. */
    static List<String> words(List<BrokenRule> broken) {
        return broken.stream().map(BrokenRule::message).toList();
    }
}
