package evenrise.solver.engine.start;

import evenrise.solver.engine.state.IndexSet;
import evenrise.solver.engine.state.Pairs;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.Plant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;

/** How full panels are, by counting slots and running current; nobody has a slot of its own yet. */
final class PanelFilling {
    /** A panel filled further than this can hardly be spread evenly over its phases and whole rows of slots. */
    private static final double EASY = 0.95;

    /** For each part of a panel that is filled beyond what is easy: a per cent there is worse than mixing two roles. */
    private static final double CROWDED = 400;

    private final Plant plant;
    private final int[] panelOf;
    private final int[] freeSlots;
    private final int[] freeSwitchedSlots;
    private final long[] runningNano;
    private final List<List<Integer>> loadsIn = new ArrayList<>();
    private final IndexSet crowded;
    private double strain;

    PanelFilling(Plant plant) {
        this.plant = plant;
        panelOf = new int[plant.loadCount()];
        Arrays.fill(panelOf, Plant.NONE);
        freeSlots = new int[plant.panelCount];
        freeSwitchedSlots = new int[plant.panelCount];
        runningNano = new long[plant.panelCount];
        crowded = new IndexSet(plant.panelCount);
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

    /** The panel of each load, {@link Plant#NONE} where it has none. */
    int[] panels() {
        return panelOf;
    }

    /** The panel of each load of a block. */
    int[] panelsOf(int[] block) {
        return Arrays.stream(block).map(load -> panelOf[load]).toArray();
    }

    /** Panels that are filled further than is easy. */
    IndexSet crowded() {
        return crowded;
    }

    List<Integer> loadsIn(int panel) {
        return loadsIn.get(panel);
    }

    /** How much too full panels are. */
    double strain() {
        return strain;
    }

    /** Takes the emptiest of the panels for one load; false where none has room. */
    boolean enterEmptiest(int load, BitSet offered) {
        int panel = emptiest(load, offered);
        if (panel == Plant.NONE) {
            return false;
        }
        enter(load, panel);
        return true;
    }

    void enter(int load, int panel) {
        fill(load, panel, 1);
        panelOf[load] = panel;
        loadsIn.get(panel).add(load);
    }

    void leave(int load) {
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
        crowded.set(panel, crowding(panel) > 0);
    }

    private int emptiest(int load, BitSet offered) {
        int best = Plant.NONE;
        double least = Double.POSITIVE_INFINITY;
        BitSet allowed = plant.allowedPanels[load];
        for (int panel = offered.nextSetBit(0); panel >= 0; panel = offered.nextSetBit(panel + 1)) {
            int free = plant.switched[load] ? freeSwitchedSlots[panel] : freeSlots[panel];
            if (allowed.get(panel) && free >= plant.poles[load] && !meetsApart(load, panel)) {
                double added = (double) plant.currents.runningNano[load] * plant.poles[load];
                double part = part(panel, plant.poles[load], added);
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

    /** How full the fullest panel of a block is, from 0: slots or rating, whichever is fuller. */
    double fullestPart(int[] block) {
        return Arrays.stream(block)
                .mapToDouble(load -> part(panelOf[load], 0, 0))
                .max()
                .orElse(0);
    }

    private double part(int panel, int poles, double nano) {
        int slots = plant.firstSlot[panel + 1] - plant.firstSlot[panel];
        double bySlots = 1 - (freeSlots[panel] - poles) / (double) slots;
        double byRating = (runningNano[panel] + nano)
                / Integer.bitCount(plant.phasesOf[panel + 1])
                / plant.limits.runningNano[panel + 1];
        return Math.max(bySlots, byRating);
    }

    private double crowding(int panel) {
        return CROWDED * Math.max(0, part(panel, 0, 0) - EASY);
    }
}
