package evenrise.solver.engine.start;

import evenrise.solver.engine.state.Plant;
import java.util.BitSet;

/** Blocks of loads on boards and in panels, before anybody has a slot, an output or a time. */
final class Filling {
    final BoardFilling boards;
    final PanelFilling panels;
    private final Plant plant;

    Filling(Plant plant) {
        this.plant = plant;
        boards = new BoardFilling(plant);
        panels = new PanelFilling(plant);
    }

    /** How far it is from a plan that can keep the rules: panels too full, boards that mix roles or come on out of turn. */
    double strain() {
        return panels.strain() + boards.strain();
    }

    /**
     * Puts a block of switched loads on a board, each load into the emptiest panel that it may take there.
     *
     * @return whether there was room; if not, nothing has changed
     */
    boolean put(int[] block, int board) {
        if (!boards.takes(block, board)) {
            return false;
        }
        BitSet offered = offered(block, board);
        int done = 0;
        while (done < block.length && panels.enterEmptiest(block[done], offered)) {
            if (isTogether(block[done])) {
                offered.clear();
                offered.set(panels.panels()[block[done]]);
            }
            done++;
        }
        if (done < block.length) {
            for (int i = 0; i < done; i++) {
                panels.leave(block[i]);
            }
            return false;
        }
        boards.enter(block, board);
        return true;
    }

    /** Puts a block back to where it was. */
    void putBack(int[] block, int board, int[] inPanels) {
        for (int i = 0; i < block.length; i++) {
            panels.enter(block[i], inPanels[i]);
        }
        boards.enter(block, board);
    }

    /** Takes a block off its board and panels. */
    void remove(int[] block) {
        boards.leave(block);
        for (int load : block) {
            panels.leave(load);
        }
    }

    /** The board's panels; of a group that is to sit in one, those that all its loads may take. */
    private BitSet offered(int[] block, int board) {
        BitSet offered = (BitSet) plant.reach[board].clone();
        if (isTogether(block[0])) {
            for (int member : plant.groupMembers[plant.group[block[0]]]) {
                offered.and(plant.allowedPanels[member]);
                int panel = panels.panels()[member];
                if (panel != Plant.NONE) {
                    offered.clear(0, panel);
                    offered.clear(panel + 1, plant.panelCount);
                }
            }
        }
        return offered;
    }

    private boolean isTogether(int load) {
        return plant.group[load] != Plant.NONE && plant.groupSamePanel[plant.group[load]];
    }
}
