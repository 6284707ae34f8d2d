package evenrise.solver.engine.nearby;

import evenrise.solver.engine.move.DraftMove;
import evenrise.solver.engine.state.PlanSnapshot;
import evenrise.solver.engine.state.PlanSums;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/**
 * Takes plans near the one as built and undoes changes of them: each alone, again and again while that leads to something
 * better, and where there are few, every choice among them.
 */
final class Shrinking {
    /** So many changes are tried in every combination. */
    private static final int FEW = 10;

    private static final int MOST_ROUNDS = 4;

    private final PlanSums sums;
    private final BuiltPositions positions;
    private final NearbyArchive archive;
    private final DraftMove draft;
    private final ReturnToBuilt returnToBuilt;
    private BooleanSupplier more;

    Shrinking(PlanSums sums, BuiltPositions positions, NearbyArchive archive) {
        this.sums = sums;
        this.positions = positions;
        this.archive = archive;
        this.draft = new DraftMove(sums);
        this.returnToBuilt = new ReturnToBuilt(positions);
    }

    /** One change that can be undone: a load's place, its lead or both, with all that are in the way; or a setting. */
    private record Part(boolean isBoard, int index, boolean place, boolean output) {}

    /** @param more whether to go on; asked before every try */
    void run(Consumer<PlanSnapshot> loader, BooleanSupplier more) {
        this.more = more;
        Set<PlanSnapshot> done = new LinkedHashSet<>();
        for (int round = 0; round < MOST_ROUNDS; round++) {
            boolean any = false;
            for (PlanSnapshot plan : archive.snapshots()) {
                if (more.getAsBoolean() && done.add(plan)) {
                    any = true;
                    loader.accept(plan);
                    List<Part> parts = parts();
                    if (parts.size() <= FEW) {
                        undoEveryChoice(plan, parts, loader);
                    } else {
                        undoOneByOne(plan, parts, loader);
                    }
                }
            }
            if (!any) {
                return;
            }
        }
    }

    private List<Part> parts() {
        List<Part> parts = new ArrayList<>();
        for (int load = 0; load < sums.compiled.loadCount(); load++) {
            boolean place = sums.placeOf(load) != positions.place(load);
            boolean output = sums.outputOf(load) != positions.output(load);
            if (place) {
                parts.add(new Part(false, load, true, false));
            }
            if (output) {
                parts.add(new Part(false, load, false, true));
            }
            if (place && output) {
                parts.add(new Part(false, load, true, true));
            }
        }
        for (int i = 0; i < positions.awayBoards().size(); i++) {
            parts.add(new Part(true, positions.awayBoards().get(i), false, false));
        }
        return parts;
    }

    private void undoEveryChoice(PlanSnapshot plan, List<Part> parts, Consumer<PlanSnapshot> loader) {
        for (int choice = 1; choice < 1 << parts.size() && more.getAsBoolean(); choice++) {
            loader.accept(plan);
            for (int i = 0; i < parts.size(); i++) {
                if ((choice >> i & 1) != 0) {
                    undo(parts.get(i));
                }
            }
            archive.offer(sums, positions.moves());
        }
    }

    private void undoOneByOne(PlanSnapshot plan, List<Part> parts, Consumer<PlanSnapshot> loader) {
        for (Part part : parts) {
            if (!more.getAsBoolean()) {
                return;
            }
            loader.accept(plan);
            if (undo(part)) {
                archive.offer(sums, positions.moves());
            }
        }
    }

    private boolean undo(Part part) {
        draft.clear();
        if (part.isBoard) {
            draft.set(part.index, positions.startDelay(part.index), positions.step(part.index));
        } else if (!returnToBuilt.bring(sums, part.index, part.place, part.output, draft) || !draft.keepsRanges()) {
            return false;
        }
        draft.apply();
        positions.refreshAll(sums);
        return true;
    }
}
