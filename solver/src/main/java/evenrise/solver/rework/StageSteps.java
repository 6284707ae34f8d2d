package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.rules.Rotation;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Writes out the single steps of one stage. */
final class StageSteps {
    private final Passage passage;
    private final BitSet stage;
    private final Passage.Way way;
    private final Map<String, Assignment> before;
    private final Map<String, Assignment> after;
    private final Map<String, String> inSlot = new HashMap<>();
    private final Map<String, String> onOutput = new HashMap<>();
    private final List<WorkStep> steps = new ArrayList<>();

    private StageSteps(Passage passage, BitSet done, BitSet stage, Passage.Way way) {
        this.passage = passage;
        this.stage = stage;
        this.way = way;
        this.before = Changes.seats(passage.after(done));
        BitSet reached = (BitSet) done.clone();
        reached.or(stage);
        this.after = Changes.seats(passage.after(reached));
        before.values().forEach(seat -> {
            passage.slots(seat).forEach(slot -> inSlot.put(slot, seat.load()));
            Passage.output(seat).ifPresent(output -> onOutput.put(output, seat.load()));
        });
    }

    static List<WorkStep> of(Passage passage, BitSet done, BitSet stage, Passage.Way way) {
        return new StageSteps(passage, done, stage, way).write();
    }

    private List<WorkStep> write() {
        Set<String> locked = passage.loads(stage);
        switchOff(locked);
        remove();
        moveBreakers();
        moveLeads();
        stage.stream()
                .mapToObj(passage::timeWith)
                .flatMap(Optional::stream)
                .forEach(change -> steps.add(WorkStep.time(change)));
        stage.stream()
                .filter(passage::isSetting)
                .forEach(change -> steps.add(WorkStep.setting(passage.setting(change))));
        switchOn(locked);
        test(locked);
        return steps;
    }

    /** Last on, first off; then nothing in a panel that is worked on has voltage. */
    private void switchOff(Set<String> locked) {
        List<String> lastFirstOff = new ArrayList<>(way.systemsOff());
        Collections.reverse(lastFirstOff);
        command(WorkStepKind.SYSTEM_OFF, lastFirstOff);
        Comparator<String> lastFirst = Comparator.comparingDouble((String load) ->
                        before.containsKey(load) ? Passage.on(before.get(load)) : Double.NEGATIVE_INFINITY)
                .reversed()
                .thenComparing(load -> !isBehindAnother(load));
        way.off().stream()
                .filter(load -> locked.contains(load) || !passage.isByCommand(way, load))
                .filter(load -> locked.contains(load) || before.containsKey(load))
                .sorted(lastFirst)
                .forEach(load -> steps.add(
                        WorkStep.load(locked.contains(load) ? WorkStepKind.LOCK_OUT : WorkStepKind.SWITCH_OFF, load)));
        way.isolation()
                .bottomUp(passage.index)
                .forEach(panel -> steps.add(WorkStep.panel(WorkStepKind.ISOLATE_PANEL, panel)));
        way.isolation().boards().forEach(board -> steps.add(WorkStep.board(WorkStepKind.ISOLATE_BOARD, board)));
    }

    /** What is gone leaves its output and its slot before anybody else is to have them. */
    private void remove() {
        stage.stream().filter(passage::isRemoval).mapToObj(passage::removal).forEach(removal -> {
            Assignment seat = removal.from();
            seat.board()
                    .ifPresent(board ->
                            steps.add(WorkStep.lead(WorkStepKind.REMOVE_LEAD, removal.load(), board, seat.output())));
            steps.add(WorkStep.breaker(WorkStepKind.REMOVE, removal.load(), seat.panel(), seat.slot()));
            vacate(removal.load());
            onOutput.values().removeIf(removal.load()::equals);
        });
    }

