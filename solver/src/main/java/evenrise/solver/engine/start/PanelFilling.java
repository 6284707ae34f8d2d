package evenrise.solver.engine.start;

import evenrise.model.project.Spare;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.IndexSet;
import evenrise.solver.engine.state.Pairs;
import evenrise.solver.engine.state.Place;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.BitSet;
import java.util.List;
import java.util.Optional;

/** How full panels are, by counting slots and running current; nobody has a slot of its own yet. */
final class PanelFilling {
    /** A panel filled further than this can hardly be spread evenly over its phases and whole rows of slots. */
    private static final double EASY = 0.95;
    /** Nodes above carry many panels, whose phases even out. */
    private static final double EASY_ABOVE = 0.98;

    /** For each part of a panel that is filled beyond what is easy: a per cent there is worse than mixing two roles. */
    private static final double CROWDED = 400;

    private final CompiledProject compiled;
    private final int[] panelOf;
    private final int[] freeSlots;
    private final int[] freeSwitchedSlots;
    /** By node, current of all poles together; of nodes above panels only where there is more than a supply. */
    private final double[] runningNano;
    /** By node, third harmonics that return by the neutral. */
    private final double[] thirdNano;
    /** By panel: nodes above it that fill up, too. */
    private final int[][] above;

    private final double[][] ratioAbove;
    private final double[][] returningAbove;
    private final int[] freeOrdinarySlots;
    private final boolean[] leavesRoom;
    private final double[] loadThirdNano;
    private final SourceFilling sources;
    private final List<List<Integer>> loadsIn = new ArrayList<>();
    private final IndexSet crowded;
    private double strain;

