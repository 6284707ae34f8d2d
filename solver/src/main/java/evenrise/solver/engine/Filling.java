package evenrise.solver.engine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/**
 * How full boards and panels are while blocks of loads are put on them, by counting outputs, slots and running current;
 * nobody has a slot or an output of its own yet.
 *
 * <p>Its <em>strain</em> tells how far it is from a plan that can keep the rules: panels that carry more than they can
 * be trusted to balance, boards that mix roles or come on out of turn.
 */
final class Filling {
    private static final int ROLES = Plant.AMPLIFIER + 1;

    /** A panel filled further than this can hardly be spread evenly over its phases and whole rows of slots. */
    private static final double EASY = 0.95;

    /** For each part of a panel that is filled beyond what is easy: a per cent there is worse than mixing two roles. */
    private static final double CROWDED = 400;

    private static final double MIXED = 3;
    private static final double OUT_OF_TURN = 40;

    private final Plant plant;
    private final int[] boardOf;
    private final int[] panelOf;
    private final int[] freeOutputs;
    private final int[] freeSlots;
    private final int[] freeSwitchedSlots;
    private final long[] runningNano;
    private final int[] loadsOfRole;
    private final int[] dropping;

    /** Loads of groups that need whole boards. */
    private final int[] loadsOfLargeGroups;

    /** Plant-wide outputs that a load with a fixed output takes. */
    private final BitSet takenOutputs = new BitSet();

    private double strain;
    private final IndexSet crowdedPanels;
    private final IndexSet outOfTurn;
    private final List<List<Integer>> loadsIn = new ArrayList<>();

    Filling(Plant plant) {
        this.plant = plant;
        boardOf = new int[plant.loadCount()];
        panelOf = new int[plant.loadCount()];
        Arrays.fill(boardOf, Plant.NONE);
        Arrays.fill(panelOf, Plant.NONE);
        freeOutputs = new int[plant.boardCount];
        Arrays.setAll(freeOutputs, plant::outputCount);
        loadsOfRole = new int[plant.boardCount * ROLES];
        dropping = new int[plant.boardCount];
        loadsOfLargeGroups = new int[plant.boardCount];
        freeSlots = new int[plant.panelCount];
        freeSwitchedSlots = new int[plant.panelCount];
        runningNano = new long[plant.panelCount];
        crowdedPanels = new IndexSet(plant.panelCount);
        outOfTurn = new IndexSet(plant.boardCount);
        for (int panel = 0; panel < plant.panelCount; panel++) {
            loadsIn.add(new ArrayList<>());
        }
        for (Place place : plant.places) {
            if (place.poles() == 1) {
                freeSlots[place.panel()]++;
                freeSwitchedSlots[place.panel()] += place.takesSwitched() ? 1 : 0;
            }
        }
    }

    int[] boards() {
        return boardOf;
    }

    int[] panels() {
        return panelOf;
    }

    double strain() {
        return strain;
    }

    /** Panels that are filled further than is easy. */
    IndexSet crowdedPanels() {
        return crowdedPanels;
    }

    /** Boards that start behind one with loads of a later role. */
    IndexSet boardsOutOfTurn() {
        return outOfTurn;
    }

    List<Integer> loadsIn(int panel) {
        return loadsIn.get(panel);
    }

    boolean isOpen(int board) {
        return loadsOn(board) > 0;
    }

    int freeOutputs(int board) {
        return freeOutputs[board];
    }

    private int loadsOn(int board) {
        return plant.outputCount(board) - freeOutputs[board];
    }

    /**
     * Puts a block of switched loads on a board, each load into the emptiest panel that it may take there.
     *
     * @return whether there was room; if not, nothing has changed
     */
    boolean put(int[] block, int board) {
        if (freeOutputs[board] < block.length || clashes(block, board) || !sharesWell(block, board)) {
            return false;
        }
        BitSet offered = offered(block, board);
        int done = 0;
        while (done < block.length && takePanel(block[done], offered)) {
            if (isTogether(block[done])) {
                offered.clear();
                offered.set(panelOf[block[done]]);
            }
            done++;
        }
        if (done < block.length) {
            for (int i = 0; i < done; i++) {
                leavePanel(block[i]);
            }
            return false;
        }
        countAll(block, board, 1);
        return true;
    }

