package evenrise.solver.engine;

/** A set of small whole numbers in order of arrival; every operation but {@link #clear} takes constant time. */
final class IntBag {
    private final int[] members;
    private final boolean[] present;
    private int size;

    IntBag(int range) {
        members = new int[range];
        present = new boolean[range];
    }

    void add(int member) {
        if (!present[member]) {
            present[member] = true;
            members[size++] = member;
        }
    }

    boolean contains(int member) {
        return present[member];
    }

    int get(int position) {
        return members[position];
    }

    int size() {
        return size;
    }

    boolean isEmpty() {
        return size == 0;
    }

    void clear() {
        for (int i = 0; i < size; i++) {
            present[members[i]] = false;
        }
        size = 0;
    }
}
