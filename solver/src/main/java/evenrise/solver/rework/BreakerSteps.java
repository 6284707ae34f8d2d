package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Breakers of a stage: out for good or left as spares, parked where they are in the way, re-terminated, put in. */
final class BreakerSteps {
    private final StageWork work;
    private final Passage passage;
    private final List<WorkStep> steps;
    private final Map<String, String> inSlot = new HashMap<>();
    private final List<SpareBreaker> spares;

    BreakerSteps(StageWork work, List<WorkStep> steps) {
        this.work = work;
        this.passage = work.passage;
        this.steps = steps;
        this.spares = new ArrayList<>(work.spares);
        work.before.values().forEach(seat -> passage.slots(seat).forEach(slot -> inSlot.put(slot, seat.load())));
    }

    /** What is gone leaves its slot before anybody else is to have it. */
    void remove(Removal removal) {
        Assignment seat = removal.from();
        Optional<SpareBreaker> left = SpareBreakers.left(passage, removal);
        steps.add(WorkStep.breaker(
                left.isPresent() ? WorkStepKind.LEAVE_SPARE : WorkStepKind.REMOVE,
                removal.load(),
                seat.panel(),
                seat.slot()));
        vacate(removal.load());
        left.ifPresent(spares::add);
    }

    void move() {
        List<LoadChange> left = new ArrayList<>(
                work.changes().stream().filter(LoadChange::isReTerminated).toList());
        Set<String> parked = new LinkedHashSet<>();
        while (!left.isEmpty()) {
            Optional<LoadChange> free =
                    left.stream().filter(change -> holders(change).isEmpty()).findFirst();
            LoadChange next = free.orElseGet(() -> left.stream()
                    .min(Comparator.comparingInt(change -> holders(change).size()))
                    .orElseThrow());
            if (free.isPresent() || !parked.add(holders(next).iterator().next())) {
                // Whoever holds the slot after being parked never leaves it: the replay says so.
                vacate(next.load());
                passage.slots(next.to()).forEach(slot -> inSlot.put(slot, next.load()));
                place(next);
                left.remove(next);
            } else {
                park(holders(next).iterator().next());
            }
        }
    }

    private void place(LoadChange next) {
        boolean isFed = spares.removeIf(spare -> SpareBreakers.isUsed(passage.index, spare, next));
        List<SpareBreaker> inTheWay = spares.stream()
                .filter(spare -> SpareBreakers.isInTheWay(passage.index, spare, next.to()))
                .toList();
        inTheWay.forEach(spare -> steps.add(WorkStep.spare(WorkStepKind.REMOVE_SPARE, spare.panel(), spare.slot())));
        spares.removeAll(inTheWay);
        WorkStepKind own = next.from().isEmpty() ? WorkStepKind.PUT_IN : WorkStepKind.RE_TERMINATE;
        steps.add(WorkStep.breaker(
                isFed ? WorkStepKind.USE_SPARE : own,
                next.load(),
                next.to().panel(),
                next.to().slot()));
    }

    /** Who else has a breaker where this one goes. */
    private Set<String> holders(LoadChange change) {
        Set<String> holders = new LinkedHashSet<>();
        passage.slots(change.to())
                .forEach(slot -> Optional.ofNullable(inSlot.get(slot))
                        .filter(load -> !load.equals(change.load()))
                        .ifPresent(holders::add));
        return holders;
    }

    private void vacate(String load) {
        inSlot.values().removeIf(load::equals);
    }

    /** Into a free slot of its panel that nobody in this stage needs, else out of the panel. */
    private void park(String load) {
        vacate(load);
        Set<String> wanted = new LinkedHashSet<>();
        work.changes().forEach(change -> wanted.addAll(passage.slots(change.to())));
        spares.forEach(spare -> wanted.addAll(spare.slots(passage.index)));
        Assignment seat = work.before.get(load);
        Optional<Panel> panel = passage.index.panel(seat.panel());
        for (int slot = 1; panel.isPresent() && slot <= panel.get().slots(); slot++) {
            List<String> slots = passage.slots(load, seat.panel(), slot);
            boolean leaves = slot != seat.slot();
            if (leaves && !slots.isEmpty() && takes(panel.get(), load, slot) && isFree(slots, wanted)) {
                slots.forEach(each -> inSlot.put(each, load));
                steps.add(WorkStep.breaker(WorkStepKind.PARK, load, seat.panel(), slot));
                return;
            }
        }
        steps.add(WorkStep.load(WorkStepKind.TAKE_OUT, load));
    }

    private boolean isFree(List<String> slots, Set<String> wanted) {
        return slots.stream().noneMatch(slot -> inSlot.containsKey(slot) || wanted.contains(slot));
    }

    /** Never, for what the project knows no more: nobody can tell how many poles its breaker has. */
    private boolean takes(Panel panel, String load, int slot) {
        Optional<Load> known = passage.index.load(load);
        if (known.isEmpty()) {
            return false;
        }
        Load given = known.get();
        List<Integer> span = passage.index.slotsOf(panel).span(slot, given.poles());
        boolean fits = span.stream().noneMatch(panel.reservedSlots()::contains);
        return fits
                && (!given.switched()
                        || panel.switchedSlots().isEmpty()
                        || panel.switchedSlots().get().containsAll(span));
    }
}
