package evenrise.solver.compare;

import evenrise.model.project.BoardType;
import evenrise.model.project.EmergencyBy;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Tries packings of groups on boards: fills one board after another with the first group left and whatever else fits, in
 * every way that differs and leaves no room for another group, for who can be added to a board does no harm there. States
 * that came to nothing are remembered. There is a limit on the tries.
 */
final class PackingSearch {
    /** States that are met again and come to nothing cost less than new ones, but they cost. */
    private static final int MEETINGS_OF_A_TRY = 8;

    private final int most;
    private final List<Sort> sorts;
    private final List<BoardType> kinds;
    private final int largest;
    private final int singles;
    private final Set<List<Integer>> barren = new HashSet<>();
    private final List<Filled> filled = new ArrayList<>();
    private int tries;
    private long met;

    /** Groups that are the same to a packing. */
    record Sort(int size, boolean drops, int rank) {}

    /**
     * One step of a packing: a board of a kind with so many groups of each sort, or as a part of a large group; or a group
     * of a sort, or what is left of one, in the pool.
     */
    record Filled(int kind, int[] bySort, int sort) {
        boolean isPool() {
            return kind < 0;
        }
    }

    /**
     * @param sorts of groups, in the order in which they are taken
     * @param kinds of boards that seat groups whole
     * @param singles loads without a group that need an output
     * @param most tries, after which it is not decided
     */
    PackingSearch(List<Sort> sorts, List<BoardType> kinds, int singles, int most) {
        this.most = most;
        this.sorts = sorts;
        this.kinds = kinds;
        this.singles = singles;
        this.largest = kinds.stream().mapToInt(BoardType::outputs).max().orElse(0);
    }

    /**
     * Whether a packing was found.
     *
     * @param left groups of each sort
     * @param free boards of each kind
     * @param pool outputs of boards that seat groups anyhow
     */
    boolean finds(int[] left, int[] free, int pool) {
        return place(left, free, pool, 0);
    }

    /** Whether there were more ways than were tried. */
    boolean isCut() {
        return tries > most || met > (long) most * MEETINGS_OF_A_TRY;
    }

    /** How many ways were tried. */
    int tries() {
        return (int) Math.max(tries, met / MEETINGS_OF_A_TRY);
    }

    /** The packing that was found, board by board. */
    List<Filled> filled() {
        return filled;
    }

    /** @param spare outputs of boards in use that loads without a group may have */
    private boolean place(int[] left, int[] free, int pool, int spare) {
        int next = first(left);
        int asked = Math.max(0, singles - spare);
        for (int sort = 0; sort < left.length; sort++) {
            asked += left[sort] * sorts.get(sort).size();
        }
        int there = pool;
        for (int kind = 0; kind < free.length; kind++) {
            there += free[kind] * GroupPacking.room(kinds.get(kind));
        }
        if (asked > there) {
            return false;
        }
        if (next < 0) {
            return true;
        }
        List<Integer> state = state(left, free, pool, Math.min(spare, singles));
        met++;
        if (barren.contains(state)) {
            return false;
        }
        tries++;
        if (isCut()) {
            return false;
        }
        boolean fits = sorts.get(next).size() > largest
                ? placeLarge(next, sorts.get(next).size(), 0, left, free, pool, spare)
                : placeWhole(next, left, free, pool, spare);
        if (!fits && !isCut()) {
            barren.add(state);
        }
        return fits;
    }

    /** A group of this sort on a board of each kind in turn, or in the pool. */
    private boolean placeWhole(int sort, int[] left, int[] free, int pool, int spare) {
        for (int kind = 0; kind < free.length; kind++) {
            if (free[kind] > 0
                    && GroupPacking.room(kinds.get(kind)) >= sorts.get(sort).size()) {
                free[kind]--;
                int[] with = new int[sorts.size()];
                with[sort] = 1;
                left[sort]--;
                boolean fits = complete(
                        kind,
                        sort,
                        sort,
                        GroupPacking.room(kinds.get(kind)) - sorts.get(sort).size(),
                        with,
                        left,
                        free,
                        pool,
                        spare);
                left[sort]++;
                free[kind]++;
                if (fits) {
                    return true;
                }
            }
        }
        return pool >= sorts.get(sort).size()
                && placeInPool(sort, sorts.get(sort).size(), left, free, pool, spare);
    }

