package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
import evenrise.model.project.Load;
import evenrise.model.project.SwitchedBy;
import evenrise.model.rules.ProjectIndex;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Stream;

/** Spare breakers as the work goes on: those that were there, less those that are used or in the way, and those left. */
public final class SpareBreakers {
    private SpareBreakers() {}

    /** Those that are there when these changes are done. */
    static List<SpareBreaker> at(Passage passage, BitSet done) {
        Stream<SpareBreaker> left = done.stream()
                .filter(passage::isRemoval)
                .mapToObj(passage::removal)
                .flatMap(removal -> left(passage, removal).stream());
        List<LoadChange> placed = done.stream()
                .filter(passage::isLoad)
                .mapToObj(passage::load)
                .filter(LoadChange::isReTerminated)
                .toList();
        return Stream.concat(passage.plant.spares().stream(), left)
                .filter(spare -> placed.stream().noneMatch(change -> isInTheWay(passage.index, spare, change.to())))
                .toList();
    }

    /** What the breaker of gear that is gone is left as: nobody needs its slots, or who does takes it as it is. */
    static Optional<SpareBreaker> left(Passage passage, Removal removal) {
        SpareBreaker spare = of(passage.plant, removal.from());
        return Optional.of(spare)
                .filter(any -> passage.plant.leavesSpares())
                .filter(any -> passage.changes.loads().stream()
                        .filter(LoadChange::isReTerminated)
                        .filter(change -> isInTheWay(passage.index, spare, change.to()))
                        .allMatch(change -> isUsed(passage.index, spare, change)));
    }

    /** Whether a new load takes the breaker that is there; what is moved brings its own along. */
    static boolean isUsed(ProjectIndex index, SpareBreaker spare, LoadChange change) {
        return change.from().isEmpty()
                && spare.isAt(change.to().panel(), change.to().slot())
                && index.load(change.load()).filter(spare::suits).isPresent();
    }

    /** Whether it takes a slot of a place. */
    public static boolean isInTheWay(ProjectIndex index, SpareBreaker spare, Assignment to) {
        return !Collections.disjoint(spare.slots(index), slots(index, to));
    }

    private static Set<String> slots(ProjectIndex index, Assignment to) {
        Set<String> slots = new HashSet<>();
        int poles = index.load(to.load()).map(Load::poles).orElse(1);
        index.panel(to.panel())
                .ifPresent(panel -> index.slotsOf(panel)
                        .span(to.slot(), poles)
                        .forEach(each -> slots.add(to.panel() + "\n" + each)));
        return slots;
    }

    /** The breaker of gear that is gone, without the gear. */
    private static SpareBreaker of(BuiltPlant plant, Assignment seat) {
        Optional<Load> load = plant.project().loads().stream()
                .filter(each -> each.id().equals(seat.load()))
                .findFirst();
        Optional<Load> known = load.filter(each -> !plant.unknown().contains(each.id()));
        return new SpareBreaker(
                seat.panel(),
                seat.slot(),
                load.map(Load::poles).orElse(1),
                known.map(each -> OptionalDouble.of(each.breakerAmps())).orElse(OptionalDouble.empty()),
                known.flatMap(Load::curve),
                known.filter(each -> each.switched() && each.switchedBy() == SwitchedBy.BREAKER)
                        .isPresent());
    }

    /** How many have to come out before these changes can be made. */
    static int evicted(BuiltPlant plant, ProjectIndex index, Changes changes) {
        return (int) plant.spares().stream()
                .filter(spare -> changes.loads().stream()
                        .filter(LoadChange::isReTerminated)
                        .anyMatch(change -> isInTheWay(index, spare, change.to()) && !isUsed(index, spare, change)))
                .count();
    }

    /** Those that are there after a stage, by its steps. */
    public static List<SpareBreaker> after(BuiltPlant plant, List<SpareBreaker> before, WorkStage stage) {
        List<SpareBreaker> now = new ArrayList<>(before);
        for (WorkStep step : stage.steps()) {
            if (step.kind() == WorkStepKind.USE_SPARE || step.kind() == WorkStepKind.REMOVE_SPARE) {
                now.removeIf(spare ->
                        spare.isAt(step.panel().orElseThrow(), step.slot().orElseThrow()));
            } else if (step.kind() == WorkStepKind.LEAVE_SPARE) {
                now.add(of(
                        plant,
                        Assignment.builder()
                                .load(step.load().orElseThrow())
                                .panel(step.panel().orElseThrow())
                                .slot(step.slot().orElseThrow())
                                .build()));
            }
        }
        return now;
    }
}
