package evenrise.solver.compare;

import evenrise.model.project.BoardType;
import evenrise.model.project.EmergencyBy;
import evenrise.model.project.GroupSeating;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Whether boards of given kinds can hold the shutdown groups of a system at all: bin packing with boards of several sizes. A
 * group that fits the largest board sits on one; a larger one has boards of its own; what drops and what holds share no
 * board, unless it drops outputs one by one; loads without a group hold and fill what is left. Boards that seat groups anyhow
 * are one pool of outputs, which asks less than they do.
 *
 * <p>Decided by filling one board after another with the largest group left and whatever else fits, in every way that
 * differs and leaves no room for another group: who can be added to a board does no harm there. States that came to nothing
 * are remembered. There is a limit on the tries.
 */
final class GroupPacking {
    /** After so many tries it is not decided. */
    private static final int MOST_TRIES = 60_000;

    /** What came of it. */
    enum Answer {
        FITS,
        FITS_NOT,
        NOT_DECIDED
    }

    /**
     * Loads of a group that need an output.
     *
     * @param rank groups of the same are put together where there is a choice, those of a lower rank first
     */
    record Group(String id, int size, boolean drops, int rank) {}

    /** Loads of one group that go on one board, by its place in the list; a group without any is in the pool. */
    record Seated(Group group, int board, int loads) {}

    private record Sort(int size, boolean drops, int rank) {}

    /**
     * One step of a packing: a board of a kind with so many groups of each sort, or as a part of a large group; or a group
     * of a sort, or what is left of one, in the pool.
     */
    private record Filled(int kind, int[] bySort, int sort) {
        boolean isPool() {
            return kind < 0;
        }
    }

    private final List<BoardType> boards;
    private final List<Group> groups;
    private final List<Sort> sorts = new ArrayList<>();
    private final List<BoardType> kinds;
    private final int largest;
    private final int singles;
    private final Set<List<Integer>> barren = new HashSet<>();
    private final List<Filled> filled = new ArrayList<>();
    private int tries;

    /** @param singles loads without a group that need an output */
    GroupPacking(List<Group> groups, int singles, List<BoardType> boards) {
        this.boards = List.copyOf(boards);
        this.groups = List.copyOf(groups);
        this.singles = singles;
        this.kinds = boards.stream()
                .filter(type -> type.groups() == GroupSeating.ONE_BOARD)
                .distinct()
                .toList();
        this.largest = kinds.stream().mapToInt(BoardType::outputs).max().orElse(0);
        groups.stream()
                .map(GroupPacking::sortOf)
                .distinct()
                .sorted(Comparator.comparing((Sort sort) -> sort.size() <= largest)
                        .thenComparing(Sort::rank)
                        .thenComparing(Sort::size, Comparator.reverseOrder())
                        .thenComparing(Sort::drops))
                .forEach(sorts::add);
    }

    Answer answer() {
        int[] left = new int[sorts.size()];
        groups.forEach(group -> left[sorts.indexOf(sortOf(group))]++);
        int[] free = new int[kinds.size()];
        boards.stream().filter(kinds::contains).forEach(type -> free[kinds.indexOf(type)]++);
        int pool = boards.stream()
                .filter(type -> type.groups() == GroupSeating.ANY)
                .mapToInt(GroupPacking::room)
                .sum();
        boolean fits = place(left, free, pool, 0);
        return fits ? Answer.FITS : tries > MOST_TRIES ? Answer.NOT_DECIDED : Answer.FITS_NOT;
    }

    /** Who sits where, after it {@link Answer#FITS}; what went into the pool is left out. */
    List<Seated> seats() {
        List<Seated> seats = new ArrayList<>();
        List<List<Group>> waiting = new ArrayList<>();
        int[] missing = new int[sorts.size()];
        for (Sort sort : sorts) {
            waiting.add(new ArrayList<>(
                    groups.stream().filter(group -> sortOf(group).equals(sort)).toList()));
        }
        boolean[] taken = new boolean[boards.size()];
        for (Filled each : filled) {
            if (each.isPool()) {
                waiting.get(each.sort()).remove(0);
                missing[each.sort()] = 0;
                continue;
            }
            int board = firstFree(kinds.get(each.kind()), taken);
            taken[board] = true;
            if (each.sort() >= 0) {
                int sort = each.sort();
                Group group = waiting.get(sort).get(0);
                int before = missing[sort] == 0 ? group.size() : missing[sort];
                int here = Math.min(before, room(kinds.get(each.kind())));
                seats.add(new Seated(group, board, here));
                missing[sort] = before - here;
                if (missing[sort] == 0) {
                    waiting.get(sort).remove(0);
                }
            } else {
                for (int sort = 0; sort < sorts.size(); sort++) {
                    for (int i = 0; i < each.bySort()[sort]; i++) {
                        Group group = waiting.get(sort).remove(0);
                        seats.add(new Seated(group, board, group.size()));
                    }
                }
            }
        }
        return seats;
    }

    private int firstFree(BoardType type, boolean[] taken) {
        for (int board = 0; board < taken.length; board++) {
            if (!taken[board] && boards.get(board).equals(type)) {
                return board;
            }
        }
        throw new IllegalStateException("no board of type '" + type.id() + "' is left");
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
            there += free[kind] * room(kinds.get(kind));
        }
        if (asked > there) {
            return false;
        }
        if (next < 0) {
            return true;
        }
        List<Integer> state = state(left, free, pool, Math.min(spare, singles));
        if (barren.contains(state) || ++tries > MOST_TRIES) {
            return false;
        }
        boolean fits = sorts.get(next).size() > largest
                ? placeLarge(next, sorts.get(next).size(), 0, left, free, pool, spare)
                : placeWhole(next, left, free, pool, spare);
        if (!fits) {
            barren.add(state);
        }
        return fits;
    }

    /** A group of this sort on a board of each kind in turn, or in the pool. */
    private boolean placeWhole(int sort, int[] left, int[] free, int pool, int spare) {
        for (int kind = 0; kind < free.length; kind++) {
            if (free[kind] > 0 && room(kinds.get(kind)) >= sorts.get(sort).size()) {
                free[kind]--;
                int[] with = new int[sorts.size()];
                with[sort] = 1;
                left[sort]--;
                boolean fits = complete(
                        kind,
                        sort,
                        sort,
                        room(kinds.get(kind)) - sorts.get(sort).size(),
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
        if (tries > MOST_TRIES) {
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
        if (tries > MOST_TRIES) {
            return false;
        }
        for (int next = kind; next < free.length; next++) {
            if (free[next] > 0) {
                free[next]--;
                filled.add(new Filled(next, new int[0], sort));
                boolean fits = placeLarge(sort, missing - room(kinds.get(next)), next, left, free, pool, spare);
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

    private static Sort sortOf(Group group) {
        return new Sort(group.size(), group.drops(), group.rank());
    }

    static int room(BoardType type) {
        return Math.max(0, type.outputs() - type.spareOutputs());
    }
}
