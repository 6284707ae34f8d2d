package evenrise.solver.engine.state;

/** A set of small whole numbers in order of arrival; every operation but {@link #clear} takes constant time. */
public final class IntBag {
    private final int[] members;
    private final boolean[] present;
    private int size;

    public IntBag(int range) {
        members = new int[range];
        present = new boolean[range];
    }

    public void add(int member) {
        if (!present[member]) {
            present[member] = true;
            members[size++] = member;
        }
    }

    public boolean contains(int member) {
        return present[member];
    }

    int get(int position) {
        return members[position];
    }

    public int size() {
        return size;
    }

    boolean isEmpty() {
        return size == 0;
    }

    public void clear() {
        for (int i = 0; i < size; i++) {
            present[members[i]] = false;
        }
        size = 0;
    }
}
