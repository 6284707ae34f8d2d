package evenrise.solver.engine.nearby;

import evenrise.solver.engine.move.Sketch;
import evenrise.solver.engine.state.PlanSnapshot;
import evenrise.solver.engine.state.Situation;
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

    private final Situation situation;
    private final Homes homes;
    private final NearbyArchive archive;
    private final Sketch sketch;
    private final Homecoming homecoming;
    private BooleanSupplier more;

    Shrinking(Situation situation, Homes homes, NearbyArchive archive) {
        this.situation = situation;
        this.homes = homes;
        this.archive = archive;
        this.sketch = new Sketch(situation);
        this.homecoming = new Homecoming(homes);
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
        for (int load = 0; load < situation.plant.loadCount(); load++) {
            boolean place = situation.placeOf(load) != homes.place(load);
            boolean output = situation.outputOf(load) != homes.output(load);
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
        for (int i = 0; i < homes.awayBoards().size(); i++) {
            parts.add(new Part(true, homes.awayBoards().get(i), false, false));
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
            archive.offer(situation, homes.moves());
        }
    }

    private void undoOneByOne(PlanSnapshot plan, List<Part> parts, Consumer<PlanSnapshot> loader) {
        for (Part part : parts) {
            if (!more.getAsBoolean()) {
                return;
            }
            loader.accept(plan);
            if (undo(part)) {
                archive.offer(situation, homes.moves());
            }
        }
    }

    private boolean undo(Part part) {
        sketch.clear();
        if (part.isBoard) {
            sketch.set(part.index, homes.startDelay(part.index), homes.step(part.index));
        } else if (!homecoming.bring(situation, part.index, part.place, part.output, sketch) || !sketch.keepsRanges()) {
            return false;
        }
        sketch.apply();
        homes.refreshAll(situation);
        return true;
    }
}
