package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
import java.util.BitSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** One stage as its steps see it: what it changes, and where everything is before and after. */
final class StageWork {
    final Passage passage;
    final BitSet stage;
    final Passage.Way way;
    /** Where each load is before the stage, and after it. */
    final Map<String, Assignment> before;

    final Map<String, Assignment> after;
    /** Loads that are worked on. */
    final Set<String> locked;
    /** Breakers that feed nothing before the stage. */
    final List<SpareBreaker> spares;

    StageWork(Passage passage, BitSet done, BitSet stage, Passage.Way way) {
        this.passage = passage;
        this.stage = stage;
        this.way = way;
        this.before = Changes.seats(passage.after(done));
        BitSet reached = (BitSet) done.clone();
        reached.or(stage);
        this.after = Changes.seats(passage.after(reached));
        this.locked = passage.loads(stage);
        this.spares = SpareBreakers.at(passage, done);
    }

    List<LoadChange> changes() {
        return stage.stream().filter(passage::isLoad).mapToObj(passage::load).toList();
    }

    List<Removal> removals() {
        return stage.stream()
                .filter(passage::isRemoval)
                .mapToObj(passage::removal)
                .toList();
    }
}