    PanelFilling(CompiledProject compiled) {
        this.compiled = compiled;
        panelOf = new int[compiled.loadCount()];
        Arrays.fill(panelOf, CompiledProject.NONE);
        freeSlots = new int[compiled.panelCount];
        freeSwitchedSlots = new int[compiled.panelCount];
        int nodes = compiled.tree.nodeCount;
        runningNano = new double[nodes];
        thirdNano = new double[nodes];
        crowded = new IndexSet(nodes);
        above = new int[compiled.panelCount][];
        ratioAbove = new double[compiled.panelCount][];
        returningAbove = new double[compiled.panelCount][];
        for (int each = 0; each < compiled.panelCount; each++) {
            int panel = each;
            above[panel] = compiled.hasFurtherParts ? compiled.tree.above(panel) : new int[0];
            ratioAbove[panel] = Arrays.stream(above[panel])
                    .mapToDouble(node -> compiled.tree.ratio(panel, node))
                    .toArray();
            returningAbove[panel] = Arrays.stream(above[panel])
                    .mapToDouble(node -> compiled.tree.returning(panel, node))
                    .toArray();
        }
        sources = new SourceFilling(compiled);
        freeOrdinarySlots = new int[compiled.panelCount];
        leavesRoom = new boolean[compiled.panelCount];
        loadThirdNano = new double[compiled.loadCount()];
        for (int load = 0; load < loadThirdNano.length; load++) {
            loadThirdNano[load] = compiled.hasFurtherParts ? compiled.currents.mostThirdNano(load) : 0;
        }
        for (int panel = 0; panel < compiled.panelCount; panel++) {
            loadsIn.add(new ArrayList<>());
        }
        for (Place place : compiled.places) {
            if (place.poles() == 1) {
                freeSlots[place.panel()]++;
                freeSwitchedSlots[place.panel()] += place.takesSwitched() ? 1 : 0;
                freeOrdinarySlots[place.panel()] += place.takesSwitched() ? 0 : 1;
            }
        }
        for (int panel = 0; panel < compiled.panelCount; panel++) {
            Optional<Spare> spare =
                    compiled.project.spareIn(compiled.project.panels().get(panel));
            freeSlots[panel] -= spare.map(wanted -> Math.max(wanted.slots(), wanted.fits() * wanted.poles()))
                    .orElse(0);
            leavesRoom[panel] =
                    spare.filter(wanted -> wanted.slots() + wanted.fits() > 0).isPresent();
            freeSwitchedSlots[panel] -= spare.map(Spare::switchedSlots).orElse(0);
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

    /** Panels and nodes that are filled further than is easy, by node. */
    IndexSet crowded() {
        return crowded;
    }

    List<Integer> loadsIn(int panel) {
        return loadsIn.get(panel);
    }

    /** Whether moving loads from one source to another may pay. */
    boolean hasSeveralSources() {
        return sources.counts();
    }

    /** Whether a load that has a panel is among the largest that its source must bear. */
    boolean isLargest(int load) {
        return panelOf[load] != CompiledProject.NONE && sources.isLargest(load, panelOf[load]);
    }

    /** How much too full panels are, and how much sources must bear at once. */
    double strain() {
        return sources.counts() ? strain + sources.strain() : strain;
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

    /** A load and those behind its contactor. */
    void enter(int load, int panel) {
        fill(load, panel, 1);
        for (int each : compiled.bundle[load]) {
            panelOf[each] = panel;
        }
        loadsIn.get(panel).add(load);
    }

    void leave(int load) {
        fill(load, panelOf[load], -1);
        loadsIn.get(panelOf[load]).remove(Integer.valueOf(load));
        for (int each : compiled.bundle[load]) {
            panelOf[each] = CompiledProject.NONE;
        }
    }

    private void fill(int load, int panel, int sign) {
        strain -= crowdingFrom(panel);
        for (int each : compiled.bundle[load]) {
            freeSlots[panel] -= sign * compiled.poles[each];
            if (compiled.needsSwitchedSlot[each]) {
                freeSwitchedSlots[panel] -= sign * compiled.poles[each];
            } else {
                freeOrdinarySlots[panel] -= sign * compiled.poles[each];
            }
            double nano = (double) compiled.currents.runningNano[each] * compiled.poles[each];
            runningNano[panel + 1] += sign * nano;
            thirdNano[panel + 1] += sign * loadThirdNano[each];
            for (int i = 0; i < above[panel].length; i++) {
                runningNano[above[panel][i]] += sign * ratioAbove[panel][i] * nano;
                thirdNano[above[panel][i]] += sign * returningAbove[panel][i] * loadThirdNano[each];
            }
        }
        strain += crowdingFrom(panel);
        sources.add(load, panel, sign);
        crowded.set(panel + 1, crowding(panel) > 0);
        for (int node : above[panel]) {
            crowded.set(node, crowdingAbove(node) > 0);
        }
    }

    /** Of a panel and of the nodes above it. */
    private double crowdingFrom(int panel) {
        double sum = crowding(panel);
        for (int node : above[panel]) {
            sum += crowdingAbove(node);
        }
        return sum;
    }

    private double crowdingAbove(int node) {
        return node > 0 && node <= compiled.panelCount
                ? crowding(node - 1)
                : CROWDED * Math.max(0, partByCurrents(node, 0, 0) - EASY_ABOVE);
    }

    private int emptiest(int load, BitSet offered) {
        int best = CompiledProject.NONE;
        double least = Double.POSITIVE_INFINITY;
        BitSet allowed = compiled.allowedPanels[load];
        int poles = 0;
        double added = 0;
        for (int each : compiled.bundle[load]) {
            poles += compiled.poles[each];
            added += (double) compiled.currents.runningNano[each] * compiled.poles[each];
        }
        for (int panel = offered.nextSetBit(0); panel >= 0; panel = offered.nextSetBit(panel + 1)) {
            if (allowed.get(panel) && hasRoom(load, panel, poles) && !meetsApart(load, panel)) {
                double part = part(panel, poles, added);
                if (part < least) {
                    least = part;
                    best = panel;
                }
            }
        }
        return best;
    }

    private boolean hasRoom(int load, int panel, int poles) {
        if (!compiled.hasFurtherParts) {
            return (compiled.needsSwitchedSlot[load] ? freeSwitchedSlots[panel] : freeSlots[panel]) >= poles;
        }
        int switchedPoles = switchedPoles(load);
        // What finds no ordinary slot takes one that a switched breaker could.
        int overflow = Math.max(0, poles - switchedPoles - freeOrdinarySlots[panel]);
        return freeSlots[panel] >= poles && freeSwitchedSlots[panel] >= switchedPoles + overflow;
    }

    private int switchedPoles(int load) {
        return Arrays.stream(compiled.bundle[load])
                .filter(each -> compiled.needsSwitchedSlot[each])
                .map(each -> compiled.poles[each])
                .sum();
    }

    private boolean meetsApart(int lead, int panel) {
        for (int load : compiled.bundle[lead]) {
            if (oneMeetsApart(load, panel)) {
                return true;
            }
        }
        return false;
    }

    private boolean oneMeetsApart(int load, int panel) {
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
        if (leavesRoom[panel]) {
            bySlots *= EASY; // what is to stay free is room enough
        }
        return Math.max(bySlots, partByCurrents(panel + 1, nano, 0));
    }

    private double partByCurrents(int node, double nano, double third) {
        double byRating = (runningNano[node] + nano)
                / Integer.bitCount(compiled.phasesOf[node])
                / compiled.limits.spareNano[node];
        return compiled.hasFurtherParts
                ? Math.max(byRating, (thirdNano[node] + third) / compiled.limits.neutralNano[node])
                : byRating;
    }

    private double crowding(int panel) {
        return CROWDED * Math.max(0, part(panel, 0, 0) - EASY);
    }
}
