package evenrise.solver.engine.start;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.IndexSet;
import java.util.Arrays;
import java.util.BitSet;

/** How full boards are and what they mix, by counting outputs; only loads fixed to an output have one yet. */
final class BoardFilling {
    private static final int ROLES = CompiledProject.AMPLIFIER + 1;
    private static final double MIXED = 3;

    /** As bad as a panel that is a tenth too full: nothing that follows can be timed well. */
    private static final double OUT_OF_TURN = 40;
    /** Where panels are part of nodes that may be too full, too. */
    private static final double OUT_OF_TURN_AMONG_NODES = 200;

    private final CompiledProject compiled;
    private final int[] boardOf;
    private final int[] freeOutputs;
    private final int[] loadsOfRole;
    private final int[] dropping;
    private final int[] loadsOfSystem;

    /** Loads of groups that need whole boards. */
    private final int[] loadsOfLargeGroups;

    /** Project-wide outputs that a load with a fixed output takes. */
    private final BitSet takenOutputs = new BitSet();

    private final IndexSet outOfTurn;
    private final double outOfTurnCost;
    private double strain;

    BoardFilling(CompiledProject compiled) {
        this.compiled = compiled;
        boardOf = new int[compiled.loadCount()];
        Arrays.fill(boardOf, CompiledProject.NONE);
        freeOutputs = new int[compiled.boardCount];
        Arrays.setAll(freeOutputs, compiled::usableOutputs);
        loadsOfSystem = new int[compiled.boardCount * compiled.systemCount];
        loadsOfRole = new int[compiled.boardCount * ROLES];
        dropping = new int[compiled.boardCount];
        loadsOfLargeGroups = new int[compiled.boardCount];
        outOfTurn = new IndexSet(compiled.boardCount);
        outOfTurnCost = compiled.hasFurtherParts ? OUT_OF_TURN_AMONG_NODES : OUT_OF_TURN;
    }

    /** The board of each load, {@link CompiledProject#NONE} where it has none. */
    int[] boards() {
        return boardOf;
    }

    /** Boards that start behind one with loads of a later role. */
    IndexSet outOfTurn() {
        return outOfTurn;
    }

    /** How much boards mix roles and come on out of turn. */
    double strain() {
        return strain;
    }

    boolean isOpen(int board) {
        return loadsOn(board) > 0;
    }

    /** How full a board is, from 0 to 1. */
    double part(int board) {
        return loadsOn(board) / (double) Math.max(1, compiled.usableOutputs(board));
    }

    private int loadsOn(int board) {
        return compiled.usableOutputs(board) - freeOutputs[board];
    }

    void enter(int[] block, int board) {
        change(block, board, 1);
    }

    void leave(int[] block) {
        change(block, boardOf[block[0]], -1);
    }

    private void change(int[] block, int board, int sign) {
        strain -= strainFrom(board);
        for (int load : block) {
            count(load, board, sign);
        }
        noteTurns(board);
        strain += strainFrom(board);
    }

    private void count(int load, int board, int sign) {
        boardOf[load] = sign > 0 ? board : CompiledProject.NONE;
        freeOutputs[board] -= sign;
        loadsOfRole[board * ROLES + compiled.role[load]] += sign;
        if (compiled.hasSystems) {
            loadsOfSystem[board * compiled.systemCount + compiled.systemOf[load]] += sign;
        }
        dropping[board] += compiled.drops[load] ? sign : 0;
        loadsOfLargeGroups[board] += isOfLargeGroup(load) ? sign : 0;
        if (compiled.fixedOutput[load] != CompiledProject.NONE) {
            takenOutputs.set(fixedOutput(load, board), sign > 0);
        }
    }

    // ---- what may be

