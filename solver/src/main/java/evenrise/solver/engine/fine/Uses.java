package evenrise.solver.engine.fine;

import java.util.Arrays;

/** At which instants something comes on, with a change that is tried and then kept or dropped. */
final class Uses {
    private final int[] count;
    private final int[] planned;
    /** 1 where something comes on, 0 elsewhere; with the change once it is settled. */
    private final double[] factor;

    private int[] touched = new int[64];
    private int touchedCount;
    private int[] changed = new int[64];
    private int changedCount;

    Uses(int size) {
        count = new int[size];
        planned = new int[size];
        factor = new double[size];
    }

    void add(int instant, int sign) {
        count[instant] += sign;
        factor[instant] = count[instant] > 0 ? 1 : 0;
    }

    double factor(int instant) {
        return factor[instant];
    }

    /** A change lets one load more, or one less, come on at an instant. */
    void plan(int instant, int sign) {
        if (touchedCount == touched.length) {
            touched = Arrays.copyOf(touched, 2 * touchedCount);
        }
        touched[touchedCount++] = instant;
        planned[instant] += sign;
    }

    /** From now on {@link #factor} is that of the change. */
    void settle() {
        if (changed.length < touchedCount) {
            changed = new int[touched.length];
        }
        for (int i = 0; i < touchedCount; i++) {
            int instant = touched[i];
            double next = count[instant] + planned[instant] > 0 ? 1 : 0;
            if (next != factor[instant]) {
                factor[instant] = next;
                changed[changedCount++] = instant;
            }
        }
    }

    /** Instants whose use changes. */
    int changedCount() {
        return changedCount;
    }

    int changed(int position) {
        return changed[position];
    }

    /** Last instant in use; 0 where none is. */
    int last() {
        int instant = factor.length - 1;
        while (instant > 0 && factor[instant] == 0) {
            instant--;
        }
        return instant;
    }

    void keep() {
        for (int i = 0; i < touchedCount; i++) {
            count[touched[i]] += planned[touched[i]];
            planned[touched[i]] = 0;
        }
        touchedCount = 0;
        changedCount = 0;
    }

    void drop() {
        for (int i = 0; i < touchedCount; i++) {
            planned[touched[i]] = 0;
        }
        for (int i = 0; i < changedCount; i++) {
            factor[changed[i]] = 1 - factor[changed[i]];
        }
        touchedCount = 0;
        changedCount = 0;
    }
}