    /** Puts a block back to where it was. */
    void putBack(int[] block, int board, int[] panels) {
        for (int i = 0; i < block.length; i++) {
            enterPanel(block[i], panels[i]);
        }
        countAll(block, board, 1);
    }

    /** The panel of each load of a block. */
    int[] panelsOf(int[] block) {
        return Arrays.stream(block).map(load -> panelOf[load]).toArray();
    }

    /** Takes a block off its board and panels. */
    void remove(int[] block) {
        countAll(block, boardOf[block[0]], -1);
        for (int load : block) {
            leavePanel(load);
        }
    }

    /** Takes the emptiest of the panels for one load; false where none has room. */
    boolean takePanel(int load, BitSet offered) {
        int panel = emptiest(load, offered);
        if (panel == Plant.NONE) {
            return false;
        }
        enterPanel(load, panel);
        return true;
    }

    private void enterPanel(int load, int panel) {
        fill(load, panel, 1);
        panelOf[load] = panel;
        loadsIn.get(panel).add(load);
    }

    private void leavePanel(int load) {
        fill(load, panelOf[load], -1);
        loadsIn.get(panelOf[load]).remove(Integer.valueOf(load));
        panelOf[load] = Plant.NONE;
    }

    private void fill(int load, int panel, int sign) {
        strain -= crowding(panel);
        freeSlots[panel] -= sign * plant.poles[load];
        if (plant.switched[load]) {
            freeSwitchedSlots[panel] -= sign * plant.poles[load];
        }
        runningNano[panel] += sign * plant.currents.runningNano[load] * plant.poles[load];
        strain += crowding(panel);
        crowdedPanels.set(panel, crowding(panel) > 0);
    }

    private void countAll(int[] block, int board, int sign) {
        strain -= strainFrom(board);
        for (int load : block) {
            count(load, board, sign);
        }
        noteTurns(board);
        strain += strainFrom(board);
    }

    private void count(int load, int board, int sign) {
        boardOf[load] = sign > 0 ? board : Plant.NONE;
        freeOutputs[board] -= sign;
        loadsOfRole[board * ROLES + plant.role[load]] += sign;
        dropping[board] += plant.drops[load] ? sign : 0;
        loadsOfLargeGroups[board] += isOfLargeGroup(load) ? sign : 0;
        if (plant.fixedOutput[load] != Plant.NONE) {
            takenOutputs.set(fixedOutput(load, board), sign > 0);
        }
    }

    // ---- what may not be

    private boolean clashes(int[] block, int board) {
        if (loadsOn(board) > 0 && plant.drops[block[0]] != dropping[board] > 0) {
            return true;
        }
        for (int load : block) {
            if (plant.fixedOutput[load] != Plant.NONE && takenOutputs.get(fixedOutput(load, board))) {
                return true;
            }
        }
        return false;
    }

    private int fixedOutput(int load, int board) {
        return plant.output(board, plant.fixedOutput[load] - 1).index();
    }

    /** A group that needs whole boards takes only empty ones or its own; everyone else stays off them. */
    private boolean sharesWell(int[] block, int board) {
        if (loadsOn(board) == 0) {
            return true;
        }
        if (!isOfLargeGroup(block[0])) {
            return loadsOfLargeGroups[board] == 0;
        }
        for (int member : plant.groupMembers[plant.group[block[0]]]) {
            if (boardOf[member] == board) {
                return true;
            }
        }
        return false;
    }

    private boolean isOfLargeGroup(int load) {
        return plant.group[load] != Plant.NONE && plant.groupIsLarge[plant.group[load]];
    }

    private boolean isTogether(int load) {
        return plant.group[load] != Plant.NONE && plant.groupSamePanel[plant.group[load]];
    }

