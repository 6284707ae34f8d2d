package evenrise.solver.engine.state;

import java.util.Arrays;

/** Which systems each board switches, and whether it follows a used board of another; only where there are systems. */
public final class SystemSpread {
    private final CompiledProject compiled;
    /** By board and system, its loads. */
    private final int[][] loads;

    private final int[] kinds;
    private final int[] onBoard;
    private final long[] chargeOf;
    private final IndexSet muddled;
    private long charge;

    SystemSpread(CompiledProject compiled) {
        this.compiled = compiled;
        boolean hasSystems = compiled.hasSystems;
        loads = new int[hasSystems ? compiled.boardCount : 0][compiled.systemCount];
        kinds = new int[compiled.boardCount];
        onBoard = new int[compiled.boardCount];
        chargeOf = new long[compiled.boardCount];
        muddled = new IndexSet(compiled.boardCount);
    }

    /** A load with an output on {@code board}. */
    void add(int load, int board, int sign) {
        if (loads.length > 0) {
            int system = compiled.systemOf[load];
            loads[board][system] += sign;
            onBoard[board] += sign;
            if (loads[board][system] == (sign > 0 ? 1 : 0)) {
                kinds[board] += sign;
            }
        }
    }

    /** Looks again at a board whose loads have changed, and at those that follow it. */
    void refresh(int board) {
        if (loads.length == 0) {
            return;
        }
        long now = chargeOn(board);
        charge += now - chargeOf[board];
        chargeOf[board] = now;
        muddled.set(board, now > 0);
        for (int follower : compiled.followers[board]) {
            refreshBelow(follower);
        }
    }

    private void refreshBelow(int board) {
        if (kinds[board] > 0) {
            long now = chargeOn(board);
            charge += now - chargeOf[board];
            chargeOf[board] = now;
            muddled.set(board, now > 0);
        } else {
            for (int follower : compiled.followers[board]) {
                refreshBelow(follower);
            }
        }
    }

    private long chargeOn(int board) {
        if (kinds[board] == 0) {
            return 0;
        }
        int stated = compiled.boardSystem[board];
        int most = 0;
        for (int system = 0; system < loads[board].length; system++) {
            if (stated == CompiledProject.NONE || stated == system) {
                most = Math.max(most, loads[board][system]);
            }
        }
        long places = onBoard[board] - most;
        int before = usedBefore(board);
        if (before != CompiledProject.NONE && differ(board, before)) {
            places++;
        }
        return places * Charges.PLACE;
    }

    private int usedBefore(int board) {
        int before = compiled.after[board];
        while (before != CompiledProject.NONE && kinds[before] == 0) {
            before = compiled.after[before];
        }
        return before;
    }

    private boolean differ(int board, int before) {
        for (int system = 0; system < loads[board].length; system++) {
            if (loads[board][system] > 0 != loads[before][system] > 0) {
                return true;
            }
        }
        return false;
    }

    /** Boards of several systems, of another than they may be, or behind one of another. */
    public IndexSet muddled() {
        return muddled;
    }

    /** Loads of one system alone, or none; {@link CompiledProject#NONE} where it is used by none or several. */
    public int systemOn(int board) {
        return loads.length == 0 || kinds[board] != 1 ? CompiledProject.NONE : largest(loads[board]);
    }

    private static int largest(int[] counts) {
        int most = Arrays.stream(counts).max().orElse(0);
        int at = 0;
        while (counts[at] != most) {
            at++;
        }
        return at;
    }

    long charge() {
        return charge;
    }
}