    /** Adds groups of sorts from {@code from} on, the most of each first, until no group fits any more. */
    private boolean complete(
            int kind, int lead, int from, int room, int[] with, int[] left, int[] free, int pool, int spare) {
        if (isCut()) {
            return false;
        }
        if (from == sorts.size()) {
            for (int sort = 0; sort < sorts.size(); sort++) {
                if (left[sort] > 0
                        && mayShare(kind, lead, sort)
                        && sorts.get(sort).size() <= room) {
                    return false; // another way adds it
                }
            }
            boolean takesSingles = !sorts.get(lead).drops() || dropsByOutput(kind);
            filled.add(new Filled(kind, with.clone(), -1));
            if (place(left, free, pool, spare + (takesSingles ? room : 0))) {
                return true;
            }
            filled.remove(filled.size() - 1);
            return false;
        }
        int size = sorts.get(from).size();
        int most = mayShare(kind, lead, from) ? Math.min(left[from], room / size) : 0;
        for (int more = most; more >= 0; more--) {
            with[from] += more;
            left[from] -= more;
            boolean fits = complete(kind, lead, from + 1, room - more * size, with, left, free, pool, spare);
            with[from] -= more;
            left[from] += more;
            if (fits) {
                return true;
            }
        }
        return false;
    }

    /** Takes whole boards of kinds from {@code kind} on until a large group has room; what is missing the pool may have. */
    private boolean placeLarge(int sort, int missing, int kind, int[] left, int[] free, int pool, int spare) {
        if (missing <= 0) {
            return placeNext(sort, left, free, pool, spare);
        }
        if (isCut()) {
            return false;
        }
        for (int next = kind; next < free.length; next++) {
            if (free[next] > 0) {
                free[next]--;
                filled.add(new Filled(next, new int[0], sort));
                boolean fits =
                        placeLarge(sort, missing - GroupPacking.room(kinds.get(next)), next, left, free, pool, spare);
                free[next]++;
                if (fits) {
                    return true;
                }
                filled.remove(filled.size() - 1);
            }
        }
        return missing <= pool && placeInPool(sort, missing, left, free, pool, spare);
    }

    private boolean placeInPool(int sort, int loads, int[] left, int[] free, int pool, int spare) {
        filled.add(new Filled(-1, new int[0], sort));
        if (placeNext(sort, left, free, pool - loads, spare)) {
            return true;
        }
        filled.remove(filled.size() - 1);
        return false;
    }

    private boolean placeNext(int sort, int[] left, int[] free, int pool, int spare) {
        left[sort]--;
        boolean fits = place(left, free, pool, spare);
        left[sort]++;
        return fits;
    }

    private boolean mayShare(int kind, int lead, int sort) {
        Sort other = sorts.get(sort);
        return other.size() <= largest
                && (dropsByOutput(kind) || other.drops() == sorts.get(lead).drops());
    }

    private boolean dropsByOutput(int kind) {
        return kinds.get(kind).emergencyBy() == EmergencyBy.OUTPUT;
    }

    private static int first(int[] left) {
        for (int sort = 0; sort < left.length; sort++) {
            if (left[sort] > 0) {
                return sort;
            }
        }
        return -1;
    }

    private static List<Integer> state(int[] left, int[] free, int pool, int spare) {
        List<Integer> state = new ArrayList<>(left.length + free.length + 2);
        Arrays.stream(left).forEach(state::add);
        Arrays.stream(free).forEach(state::add);
        state.add(pool);
        state.add(spare);
        return state;
    }
}