    /** Whether a block has outputs enough, and company that it may have. */
    boolean takes(int[] block, int board) {
        return freeOutputs[board] >= block.length
                && (!compiled.hasFurtherParts || mayBeOn(block, board))
                && !clashes(block, board)
                && sharesWell(block, board)
                && (!compiled.hasSystems || servesOneSystem(compiled.systemOf[block[0]], board));
    }

    /** Whether a board may switch each of a block, which need not be alike. */
    private boolean mayBeOn(int[] block, int board) {
        for (int load : block) {
            if (Arrays.binarySearch(compiled.nearbyBoards[load], board) < 0) {
                return false;
            }
        }
        return true;
    }

    /** Whether a board, the used one that it follows and those that follow it serve no other system. */
    private boolean servesOneSystem(int system, int board) {
        int before = board;
        while (before != CompiledProject.NONE && !isOpen(before)) {
            before = compiled.after[before];
        }
        return (before == CompiledProject.NONE || servesNoOther(system, before)) && followersServe(system, board);
    }

    private boolean followersServe(int system, int board) {
        for (int follower : compiled.followers[board]) {
            if (isOpen(follower) ? !servesNoOther(system, follower) : !followersServe(system, follower)) {
                return false;
            }
        }
        return true;
    }

    private boolean servesNoOther(int system, int board) {
        return loadsOfSystem[board * compiled.systemCount + system] == loadsOn(board);
    }

    private boolean clashes(int[] block, int board) {
        if (isOpen(board) && !compiled.dropsByOutput[board] && compiled.drops[block[0]] != dropping[board] > 0) {
            return true;
        }
        for (int load : block) {
            if (compiled.fixedOutput[load] != CompiledProject.NONE && takenOutputs.get(fixedOutput(load, board))) {
                return true;
            }
        }
        return false;
    }

    private int fixedOutput(int load, int board) {
        return compiled.output(board, compiled.fixedOutput[load] - 1).index();
    }

    /** A group that needs whole boards takes only empty ones or its own; everyone else stays off them. */
    private boolean sharesWell(int[] block, int board) {
        if (!isOpen(board) || !compiled.seatsGroupsWhole[board]) {
            return true;
        }
        if (!isOfLargeGroup(block[0])) {
            return loadsOfLargeGroups[board] == 0;
        }
        for (int member : compiled.groupMembers[compiled.group[block[0]]]) {
            if (boardOf[member] == board) {
                return true;
            }
        }
        return false;
    }

    private boolean isOfLargeGroup(int load) {
        return compiled.group[load] != CompiledProject.NONE && compiled.groupIsLarge[compiled.group[load]];
    }

    // ---- what strains

    /** Of a board and of those that start after it. */
    private double strainFrom(int board) {
        double sum = MIXED * Math.max(0, rolesOn(board) - 1) + (outOfTurn.contains(board) ? outOfTurnCost : 0);
        for (int follower : compiled.followers[board]) {
            sum += strainFrom(follower);
        }
        return sum;
    }

    private void noteTurns(int board) {
        outOfTurn.set(board, isOutOfTurn(board));
        for (int follower : compiled.followers[board]) {
            noteTurns(follower);
        }
    }

    private boolean isOutOfTurn(int board) {
        int earliest = earliestRole(board);
        for (int before = compiled.after[board]; before != CompiledProject.NONE; before = compiled.after[before]) {
            if (latestRole(before) > earliest) {
                return true;
            }
        }
        return false;
    }

    private int rolesOn(int board) {
        int roles = 0;
        for (int role = 0; role < ROLES; role++) {
            roles += has(board, role) ? 1 : 0;
        }
        return roles;
    }

    private int earliestRole(int board) {
        int role = 0;
        while (role < ROLES && !has(board, role)) {
            role++;
        }
        return role;
    }

    private int latestRole(int board) {
        int role = ROLES - 1;
        while (role >= 0 && !has(board, role)) {
            role--;
        }
        return role;
    }

    private boolean has(int board, int role) {
        return loadsOfRole[board * ROLES + role] > 0;
    }
}
