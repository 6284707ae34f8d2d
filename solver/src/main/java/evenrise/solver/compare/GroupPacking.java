package evenrise.solver.compare;

import evenrise.model.project.BoardType;
import evenrise.model.project.GroupSeating;
import evenrise.solver.compare.PackingSearch.Filled;
import evenrise.solver.compare.PackingSearch.Sort;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Whether boards of given kinds can hold the shutdown groups of a system at all: bin packing with boards of several sizes. A
 * group that fits the largest board sits on one; a larger one has boards of its own; what drops and what holds share no
 * board, unless it drops outputs one by one; loads without a group hold and fill what is left. Boards that seat groups anyhow
 * are one pool of outputs, which asks less than they do.
 */
final class GroupPacking {
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

    /** After so many tries it is not decided, unless others say how many. */
    static final int MOST_TRIES = 60_000;

    private final List<BoardType> boards;
    private final List<Group> groups;
    private final List<Sort> sorts = new ArrayList<>();
    private final List<BoardType> kinds;
    private final PackingSearch search;

    /** @param singles loads without a group that need an output */
    GroupPacking(List<Group> groups, int singles, List<BoardType> boards) {
        this(groups, singles, boards, MOST_TRIES);
    }

    /** @param most tries, after which it is not decided */
    GroupPacking(List<Group> groups, int singles, List<BoardType> boards, int most) {
        this.boards = List.copyOf(boards);
        this.groups = List.copyOf(groups);
        this.kinds = boards.stream()
                .filter(type -> type.groups() == GroupSeating.ONE_BOARD)
                .distinct()
                .toList();
        int largest = kinds.stream().mapToInt(BoardType::outputs).max().orElse(0);
        groups.stream()
                .map(GroupPacking::sortOf)
                .distinct()
                .sorted(Comparator.comparing((Sort sort) -> sort.size() <= largest)
                        .thenComparing(Sort::rank)
                        .thenComparing(Sort::size, Comparator.reverseOrder())
                        .thenComparing(Sort::drops))
                .forEach(sorts::add);
        search = new PackingSearch(sorts, kinds, singles, most);
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
        boolean fits = search.finds(left, free, pool);
        return fits ? Answer.FITS : search.isCut() ? Answer.NOT_DECIDED : Answer.FITS_NOT;
    }

    /** How many ways were tried. */
    int tries() {
        return search.tries();
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
        for (Filled each : search.filled()) {
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

    private static Sort sortOf(Group group) {
        return new Sort(group.size(), group.drops(), group.rank());
    }

    static int room(BoardType type) {
        return Math.max(0, type.outputs() - type.spareOutputs());
    }
}
