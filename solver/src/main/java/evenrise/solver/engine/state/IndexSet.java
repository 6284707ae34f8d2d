package evenrise.solver.engine.state;

import java.util.Arrays;

/** A set of small whole numbers from which any can be drawn; every operation takes constant time. */
public final class IndexSet {
    private final int[] members;
    private final int[] positionOf;
    private int size;

    /** Empty, for numbers from 0 to {@code range} − 1. */
    public IndexSet(int range) {
        members = new int[range];
        positionOf = new int[range];
        Arrays.fill(positionOf, -1);
    }

    public void set(int member, boolean isIn) {
        if (isIn == (positionOf[member] >= 0)) {
            return;
        }
        if (isIn) {
            positionOf[member] = size;
            members[size++] = member;
        } else {
            int last = members[--size];
            members[positionOf[member]] = last;
            positionOf[last] = positionOf[member];
            positionOf[member] = -1;
        }
    }

    public boolean contains(int member) {
        return positionOf[member] >= 0;
    }

    public int size() {
        return size;
    }

    /** One of the members, in no order. */
    public int get(int position) {
        return members[position];
    }
}
