package evenrise.solver.engine;

import java.util.stream.IntStream;

/** Over which boards and panels each shutdown group is spread, and what its boards hold beside it. */
final class GroupSpread {
    private final Plant plant;
    private final short[][] onBoard;
    private final short[][] inPanel;
    private final int[] boardsOfGroup;
    private final int[] placedOfGroup;
    /** Charge for the loads of a group that are not in the panel of most of it, where it must sit in one. */
    private final long[] strayCharge;

    private final int[] loadsOnBoard;
    private final int[] dropsOnBoard;
    private final int[] largeGroupsOnBoard;
    private final int[] largeGroups;
    private long charge;

    GroupSpread(Plant plant) {
        this.plant = plant;
        onBoard = new short[plant.groupCount][plant.boardCount];
        inPanel = new short[plant.groupCount][];
        for (int group = 0; group < plant.groupCount; group++) {
            if (plant.groupSamePanel[group]) {
                inPanel[group] = new short[plant.panelCount];
            }
        }
        boardsOfGroup = new int[plant.groupCount];
        placedOfGroup = new int[plant.groupCount];
        strayCharge = new long[plant.groupCount];
        loadsOnBoard = new int[plant.boardCount];
        dropsOnBoard = new int[plant.boardCount];
        largeGroupsOnBoard = new int[plant.boardCount];
        largeGroups = IntStream.range(0, plant.groupCount)
                .filter(group -> plant.groupIsLarge[group])
                .toArray();
    }

    /** A switched load with an output on {@code board}. */
    void addToBoard(int load, int board, int sign) {
        charge -= mixed(board);
        loadsOnBoard[board] += sign;
        if (plant.drops[load]) {
            dropsOnBoard[board] += sign;
        }
        int group = plant.group[load];
        if (group != Plant.NONE) {
            onBoard[group][board] += (short) sign;
            boolean cameOrWent = onBoard[group][board] == (sign > 0 ? 1 : 0);
            if (cameOrWent && plant.groupIsLarge[group]) {
                largeGroupsOnBoard[board] += sign;
            } else if (cameOrWent) {
                charge -= split(boardsOfGroup[group]);
                boardsOfGroup[group] += sign;
                charge += split(boardsOfGroup[group]);
            }
        }
        charge += mixed(board);
    }

    /** A switched load with a place in {@code panel}. */
    void addToPanel(int load, int panel, int sign) {
        int group = plant.group[load];
        if (group != Plant.NONE && inPanel[group] != null) {
            inPanel[group][panel] += (short) sign;
            placedOfGroup[group] += sign;
            charge -= strayCharge[group];
            strayCharge[group] = Charges.PLACE * (placedOfGroup[group] - largest(inPanel[group]));
            charge += strayCharge[group];
        }
    }

    int loadsOn(int board) {
        return loadsOnBoard[board];
    }

    /** Whether a board holds loads that must not share it. */
    boolean isMixed(int board) {
        return mixed(board) > 0;
    }

    /** Whether a group that fits one board is on several. */
    boolean isSplit(int group) {
        return boardsOfGroup[group] > 1;
    }

    long charge() {
        return charge;
    }

    private static int largest(short[] counts) {
        int largest = 0;
        for (short count : counts) {
            largest = Math.max(largest, count);
        }
        return largest;
    }

    private static long split(int parts) {
        return Math.max(0, parts - 1) * Charges.PLACE;
    }

    /** Emergency classes mixed on a board, and loads that share a board with a group that needs whole boards. */
    private long mixed(int board) {
        int drops = dropsOnBoard[board];
        long places = Math.min(drops, loadsOnBoard[board] - drops);
        if (largeGroupsOnBoard[board] > 0) {
            for (int group : largeGroups) {
                if (onBoard[group][board] > 0) {
                    places += loadsOnBoard[board] - onBoard[group][board];
                }
            }
        }
        return places * Charges.PLACE;
    }
}
