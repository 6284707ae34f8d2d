package evenrise.solver.engine.start;

import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.IndexSet;
import evenrise.solver.engine.state.Pairs;
import evenrise.solver.engine.state.Place;
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

    private final CompiledProject compiled;
    private final int[] panelOf;
    private final int[] freeSlots;
    private final int[] freeSwitchedSlots;
    private final long[] runningNano;
    private final List<List<Integer>> loadsIn = new ArrayList<>();
    private final IndexSet crowded;
    private double strain;

    PanelFilling(CompiledProject compiled) {
        this.compiled = compiled;
        panelOf = new int[compiled.loadCount()];
        Arrays.fill(panelOf, CompiledProject.NONE);
        freeSlots = new int[compiled.panelCount];
        freeSwitchedSlots = new int[compiled.panelCount];
        runningNano = new long[compiled.panelCount];
        crowded = new IndexSet(compiled.panelCount);
        for (int panel = 0; panel < compiled.panelCount; panel++) {
            loadsIn.add(new ArrayList<>());
        }
        for (Place place : compiled.places) {
            if (place.poles() == 1) {
                freeSlots[place.panel()]++;
                freeSwitchedSlots[place.panel()] += place.takesSwitched() ? 1 : 0;
            }
        }
    }

    /** The panel of each load, {@link CompiledProject#NONE} where it has none. */
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
        if (panel == CompiledProject.NONE) {
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
        panelOf[load] = CompiledProject.NONE;
    }

    private void fill(int load, int panel, int sign) {
        strain -= crowding(panel);
        freeSlots[panel] -= sign * compiled.poles[load];
        if (compiled.switched[load]) {
            freeSwitchedSlots[panel] -= sign * compiled.poles[load];
        }
        runningNano[panel] += sign * compiled.currents.runningNano[load] * compiled.poles[load];
        strain += crowding(panel);
        crowded.set(panel, crowding(panel) > 0);
    }

    private int emptiest(int load, BitSet offered) {
        int best = CompiledProject.NONE;
        double least = Double.POSITIVE_INFINITY;
        BitSet allowed = compiled.allowedPanels[load];
        for (int panel = offered.nextSetBit(0); panel >= 0; panel = offered.nextSetBit(panel + 1)) {
            int free = compiled.switched[load] ? freeSwitchedSlots[panel] : freeSlots[panel];
            if (allowed.get(panel) && free >= compiled.poles[load] && !meetsApart(load, panel)) {
                double added = (double) compiled.currents.runningNano[load] * compiled.poles[load];
                double part = part(panel, compiled.poles[load], added);
                if (part < least) {
                    least = part;
                    best = panel;
                }
            }
        }
        return best;
    }

    private boolean meetsApart(int load, int panel) {
        for (int pair : compiled.pairs.ofLoad[load]) {
            int other = compiled.pairs.first[pair] + compiled.pairs.second[pair] - load;
            if (compiled.pairs.kind[pair] == Pairs.APART && panelOf[other] == panel) {
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
        int slots = compiled.firstSlot[panel + 1] - compiled.firstSlot[panel];
        double bySlots = 1 - (freeSlots[panel] - poles) / (double) slots;
        double byRating = (runningNano[panel] + nano)
                / Integer.bitCount(compiled.phasesOf[panel + 1])
                / compiled.limits.runningNano[panel + 1];
        return Math.max(bySlots, byRating);
    }

    private double crowding(int panel) {
        return CROWDED * Math.max(0, part(panel, 0, 0) - EASY);
    }
}
