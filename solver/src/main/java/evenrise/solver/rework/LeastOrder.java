package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.IntFunction;

/**
 * What no order of the same changes can stay below, however many they are. A change is made in some stage, and whatever it
 * takes off by itself is off in that stage: it goes into the sums at least once. So the sums are at least
 *
 * <ul>
 *   <li>the commands that some change needs,
 *   <li>the panels in which something is worked on, and the boards whose leads are moved and that none of these feeds,
 *   <li>the shutdown groups that some change takes out.
 * </ul>
 *
 * <p>What is taken off is counted with the loads alone that are there whatever has been done: those that stay where they are
 * and those that stay inside what is isolated. What else a night forbids and what a load's inrush forbids only take orders away, and
 * are left out.
 *
 * <p>Where a stage has an end, each of these goes into the sums as often as the minutes of its changes ask for
 * ({@link LeastStages}).
 *
 * <p>How many loads are locked out at once: those at least that go round in a ring, each to where the next one is. In an
 * order that gives each command once, all changes that need it are made in one stage; in one that also isolates each panel
 * once, so are all changes in that panel.
 */
final class LeastOrder {
    private final Passage passage;
    private final List<Outages.Outage> alone = new ArrayList<>();
    private final Isolation isolation;
    private final LeastStages leastStages;

    LeastOrder(Passage passage) {
        this.passage = passage;
        this.isolation = passage.isolation(passage.all());
        this.leastStages = new LeastStages(passage);
        SurelyOff surely = new SurelyOff(passage);
        for (int change = 0; change < passage.size(); change++) {
            alone.add(surely.with(change));
        }
    }

    /**
     * At least that much, number by number. Those of stages with a system off, of isolations, of outages and of stages hold
     * for every order; that of loads locked out at once holds for those that are as cheap in the former two.
     *
     * @param cost of an order that was found
     */
    OrderCost beside(OrderCost cost) {
        if (passage.size() == 0) {
            return OrderCost.NOTHING;
        }
        Map<String, BitSet> commands = by(change -> alone.get(change).commands());
        Map<String, BitSet> dead = by(this::dead);
        boolean isEachCommandOnce = cost.systemOffs() == commands.size();
        boolean isEachDeadOnce = cost.isolations() == dead.size();
        return new OrderCost(
                stages(commands),
                stages(dead),
                mostLockedOut(
                        isEachCommandOnce ? commands : Map.of(), isEachCommandOnce && isEachDeadOnce ? dead : Map.of()),
                stages(by(change -> passage.groups(alone.get(change).loads()))),
                Math.max(1, stages(Map.of("", passage.all()))));
    }

    /** Panels, and boards outside all panels that are ever dead, that are isolated for a change. */
    private Set<String> dead(int change) {
        Isolation own = passage.isolation(only(change));
        Set<String> dead = new HashSet<>();
        own.panels().forEach(panel -> dead.add("panel " + panel));
        own.boards().stream().filter(isolation.boards()::contains).forEach(board -> dead.add("board " + board));
        return dead;
    }

    /** By word, the changes that it is true of. */
    private Map<String, BitSet> by(IntFunction<Set<String>> words) {
        Map<String, BitSet> changes = new HashMap<>();
        for (int change = 0; change < passage.size(); change++) {
            for (String word : words.apply(change)) {
                changes.computeIfAbsent(word, any -> new BitSet()).set(change);
            }
        }
        return changes;
    }

    /** Each word in one stage at least, and in as many as its changes take minutes for where a stage has an end. */
    private int stages(Map<String, BitSet> changes) {
        OptionalDouble longest = passage.longestMinutes();
        return changes.values().stream()
                .mapToInt(each -> longest.isPresent() ? Math.max(1, leastStages.of(each, longest.getAsDouble())) : 1)
                .sum();
    }

    private int mostLockedOut(Map<String, BitSet> commands, Map<String, BitSet> dead) {
        BitSet[] notBefore = notBefore();
        commands.values().forEach(each -> tie(notBefore, each));
        dead.values().forEach(each -> tie(notBefore, each));
        close(notBefore);
        int most = 0;
        for (int change = 0; change < passage.size(); change++) {
            BitSet together = only(change);
            for (int other = notBefore[change].nextSetBit(0);
                    other >= 0;
                    other = notBefore[change].nextSetBit(other + 1)) {
                together.set(other, together.get(other) || notBefore[other].get(change));
            }
            most = Math.max(most, passage.loads(together).size());
        }
        return most;
    }

    /** By change, those that it cannot be made before: of loads that are where it goes. */
    private BitSet[] notBefore() {
        Map<String, Integer> holders = new HashMap<>();
        for (int change = 0; change < passage.size(); change++) {
            int holder = change;
            from(change).stream().flatMap(seat -> places(seat).stream()).forEach(place -> holders.put(place, holder));
        }
        BitSet[] notBefore = new BitSet[passage.size()];
        for (int change = 0; change < passage.size(); change++) {
            notBefore[change] = new BitSet();
            if (passage.isLoad(change)) {
                Assignment to = passage.load(change).to();
                for (String place : places(to)) {
                    Integer holder = holders.get(place);
                    if (holder != null && holder != change) {
                        notBefore[change].set(holder);
                    }
                }
            }
        }
        return notBefore;
    }

    private Optional<Assignment> from(int change) {
        return passage.isLoad(change)
                ? passage.load(change).from()
                : passage.isRemoval(change)
                        ? Optional.of(passage.removal(change).from())
                        : Optional.empty();
    }

    /** Slots and the output that a load takes there. */
    private List<String> places(Assignment seat) {
        List<String> places = new ArrayList<>(passage.slots(seat));
        Passage.output(seat).ifPresent(places::add);
        return places;
    }

    /** These changes are made in one stage. */
    private static void tie(BitSet[] notBefore, BitSet changes) {
        changes.stream().forEach(change -> notBefore[change].or(changes));
    }

    /** What a change cannot be made before, nor can whoever waits for it. */
    private static void close(BitSet[] notBefore) {
        for (int through = 0; through < notBefore.length; through++) {
            for (BitSet each : notBefore) {
                if (each.get(through)) {
                    each.or(notBefore[through]);
                }
            }
        }
    }

    private static BitSet only(int change) {
        BitSet one = new BitSet();
        one.set(change);
        return one;
    }
}