    private void switchOn(Set<String> locked) {
        changes().stream()
                .filter(change -> change.isReTerminated() && isTurning(change.load()))
                .forEach(change -> steps.add(WorkStep.load(WorkStepKind.CHECK_ROTATION, change.load())));
        if (!locked.isEmpty()) {
            steps.add(WorkStep.system(WorkStepKind.MAKE_READY));
        }
        way.isolation()
                .topDown(passage.index)
                .forEach(panel -> steps.add(WorkStep.panel(WorkStepKind.ENERGISE_PANEL, panel)));
        way.isolation().boards().forEach(board -> steps.add(WorkStep.board(WorkStepKind.ENERGISE_BOARD, board)));
        way.off().stream()
                .filter(after::containsKey)
                .filter(load -> locked.contains(load) || !passage.isByCommand(way, load))
                .sorted(Comparator.comparingDouble((String load) -> Passage.on(after.get(load)))
                        .thenComparing(this::isBehindAnother))
                .forEach(load -> steps.add(WorkStep.load(backOn(load, locked.contains(load)), load)));
        command(WorkStepKind.SYSTEM_ON, way.systemsOff());
    }

    private void command(WorkStepKind kind, List<String> systems) {
        if (way.isSystemOff() && systems.isEmpty()) {
            steps.add(WorkStep.system(kind));
        }
        systems.forEach(system -> steps.add(WorkStep.system(kind, system)));
    }

    /** A contactor lets nothing through while the load that it is for is off. */
    private boolean isBehindAnother(String load) {
        return passage.index.load(load).flatMap(Load::comesWith).isPresent();
    }

    private WorkStepKind backOn(String load, boolean isLocked) {
        if (!isLocked) {
            return WorkStepKind.SWITCH_ON;
        }
        return passage.isByCommand(way, load) ? WorkStepKind.UNLOCK : WorkStepKind.ENERGISE;
    }

    private void test(Set<String> locked) {
        locked.stream()
                .filter(after::containsKey)
                .forEach(load -> steps.add(WorkStep.load(WorkStepKind.FUNCTION_TEST, load)));
        if (!locked.isEmpty()) {
            steps.add(WorkStep.system(WorkStepKind.RELABEL));
        }
    }

    private boolean isTurning(String load) {
        return passage.index.load(load).filter(Rotation::matters).isPresent();
    }

    private void moveBreakers() {
        List<LoadChange> left = new ArrayList<>(
                changes().stream().filter(LoadChange::isReTerminated).toList());
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
                steps.add(WorkStep.breaker(
                        next.from().isEmpty() ? WorkStepKind.PUT_IN : WorkStepKind.RE_TERMINATE,
                        next.load(),
                        next.to().panel(),
                        next.to().slot()));
                left.remove(next);
            } else {
                park(holders(next).iterator().next());
            }
        }
    }

    private List<LoadChange> changes() {
        return stage.stream().filter(passage::isLoad).mapToObj(passage::load).toList();
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
        changes().forEach(change -> wanted.addAll(passage.slots(change.to())));
        Assignment seat = before.get(load);
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

    private void moveLeads() {
        List<LoadChange> left = new ArrayList<>(
                changes().stream().filter(LoadChange::isReLanded).toList());
        while (!left.isEmpty()) {
            Optional<LoadChange> free =
                    left.stream().filter(change -> leadHolder(change).isEmpty()).findFirst();
            LoadChange next = free.orElse(left.get(0));
            if (free.isPresent()) {
                onOutput.values().removeIf(next.load()::equals);
                Passage.output(next.to()).ifPresent(output -> onOutput.put(output, next.load()));
                steps.add(
                        WorkStep.lead(next.load(), next.to().board(), next.to().output()));
                left.remove(next);
            } else {
                String holder = leadHolder(next).orElseThrow();
                onOutput.values().removeIf(holder::equals);
                steps.add(WorkStep.load(WorkStepKind.LIFT_LEAD, holder));
            }
        }
    }

    private Optional<String> leadHolder(LoadChange change) {
        return Passage.output(change.to())
                .flatMap(output -> Optional.ofNullable(onOutput.get(output)))
                .filter(load -> !load.equals(change.load()));
    }
}
