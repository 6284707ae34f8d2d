package evenrise.solver.rework;

import evenrise.model.plan.Plan;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/**
 * An order of work that somebody lays out by hand, by saying which changes each stage makes. Its steps are written and
 * replayed as those of every order are; what the replay has against them stands in the order, and forbids nothing here.
 */
public final class LaidOrder {
    private final OrderOfWork work;

    public LaidOrder(BuiltPlant plant, Plan target, NightLimits night) {
        this.work = new OrderOfWork(plant, target, night);
    }

    /** What changes; its parts are numbered from 0 as they stand there: loads, settings, times, removals. */
    public Changes changes() {
        return work.passage().changes;
    }

    /** Which changes each stage of an order makes. */
    public List<List<Integer>> sets(WorkOrder order) {
        return order.stages().stream().map(this::set).toList();
    }

    private List<Integer> set(WorkStage stage) {
        Passage passage = work.passage();
        return passage.all().stream()
                .filter(change -> passage.isSetting(change)
                        ? isSet(stage, passage.setting(change))
                        : passage.isTime(change)
                                ? isSet(stage, passage.time(change))
                                : stage.lockedOut().containsAll(passage.loads(only(change))))
                .boxed()
                .toList();
    }

    private static boolean isSet(WorkStage stage, SettingChange change) {
        return stage.steps().contains(WorkStep.setting(change));
    }

    private static boolean isSet(WorkStage stage, TimeChange change) {
        return stage.steps().contains(WorkStep.time(change));
    }

    private static BitSet only(int change) {
        BitSet set = new BitSet();
        set.set(change);
        return set;
    }

    /**
     * The order that does them so.
     *
     * @param stages numbers of the changes that each makes
     * @return empty where they do not make each change once, or one of them makes none
     */
    public Optional<WorkOrder> of(List<List<Integer>> stages) {
        Passage passage = work.passage();
        BitSet done = new BitSet();
        List<BitSet> sets = new ArrayList<>();
        for (List<Integer> each : stages) {
            BitSet set = new BitSet();
            for (int change : each) {
                if (change < 0 || change >= passage.size() || done.get(change)) {
                    return Optional.empty();
                }
                set.set(change);
                done.set(change);
            }
            if (set.isEmpty()) {
                return Optional.empty();
            }
            sets.add(set);
        }
        return done.equals(passage.all()) ? Optional.of(work.laid(sets)) : Optional.empty();
    }
}
