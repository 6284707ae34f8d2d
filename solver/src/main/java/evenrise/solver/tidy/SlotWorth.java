package evenrise.solver.tidy;

import evenrise.solver.tidy.PanelSlots.Breaker;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/**
 * How tidy a panel is, as numbers of which the first that differs decides, less being tidier: rows between a rack's loads,
 * where they cost anything; room for further breakers of three poles and of two; free slots for switched breakers; alike
 * loads whose outputs fall where their slots rise; slots in use far from the first.
 */
final class SlotWorth {
    private static final int RACK_ROWS = 0;
    private static final int ROOM_FOR_THREE_POLES = 1;
    private static final int ROOM_FOR_TWO_POLES = 2;
    private static final int FREE_SWITCHED = 3;
    private static final int FALLING_OUTPUTS = 4;
    private static final int FAR_SLOTS = 5;

    /** Room for more breakers of a kind is no reason to lay one apart. */
    private static final int ENOUGH = 3;

    private final PanelSlots panel;
    private final int enough;
    private final boolean countsRackRows;
    /** By breaker: rack, negative for none; set of alike loads; such a set on the same phases. */
    private final int[] racks;

    private final int[] sets;

    private final int[] spots;
    /** By spot: outputs of its loads, rising. They follow the slots whoever lies where. */
    private final long[][] outputs;

    private final long[] lastOutputs;
    private final boolean[] filled;

    SlotWorth(PanelSlots panel, boolean countsRackRows, int wanted) {
        this.panel = panel;
        this.enough = Math.max(ENOUGH, wanted);
        this.countsRackRows = countsRackRows;
        int count = panel.breakers.size();
        Map<String, Integer> rackNumbers = new HashMap<>();
        Map<List<Object>, Integer> spotNumbers = new HashMap<>();
        List<List<Long>> bySpot = new ArrayList<>();
        Map<Integer, Integer> setNumbers = new HashMap<>();
        this.racks = new int[count];
        this.spots = new int[count];
        for (int i = 0; i < count; i++) {
            Breaker breaker = panel.breakers.get(i);
            racks[i] = breaker.load()
                    .rack()
                    .map(rack -> rackNumbers.computeIfAbsent(rack, any -> rackNumbers.size()))
                    .orElse(-1);
            List<Object> spot = new ArrayList<>(List.of(breaker.set()));
            Arrays.stream(panel.span(i)).mapToObj(panel.geometry::phase).forEach(spot::add);
            spots[i] = spotNumbers.computeIfAbsent(spot, any -> {
                bySpot.add(new ArrayList<>());
                return bySpot.size() - 1;
            });
            bySpot.get(spots[i]).add(breaker.output());
            setNumbers.putIfAbsent(breaker.set(), setNumbers.size());
        }
        this.outputs = bySpot.stream()
                .map(each -> each.stream().sorted().mapToLong(Long::longValue).toArray())
                .toArray(long[][]::new);
        this.sets = panel.breakers.stream()
                .mapToInt(breaker -> setNumbers.get(breaker.set()))
                .toArray();
        this.lastOutputs = new long[setNumbers.size()];
        this.filled = new boolean[panel.geometry.slots + 1];
    }

    int[] now() {
        int[] worth = new int[FAR_SLOTS + 1];
        worth[RACK_ROWS] = countsRackRows ? rackRows() : 0;
        worth[ROOM_FOR_THREE_POLES] = -Math.min(enough, room(3));
        worth[ROOM_FOR_TWO_POLES] = -Math.min(enough, room(2));
        along(worth);
        return worth;
    }

    /** Whether {@code one} is tidier, and no room of any kind is lost for it. */
    static boolean isTidier(int[] one, int[] other) {
        for (int room = ROOM_FOR_THREE_POLES; room <= FREE_SWITCHED; room++) {
            if (one[room] > other[room]) {
                return false;
            }
        }
        return Arrays.compare(one, other) < 0;
    }

    /** Whether the slots in use lie nearer to the first. */
    static boolean isNearer(int[] one, int[] other) {
        return one[FAR_SLOTS] < other[FAR_SLOTS];
    }

    /** As {@link evenrise.model.rules.FreeSlots#breakers} counts. */
    private int room(int poles) {
        Arrays.fill(filled, false);
        int count = 0;
        for (int slot = 1; slot <= panel.geometry.slots; slot++) {
            if (panel.geometry.takes(slot, poles) && isEmpty(panel.geometry.span(slot, poles))) {
                for (int each : panel.geometry.span(slot, poles)) {
                    filled[each] = true;
                }
                count++;
            }
        }
        return count;
    }

    private boolean isEmpty(int[] span) {
        for (int slot : span) {
            if (panel.taken[slot] != PanelSlots.FREE || filled[slot]) {
                return false;
            }
        }
        return true;
    }

    private void along(int[] worth) {
        Arrays.fill(lastOutputs, Long.MIN_VALUE);
        int[] next = new int[outputs.length];
        for (int slot = 1; slot <= panel.geometry.slots; slot++) {
            int breaker = panel.taken[slot];
            if (breaker == PanelSlots.FREE) {
                worth[FREE_SWITCHED] -= panel.takesSwitched[slot] ? 1 : 0;
            } else if (breaker >= 0) {
                worth[FAR_SLOTS] += slot;
                if (panel.start(breaker) == slot) {
                    long output = outputs[spots[breaker]][next[spots[breaker]]++];
                    worth[FALLING_OUTPUTS] += output < lastOutputs[sets[breaker]] ? 1 : 0;
                    lastOutputs[sets[breaker]] = output;
                }
            }
        }
    }

    private int rackRows() {
        Map<Integer, TreeSet<Integer>> rows = new HashMap<>();
        for (int i = 0; i < racks.length; i++) {
            if (racks[i] >= 0) {
                for (int slot : panel.span(i)) {
                    rows.computeIfAbsent(racks[i], any -> new TreeSet<>()).add(panel.geometry.row(slot));
                }
            }
        }
        return rows.values().stream()
                .mapToInt(taken -> taken.last() - taken.first() + 1 - taken.size())
                .sum();
    }
}
