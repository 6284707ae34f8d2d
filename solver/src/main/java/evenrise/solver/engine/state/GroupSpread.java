package evenrise.solver.engine.state;

import java.util.Arrays;

/**
 * Over which boards and panels each shutdown group is spread, what its boards hold beside it, and how many outputs they
 * leave. Boards that seat groups anyhow bind none, but where a group has loads on one that does.
 */
public final class GroupSpread {
    private final CompiledProject compiled;
    /** By board: its loads of each group. A board holds few groups, and a group sits in few panels. */
    private final FewCounts[] onBoard;
    /** By group that must sit in one panel: its loads in each; null for others. */
    private final FewCounts[] inPanel;

    private final int[] boardsOfGroup;
    /** By group: boards of those that seat groups whole. */
    private final int[] wholeBoardsOfGroup;

    private final int[] placedOfGroup;
    /** Charge for the loads of a group that are not in the panel of most of it, where it must sit in one. */
    private final long[] strayCharge;

    private final int[] loadsOnBoard;
    private final int[] dropsOnBoard;
    private final int[] largeGroupsOnBoard;
    private final int[] largeGroupLoadsOnBoard;
    private final IndexSet torn;
    private long charge;

    GroupSpread(CompiledProject compiled) {
        this.compiled = compiled;
        onBoard = new FewCounts[compiled.boardCount];
        Arrays.setAll(onBoard, board -> new FewCounts());
        inPanel = new FewCounts[compiled.groupCount];
        Arrays.setAll(inPanel, group -> compiled.groupSamePanel[group] ? new FewCounts() : null);
        boardsOfGroup = new int[compiled.groupCount];
        wholeBoardsOfGroup = new int[compiled.groupCount];
        placedOfGroup = new int[compiled.groupCount];
        strayCharge = new long[compiled.groupCount];
        loadsOnBoard = new int[compiled.boardCount];
        dropsOnBoard = new int[compiled.boardCount];
        largeGroupsOnBoard = new int[compiled.boardCount];
        largeGroupLoadsOnBoard = new int[compiled.boardCount];
        torn = new IndexSet(compiled.groupCount);
    }

    /** A switched load with an output on {@code board}. */
    void addToBoard(int load, int board, int sign) {
        charge -= mixed(board);
        loadsOnBoard[board] += sign;
        if (compiled.drops[load]) {
            dropsOnBoard[board] += sign;
        }
        int group = compiled.group[load];
        if (group != CompiledProject.NONE) {
            boolean cameOrWent = onBoard[board].add(group, sign) == (sign > 0 ? 1 : 0);
            if (compiled.groupIsLarge[group]) {
                largeGroupLoadsOnBoard[board] += sign;
                largeGroupsOnBoard[board] += cameOrWent ? sign : 0;
            } else if (cameOrWent) {
                charge -= split(group);
                boardsOfGroup[group] += sign;
                wholeBoardsOfGroup[group] += compiled.seatsGroupsWhole[board] ? sign : 0;
                charge += split(group);
                noteTorn(group);
            }
        }
        charge += mixed(board);
    }

    /** A switched load with a place in {@code panel}. */
    void addToPanel(int load, int panel, int sign) {
        int group = compiled.group[load];
        if (group != CompiledProject.NONE && inPanel[group] != null) {
            inPanel[group].add(panel, sign);
            placedOfGroup[group] += sign;
            charge -= strayCharge[group];
            strayCharge[group] = Charges.PLACE * (placedOfGroup[group] - inPanel[group].largest());
            charge += strayCharge[group];
            noteTorn(group);
        }
    }

    private void noteTorn(int group) {
        torn.set(group, isSplit(group) || strayCharge[group] > 0);
    }

    public int loadsOn(int board) {
        return loadsOnBoard[board];
    }

    /** Whether a board holds loads that must not share it. */
    public boolean isMixed(int board) {
        return mixed(board) > 0;
    }

    /** Whether a group that fits one board is on several. */
    public boolean isSplit(int group) {
        return split(group) > 0;
    }

    /** Groups on more boards, or in more panels, than they may be. */
    public IndexSet torn() {
        return torn;
    }

    long charge() {
        return charge;
    }

    private long split(int group) {
        return wholeBoardsOfGroup[group] == 0 ? 0 : (boardsOfGroup[group] - 1) * Charges.PLACE;
    }

    /**
     * Emergency classes mixed on a board, loads that share a board with a group that needs whole boards, and outputs that
     * were to stay free.
     */
    private long mixed(int board) {
        int loads = loadsOnBoard[board];
        int drops = dropsOnBoard[board];
        long places = compiled.dropsByOutput[board] ? 0 : Math.min(drops, loads - drops);
        if (compiled.seatsGroupsWhole[board]) {
            // Each large group here finds all loads in its way that are not its own.
            places += (long) largeGroupsOnBoard[board] * loads - largeGroupLoadsOnBoard[board];
        }
        places += Math.max(0, loads - compiled.usableOutputs(board));
        return places * Charges.PLACE;
    }
}
