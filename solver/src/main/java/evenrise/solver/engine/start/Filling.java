package evenrise.solver.engine.start;

import evenrise.solver.engine.state.CompiledProject;
import java.util.BitSet;

/** Blocks of loads on boards and in panels, before anybody has a slot, an output or a time. */
final class Filling {
    final BoardFilling boards;
    final PanelFilling panels;
    private final CompiledProject compiled;

    Filling(CompiledProject compiled) {
        this.compiled = compiled;
        boards = new BoardFilling(compiled);
        panels = new PanelFilling(compiled);
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
        BitSet offered = (BitSet) compiled.reach[board].clone();
        if (isTogether(block[0])) {
            for (int member : compiled.groupMembers[compiled.group[block[0]]]) {
                offered.and(compiled.allowedPanels[member]);
                int panel = panels.panels()[member];
                if (panel != CompiledProject.NONE) {
                    offered.clear(0, panel);
                    offered.clear(panel + 1, compiled.panelCount);
                }
            }
        }
        return offered;
    }

    private boolean isTogether(int load) {
        return compiled.group[load] != CompiledProject.NONE && compiled.groupSamePanel[compiled.group[load]];
    }
}
