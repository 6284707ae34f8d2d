package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Who is off in the stage of a change, whichever stage that is and whatever has been done before. */
final class SurelyOff {
    private final Passage passage;
    private final Outages outages;
    /** Of loads that stay where they are. */
    private final List<Assignment> stay;

    SurelyOff(Passage passage) {
        this.passage = passage;
        this.outages = new Outages(passage.index);
        Set<String> moved = passage.loads(passage.all());
        this.stay = Changes.seats(passage.built).values().stream()
                .filter(seat -> !moved.contains(seat.load()))
                .toList();
    }

    /** What goes off; what a load's inrush asks for besides is left out. */
    Outages.Outage with(int change) {
        BitSet one = new BitSet();
        one.set(change);
        Isolation isolation = passage.isolation(one);
        List<Assignment> surely = new ArrayList<>(stay);
        for (LoadChange moved : passage.changes.loads()) {
            moved.from()
                    .filter(from -> isDead(isolation, from) && isDead(isolation, moved.to()))
                    .ifPresent(surely::add);
        }
        return outages.of(passage.loads(one), isolation, surely, anyLoad -> true);
    }

    private boolean isDead(Isolation isolation, Assignment seat) {
        Optional<String> board = seat.board();
        return isolation.takesOff(passage.index, seat.panel(), board);
    }
}
