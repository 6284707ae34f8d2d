package evenrise.solver.engine.state;

/** How far the loads of each rack are spread over panels, boards and rows, kept up to date load by load. */
final class RackSums {
    private final CompiledProject compiled;
    private final FewCounts[] inPanels;
    private final FewCounts[] onBoards;
    /** By rack and panel, how many breakers of the rack take each row; null where none ever has. */
    private final int[][][] rows;

    private final int[] panelsOf;
    private final int[] boardsOf;
    private long panels;
    private long boards;
    private long between;

    RackSums(CompiledProject compiled) {
        this.compiled = compiled;
        int racks = compiled.rackCount;
        inPanels = new FewCounts[racks];
        onBoards = new FewCounts[racks];
        rows = new int[racks][compiled.panelCount][];
        for (int rack = 0; rack < racks; rack++) {
            inPanels[rack] = new FewCounts();
            onBoards[rack] = new FewCounts();
        }
        panelsOf = new int[racks];
        boardsOf = new int[racks];
    }

    /** A load of a rack takes a place, or leaves it. */
    void addPlace(int rack, Place place, int sign) {
        panels -= beyondFirst(panelsOf[rack]);
        if (inPanels[rack].add(place.panel(), sign) == (sign > 0 ? 1 : 0)) {
            panelsOf[rack] += sign;
        }
        panels += beyondFirst(panelsOf[rack]);
        int[] taken = rows[rack][place.panel()];
        if (taken == null) {
            taken = new int[compiled.firstSlot[place.panel() + 1] - compiled.firstSlot[place.panel()] + 1];
            rows[rack][place.panel()] = taken;
        }
        between -= gaps(taken);
        for (int slot : place.slots()) {
            taken[compiled.rowOf(place.panel(), slot)] += sign;
        }
        between += gaps(taken);
    }

    /** A load of a rack with a place takes an output of a board, or leaves it. */
    void addBoard(int rack, int board, int sign) {
        boards -= beyondFirst(boardsOf[rack]);
        if (onBoards[rack].add(board, sign) == (sign > 0 ? 1 : 0)) {
            boardsOf[rack] += sign;
        }
        boards += beyondFirst(boardsOf[rack]);
    }

    private static int beyondFirst(int count) {
        return Math.max(0, count - 1);
    }

    /** Rows between the first and the last that none of the rack takes. */
    private static int gaps(int[] taken) {
        int first = 0;
        while (first < taken.length && taken[first] == 0) {
            first++;
        }
        int gaps = 0;
        int open = 0;
        for (int row = first; row < taken.length; row++) {
            if (taken[row] == 0) {
                open++;
            } else {
                gaps += open;
                open = 0;
            }
        }
        return gaps;
    }

    long panels() {
        return panels;
    }

    long boards() {
        return boards;
    }

    long rows() {
        return between;
    }
}
