package evenrise.solver.engine.nearby;

import evenrise.solver.engine.move.DraftMove;
import evenrise.solver.engine.state.PlanSnapshot;
import evenrise.solver.engine.state.PlanSums;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Takes plans near the one as built and undoes changes of them: each alone, again and again while that leads to something
 * better, and where there are few, every choice among them.
 */
final class Shrinking {
    /** So many changes are tried in every combination. */
    private static final int FEW = 10;

    private static final int MOST_ROUNDS = 4;

    private final BuiltPositions positions;
    private final NearbyArchive archive;
    private final ReturnToBuilt returnToBuilt;
    private final Set<PlanSnapshot> done = new HashSet<>();
    private final ArrayDeque<PlanSnapshot> waiting = new ArrayDeque<>();
    private int rounds;
    private List<Part> parts = List.of();
    private boolean isThere;
    private int choice;

    Shrinking(BuiltPositions positions, NearbyArchive archive) {
        this.positions = positions;
        this.archive = archive;
        this.returnToBuilt = new ReturnToBuilt(positions);
    }

    private enum Kind {
        PLACE,
        LEAD,
        BOTH,
        TIME,
        SETTING
    }

    /** One change that can be undone: a load's place, its lead or both, with all that are in the way; a time; a setting. */
    private record Part(Kind kind, int index) {}

    /** The way to a plan, or a choice of its changes undone; nothing where all were tried. */
    NearbySteering.Drawn draw(PlanSums sums, DraftMove draft) {
        if (isThere && parts == null) {
            parts = parts(sums);
            choice = 0;
        }
        while (isThere && choice < choices()) {
            choice++;
            draft.clear();
            if (undo(sums, draft)) {
                return NearbySteering.Drawn.LOOK;
            }
        }
        draft.clear();
        return toNextPlan(sums, draft);
    }

    private NearbySteering.Drawn toNextPlan(PlanSums sums, DraftMove draft) {
        if (waiting.isEmpty() && rounds < MOST_ROUNDS) {
            rounds++;
            archive.snapshots().stream().filter(done::add).forEach(waiting::add);
        }
        isThere = !waiting.isEmpty();
        if (!isThere) {
            return NearbySteering.Drawn.NOTHING;
        }
        parts = null;
        Jump.to(waiting.poll(), sums, draft);
        return NearbySteering.Drawn.JUMP;
    }

    private int choices() {
        return parts.size() <= FEW ? (1 << parts.size()) - 1 : parts.size();
    }

    /** Drafts the choice by its number, from 1; where there are few parts, that has a bit for each. */
    private boolean undo(PlanSums sums, DraftMove draft) {
        for (int i = 0; i < parts.size(); i++) {
            boolean isChosen = parts.size() <= FEW ? (choice >> i & 1) != 0 : i == choice - 1;
            if (isChosen && !undo(parts.get(i), sums, draft)) {
                return false;
            }
        }
        return !draft.isEmpty() && draft.keepsRanges();
    }

    private boolean undo(Part part, PlanSums sums, DraftMove draft) {
        return switch (part.kind) {
            case PLACE -> returnToBuilt.bring(sums, part.index, true, false, draft);
            case LEAD -> returnToBuilt.bring(sums, part.index, false, true, draft);
            case BOTH -> returnToBuilt.bring(sums, part.index, true, true, draft);
            case TIME -> {
                draft.time(part.index, positions.time(part.index));
                yield true;
            }
            case SETTING -> {
                draft.set(part.index, positions.startDelay(part.index), positions.step(part.index));
                yield true;
            }
        };
    }

    private List<Part> parts(PlanSums sums) {
        List<Part> found = new ArrayList<>();
        for (int load = 0; load < sums.compiled.loadCount(); load++) {
            boolean place = sums.placeOf(load) != positions.place(load);
            boolean output = sums.outputOf(load) != positions.output(load);
            if (place) {
                found.add(new Part(Kind.PLACE, load));
            }
            if (output) {
                found.add(new Part(Kind.LEAD, load));
            }
            if (place && output) {
                found.add(new Part(Kind.BOTH, load));
            }
        }
        for (int i = 0; i < positions.awayTimes().size(); i++) {
            found.add(new Part(Kind.TIME, positions.awayTimes().get(i)));
        }
        for (int i = 0; i < positions.awayBoards().size(); i++) {
            found.add(new Part(Kind.SETTING, positions.awayBoards().get(i)));
        }
        return found;
    }
}
