package evenrise.solver.engine;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;

/**
 * Chooses a board and panels for every block of loads that belongs together, by counting free outputs and slots: the
 * block with the fewest boards to choose from first, and of several boards the one that fills least.
 */
final class BoardChoice {
    /** More than any other preference costs. */
    private static final double OVERLOAD = 10;

    /** A board that comes on out of turn costs more than mixing roles on one, and less than an overload. */
    private static final double OUT_OF_TURN = 5;

    private final Plant plant;
    private final int[] boardOf;
    private final int[] panelOf;
    private final int[] freeOutputs;
    private final int[] freeSlots;
    private final int[] freeSwitchedSlots;
    private final long[] runningNano;
    /** What the board's loads do on an emergency: 0 unknown, 1 hold, 2 drop. */
    private final int[] emergency;

    /** Role of the block that came onto the board last. */
    private final int[] roleOn;

    private final int[] earliestOn;
    private final int[] latestOn;

    /** Plant-wide outputs that a load with a fixed output takes. */
    private final BitSet takenOutputs = new BitSet();

    private final BitSet wholeBoards = new BitSet();
    private final BitSet mixedBoards = new BitSet();
    private final int[] trialPanels;

    BoardChoice(Plant plant) {
        this.plant = plant;
        int count = plant.loadCount();
        boardOf = new int[count];
        panelOf = new int[count];
        trialPanels = new int[count];
        Arrays.fill(boardOf, Plant.NONE);
        Arrays.fill(panelOf, Plant.NONE);
        freeOutputs = new int[plant.boardCount];
        Arrays.setAll(freeOutputs, plant::outputCount);
        emergency = new int[plant.boardCount];
        roleOn = new int[plant.boardCount];
        earliestOn = new int[plant.boardCount];
        Arrays.fill(earliestOn, Plant.AMPLIFIER);
        latestOn = new int[plant.boardCount];
        freeSlots = new int[plant.panelCount];
        freeSwitchedSlots = new int[plant.panelCount];
        runningNano = new long[plant.panelCount];
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

    void choose() {
        for (int[] block : blocks()) {
            if (!choose(block) && block.length > 1) {
                for (int load : block) {
                    choose(new int[] {load});
                }
            }
        }
        for (int load = 0; load < plant.loadCount(); load++) {
            if (!plant.switched[load]) {
                int panel = roomiestPanel(load, plant.allowedPanels[load]);
                if (panel != Plant.NONE) {
                    take(load, panel);
                }
            }
        }
    }

    private List<int[]> blocks() {
        List<int[]> blocks = new ArrayList<>();
        for (int group = 0; group < plant.groupCount; group++) {
            int[] members = plant.groupMembers[group];
            if (plant.groupIsLarge[group]) {
                Arrays.stream(members).forEach(load -> blocks.add(new int[] {load}));
            } else if (members.length > 0) {
                blocks.add(members);
            }
        }
        for (int load = 0; load < plant.loadCount(); load++) {
            if (plant.switched[load] && plant.group[load] == Plant.NONE) {
                blocks.add(new int[] {load});
            }
        }
        blocks.sort(Comparator.comparing((int[] block) -> Arrays.stream(block).noneMatch(this::isFixed))
                .thenComparing(block -> !isLarge(block))
                .thenComparing(block -> plant.nearbyBoards[block[0]].length)
                .thenComparing(block -> -block.length)
                .thenComparing(block -> plant.role[block[0]])
                .thenComparing(block -> block[0]));
        return blocks;
    }

    private boolean isFixed(int load) {
        return plant.fixedBoard[load] != Plant.NONE || plant.fixedSlot[load] != Plant.NONE;
    }

    private boolean isLarge(int[] block) {
        int group = plant.group[block[0]];
        return group != Plant.NONE && plant.groupIsLarge[group];
    }

    private boolean choose(int[] block) {
        int best = Plant.NONE;
        double least = Double.POSITIVE_INFINITY;
        for (int board : plant.nearbyBoards[block[0]]) {
            double cost = cost(block, board);
            if (cost < least) {
                least = cost;
                best = board;
            }
        }
        if (best == Plant.NONE || !fitPanels(block, best)) {
            return false;
        }
        for (int load : block) {
            take(load, trialPanels[load]);
            boardOf[load] = best;
            if (plant.fixedOutput[load] != Plant.NONE) {
                takenOutputs.set(fixedOutput(load, best));
            }
            freeOutputs[best]--;
            earliestOn[best] = Math.min(earliestOn[best], plant.role[load]);
            latestOn[best] = Math.max(latestOn[best], plant.role[load]);
        }
        roleOn[best] = plant.role[block[0]];
        emergency[best] = plant.drops[block[0]] ? 2 : 1;
        if (isLarge(block)) {
            wholeBoards.set(best);
        }
        if (mixesRoles(block)) {
            mixedBoards.set(best);
        }
        return true;
    }

    /** Infinite where the block does not fit. */
    private double cost(int[] block, int board) {
        int needed = plant.drops[block[0]] ? 2 : 1;
        boolean clashes = (emergency[board] != 0 && emergency[board] != needed) || wantsTakenOutput(block, board);
        if (clashes || freeOutputs[board] < block.length || !sharesWell(block, board) || !fitPanels(block, board)) {
            return Double.POSITIVE_INFINITY;
        }
        double fullest = 1 - (freeOutputs[board] - block.length) / (double) plant.outputCount(board);
        for (int load : block) {
            fullest = Math.max(fullest, fill(trialPanels[load], load));
        }
        boolean opens = emergency[board] == 0;
        boolean mixes =
                !opens && (mixesRoles(block) || mixedBoards.get(board) || roleOn[board] != plant.role[block[0]]);
        // A board once begun is filled before the next, so that boards are left for loads that must not share one.
        // A board of one role can be timed as its role needs, so roles are mixed only where boards run out.
        return fullest + (mixes ? 3 : 0) + (opens ? 2 : 0) + (isOutOfTurn(block, board) ? OUT_OF_TURN : 0);
    }

    /** Whether a board before this one has loads of a later role, or one behind it loads of an earlier role. */
    private boolean isOutOfTurn(int[] block, int board) {
        int earliest = Plant.AMPLIFIER;
        int latest = Plant.PROCESSING;
        for (int load : block) {
            earliest = Math.min(earliest, plant.role[load]);
            latest = Math.max(latest, plant.role[load]);
        }
        for (int before = plant.after[board]; before != Plant.NONE; before = plant.after[before]) {
            if (emergency[before] != 0 && latestOn[before] > earliest) {
                return true;
            }
        }
        return latest > Plant.PROCESSING && followersWaitFor(latest, board);
    }

    private boolean followersWaitFor(int role, int board) {
        for (int follower : plant.followers[board]) {
            boolean waits = emergency[follower] != 0 && earliestOn[follower] < role;
            if (waits || followersWaitFor(role, follower)) {
                return true;
            }
        }
        return false;
    }

    private boolean wantsTakenOutput(int[] block, int board) {
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
        if (freeOutputs[board] == plant.outputCount(board)) {
            return true;
        }
        if (!isLarge(block)) {
            return !wholeBoards.get(board);
        }
        int group = plant.group[block[0]];
        for (int member : plant.groupMembers[group]) {
            if (boardOf[member] == board) {
                return true;
            }
        }
        return false;
    }

    private boolean mixesRoles(int[] block) {
        return Arrays.stream(block).map(load -> plant.role[load]).distinct().count() > 1;
    }

    /** Chooses a panel for each load of a block on a board; false where there is none. */
    private boolean fitPanels(int[] block, int board) {
        int group = plant.group[block[0]];
        boolean together = group != Plant.NONE && plant.groupSamePanel[group];
        BitSet offered = (BitSet) plant.reach[board].clone();
        if (together) {
            for (int member : plant.groupMembers[group]) {
                offered.and(plant.allowedPanels[member]);
                if (panelOf[member] != Plant.NONE) {
                    offered.clear(0, panelOf[member]);
                    offered.clear(panelOf[member] + 1, plant.panelCount);
                }
            }
        }
        int[] promised = new int[1];
        int only = Plant.NONE;
        for (int load : block) {
            BitSet allowed = (BitSet) offered.clone();
            allowed.and(plant.allowedPanels[load]);
            int panel = together && only != Plant.NONE ? only : roomiestPanel(load, allowed);
            if (panel == Plant.NONE) {
                return false;
            }
            only = panel;
            trialPanels[load] = panel;
            promised[0] += plant.poles[load];
        }
        return offered.cardinality() > 1 && !together || freeSwitchedSlots[only] >= promised[0];
    }

    private int roomiestPanel(int load, BitSet allowed) {
        int best = Plant.NONE;
        double least = Double.POSITIVE_INFINITY;
        for (int panel = allowed.nextSetBit(0); panel >= 0; panel = allowed.nextSetBit(panel + 1)) {
            int free = plant.switched[load] ? freeSwitchedSlots[panel] : freeSlots[panel];
            double fill = fill(panel, load);
            if (free >= plant.poles[load] && fill < least && !meetsApart(load, panel)) {
                least = fill;
                best = panel;
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

    /** How full a panel would be with one more load: slots or rating, whichever is fuller. */
    private double fill(int panel, int load) {
        int slots = plant.firstSlot[panel + 1] - plant.firstSlot[panel];
        double bySlots = 1 - (freeSlots[panel] - plant.poles[load]) / (double) slots;
        double added = (double) plant.currents.runningNano[load] * plant.poles[load];
        double byRating = (runningNano[panel] + added) / plant.phaseCount / plant.limits.runningNano[panel + 1];
        return Math.max(bySlots, byRating) + (byRating > 1 ? OVERLOAD : 0);
    }

    private void take(int load, int panel) {
        panelOf[load] = panel;
        freeSlots[panel] -= plant.poles[load];
        if (plant.switched[load]) {
            freeSwitchedSlots[panel] -= plant.poles[load];
        }
        runningNano[panel] += plant.currents.runningNano[load] * plant.poles[load];
    }
}
