package evenrise.solver.engine.state;

import java.util.Arrays;

/** Which loads come on at each instant, so that a move can aim at the loads that make the peak. */
public final class InstantIndex {
    private final int[][] members;
    private final int[] sizes;
    private final int[] positionOf;
    private final int[] used;
    private final int[] usedPosition;
    private int usedCount;

    InstantIndex(CompiledProject compiled) {
        members = new int[compiled.instants.size()][];
        sizes = new int[compiled.instants.size()];
        positionOf = new int[compiled.loadCount()];
        used = new int[Math.min(compiled.instants.size(), compiled.loadCount())];
        usedPosition = new int[compiled.instants.size()];
    }

    void add(int load, int instant, int sign) {
        if (sign > 0) {
            if (members[instant] == null) {
                members[instant] = new int[4];
            } else if (sizes[instant] == members[instant].length) {
                members[instant] = Arrays.copyOf(members[instant], 2 * sizes[instant]);
            }
            if (sizes[instant] == 0) {
                usedPosition[instant] = usedCount;
                used[usedCount++] = instant;
            }
            positionOf[load] = sizes[instant];
            members[instant][sizes[instant]++] = load;
        } else {
            int last = members[instant][--sizes[instant]];
            members[instant][positionOf[load]] = last;
            positionOf[last] = positionOf[load];
            if (sizes[instant] == 0) {
                int moved = used[--usedCount];
                used[usedPosition[instant]] = moved;
                usedPosition[moved] = usedPosition[instant];
            }
        }
    }

    public int count(int instant) {
        return sizes[instant];
    }

    public int get(int instant, int position) {
        return members[instant][position];
    }

    /** How many instants have a load that comes on. */
    int usedCount() {
        return usedCount;
    }

    /** How many can have one at most. */
    int mostUsed() {
        return used.length;
    }

    /** One of those instants, in no order. */
    int used(int position) {
        return used[position];
    }
}
