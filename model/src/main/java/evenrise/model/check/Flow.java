package evenrise.model.check;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Deque;
import java.util.List;

/**
 * How much of what several senders have fits into several receivers, each sender restricted to some of them: a maximum
 * flow by shortest augmenting paths (Edmonds and Karp 1972). Exact; the senders that do not fit together with what they
 * compete with are named by the minimum cut.
 */
final class Flow {
    private final int[] supply;
    private final int[] room;
    private final BitSet[] ways;
    private final int[][] sent;

    Flow(List<Integer> supply, List<BitSet> ways, int[] room) {
        this.supply = supply.stream().mapToInt(Integer::intValue).toArray();
        this.room = room.clone();
        this.ways = ways.toArray(BitSet[]::new);
        this.sent = new int[supply.size()][room.length];
        boolean more;
        fillDirectly();
        do {
            more = augment();
        } while (more);
    }

    private void fillDirectly() {
        for (int s = 0; s < supply.length; s++) {
            for (int r = ways[s].nextSetBit(0); r >= 0 && supply[s] > 0; r = ways[s].nextSetBit(r + 1)) {
                int amount = Math.min(supply[s], room[r]);
                supply[s] -= amount;
                room[r] -= amount;
                sent[s][r] += amount;
            }
        }
    }

    /** What is left over in all. */
    int left() {
        return Arrays.stream(supply).sum();
    }

    private boolean augment() {
        int senders = supply.length;
        int[] from = new int[senders + room.length];
        int end = search(from);
        if (end < 0) {
            return false;
        }
        List<Integer> path = new ArrayList<>();
        for (int at = end; at >= 0; at = from[at]) {
            path.add(0, at);
        }
        int amount = Math.min(supply[path.get(0)], room[end - senders]);
        for (int i = 1; i + 1 < path.size(); i += 2) {
            amount = Math.min(amount, sent[path.get(i + 1)][path.get(i) - senders]);
        }
        supply[path.get(0)] -= amount;
        room[end - senders] -= amount;
        for (int i = 0; i + 1 < path.size(); i++) {
            int a = path.get(i);
            int b = path.get(i + 1);
            if (a < senders) {
                sent[a][b - senders] += amount;
            } else {
                sent[b][a - senders] -= amount;
            }
        }
        return true;
    }

    /** A receiver with room that a sender with something left can reach, or −1; {@code from} tells the way, −1 its start. */
    private int search(int[] from) {
        int senders = supply.length;
        Arrays.fill(from, -2);
        Deque<Integer> open = new ArrayDeque<>();
        for (int s = 0; s < senders; s++) {
            if (supply[s] > 0) {
                from[s] = -1;
                open.add(s);
            }
        }
        while (!open.isEmpty()) {
            int at = open.poll();
            if (at >= senders) {
                for (int s = 0; s < senders; s++) {
                    if (from[s] == -2 && sent[s][at - senders] > 0) {
                        from[s] = at;
                        open.add(s);
                    }
                }
            } else {
                for (int r = ways[at].nextSetBit(0); r >= 0; r = ways[at].nextSetBit(r + 1)) {
                    if (from[senders + r] == -2) {
                        from[senders + r] = at;
                        if (room[r] > 0) {
                            return senders + r;
                        }
                        open.add(senders + r);
                    }
                }
            }
        }
        return -1;
    }

    /** Senders that compete for receivers which together have too little room; empty where all fits. */
    BitSet crowded() {
        int[] from = new int[supply.length + room.length];
        search(from);
        BitSet crowded = new BitSet();
        for (int s = 0; s < supply.length; s++) {
            if (from[s] != -2) {
                crowded.set(s);
            }
        }
        return crowded;
    }
}