    /** The board's panels; of a group that is to sit in one, those that all its loads may take. */
    private BitSet offered(int[] block, int board) {
        BitSet offered = (BitSet) plant.reach[board].clone();
        if (isTogether(block[0])) {
            for (int member : plant.groupMembers[plant.group[block[0]]]) {
                offered.and(plant.allowedPanels[member]);
                if (panelOf[member] != Plant.NONE) {
                    offered.clear(0, panelOf[member]);
                    offered.clear(panelOf[member] + 1, plant.panelCount);
                }
            }
        }
        return offered;
    }

    private int emptiest(int load, BitSet offered) {
        int best = Plant.NONE;
        double least = Double.POSITIVE_INFINITY;
        BitSet allowed = plant.allowedPanels[load];
        for (int panel = offered.nextSetBit(0); panel >= 0; panel = offered.nextSetBit(panel + 1)) {
            int free = plant.switched[load] ? freeSwitchedSlots[panel] : freeSlots[panel];
            if (allowed.get(panel) && free >= plant.poles[load] && !meetsApart(load, panel)) {
                double part = part(panel, load);
                if (part < least) {
                    least = part;
                    best = panel;
                }
            }
        }
        return best;
    }

    private boolean meetsApart(int load, int panel) {
        for (int pair : plant.pairs.ofLoad[load]) {
            int other = plant.pairs.first[pair] + plant.pairs.second[pair] - load;
            if (plant.pairs.kind[pair] == Pairs.APART && panelOf[other] == panel) {
                return true;
            }
        }
        return false;
    }

    // ---- how full

    /** How full a panel would be with one more load: slots or rating, whichever is fuller. */
    private double part(int panel, int load) {
        return part(panel, plant.poles[load], (double) plant.currents.runningNano[load] * plant.poles[load]);
    }

    /** How full the fullest panel of a block is: slots or rating, whichever is fuller. */
    double fullestPart(int[] block) {
        double fullest = 0;
        for (int load : block) {
            fullest = Math.max(fullest, part(panelOf[load], 0, 0));
        }
        return fullest;
    }

    private double part(int panel, int poles, double nano) {
        int slots = plant.firstSlot[panel + 1] - plant.firstSlot[panel];
        double bySlots = 1 - (freeSlots[panel] - poles) / (double) slots;
        double byRating = (runningNano[panel] + nano) / plant.phaseCount / plant.limits.runningNano[panel + 1];
        return Math.max(bySlots, byRating);
    }

    private double crowding(int panel) {
        return CROWDED * Math.max(0, part(panel, 0, 0) - EASY);
    }

    // ---- boards

    /** Strain of a board and of those that start after it. */
    private double strainFrom(int board) {
        double sum = MIXED * Math.max(0, rolesOn(board) - 1) + (outOfTurn.contains(board) ? OUT_OF_TURN : 0);
        for (int follower : plant.followers[board]) {
            sum += strainFrom(follower);
        }
        return sum;
    }

    private void noteTurns(int board) {
        outOfTurn.set(board, isOutOfTurn(board));
        for (int follower : plant.followers[board]) {
            noteTurns(follower);
        }
    }

    private int rolesOn(int board) {
        int roles = 0;
        for (int role = 0; role < ROLES; role++) {
            roles += loadsOfRole[board * ROLES + role] > 0 ? 1 : 0;
        }
        return roles;
    }

    /** Whether a board that starts this one has loads of a later role. */
    private boolean isOutOfTurn(int board) {
        int earliest = earliestRole(board);
        for (int before = plant.after[board]; before != Plant.NONE; before = plant.after[before]) {
            if (latestRole(before) > earliest) {
                return true;
            }
        }
        return false;
    }

    private int earliestRole(int board) {
        int role = 0;
        while (role < ROLES && loadsOfRole[board * ROLES + role] == 0) {
            role++;
        }
        return role;
    }

    private int latestRole(int board) {
        int role = ROLES - 1;
        while (role >= 0 && loadsOfRole[board * ROLES + role] == 0) {
            role--;
        }
        return role;
    }
}
