package evenrise.solver.engine.state;

import java.util.Arrays;

/** How often each of a few whole numbers occurs; any number may be one of them. Every operation takes time by how many they are. */
final class FewCounts {
    private int[] keys = new int[4];
    private int[] counts = new int[4];
    private int size;

    /** Counts {@code key} once more ({@code sign} 1) or once less (−1), and says how often it occurs then. */
    int add(int key, int sign) {
        int position = 0;
        while (position < size && keys[position] != key) {
            position++;
        }
        if (position == size) {
            append(key);
        }
        int count = counts[position] += sign;
        if (count == 0) {
            size--;
            keys[position] = keys[size];
            counts[position] = counts[size];
        }
        return count;
    }

    private void append(int key) {
        if (size == keys.length) {
            keys = Arrays.copyOf(keys, 2 * size);
            counts = Arrays.copyOf(counts, 2 * size);
        }
        keys[size] = key;
        counts[size++] = 0;
    }

    /** How often the most frequent occurs; 0 where there is none. */
    int largest() {
        int largest = 0;
        for (int i = 0; i < size; i++) {
            largest = Math.max(largest, counts[i]);
        }
        return largest;
    }
}
