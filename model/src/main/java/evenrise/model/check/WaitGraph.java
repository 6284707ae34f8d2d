package evenrise.model.check;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;

/**
 * Earliest times when some things wait for others: longest paths by a queue of what changed (Bellman and Ford), which also
 * finds waits that lead back to themselves.
 */
final class WaitGraph {
    private record Wait(int to, double seconds) {}

    private final List<Double> times = new ArrayList<>();
    private final List<List<Wait>> waits = new ArrayList<>();

    /** A node that is ready no earlier than {@code earliest}; its number. */
    int add(double earliest) {
        times.add(earliest);
        waits.add(new ArrayList<>());
        return times.size() - 1;
    }

    /** {@code to} is no earlier than {@code seconds} after {@code from}. */
    void wait(int from, int to, double seconds) {
        waits.get(from).add(new Wait(to, seconds));
    }

    /** Makes the times the earliest that keep all waits; or returns a circle of waits that cannot be kept. */
    List<Integer> settle() {
        int size = times.size();
        int[] cause = new int[size];
        int[] length = new int[size];
        java.util.Arrays.fill(cause, -1);
        boolean[] queued = new boolean[size];
        Deque<Integer> open = new ArrayDeque<>();
        for (int n = 0; n < size; n++) {
            open.add(n);
            queued[n] = true;
        }
        while (!open.isEmpty()) {
            int from = open.poll();
            queued[from] = false;
            for (Wait wait : waits.get(from)) {
                if (times.get(from) + wait.seconds > times.get(wait.to) + 1e-9) {
                    times.set(wait.to, times.get(from) + wait.seconds);
                    cause[wait.to] = from;
                    length[wait.to] = length[from] + 1;
                    if (length[wait.to] > size) {
                        return circle(wait.to, cause);
                    }
                    if (!queued[wait.to]) {
                        queued[wait.to] = true;
                        open.add(wait.to);
                    }
                }
            }
        }
        return List.of();
    }

    List<Double> times() {
        return times;
    }

    /** After as many steps back as there are nodes one is in the circle. */
    private static List<Integer> circle(int from, int[] cause) {
        int at = from;
        for (int n = 0; n < cause.length && cause[at] >= 0; n++) {
            at = cause[at];
        }
        List<Integer> circle = new ArrayList<>();
        for (int n = at; !circle.contains(n) && n >= 0; n = cause[n]) {
            circle.add(n);
        }
        return circle;
    }
}
