package evenrise.solver.engine.state;

import evenrise.model.project.ObjectiveWeights;
import java.util.Arrays;

/**
 * A plan as the search sees it: who sits where, when each comes on, and every sum that the score needs, kept up to date
 * change by change. What a change costs depends on the loads and boards it touches, on the number of phases and on the
 * number of instants, not on the number of loads.
 *
 * <p>Changes are first collected ({@link #place}, {@link #wire}, {@link #set}) and then settled together, so that a load
 * whose place and output both change is moved once, and a change that was taken back costs nothing.
 */
public final class PlanSums {
    public final CompiledProject compiled;

    private final Place[] placeOf;
    private final Output[] outputOf;
    private final int[] atInstant;
    private final int[] loadInSlot;
    private final int[] loadOnOutput;
    private final BoardClock clock;

    private final NodeCurrents[] currents;
    private final InrushProfile[] profiles;
    private final EventInrush[] events;
    private final RoleOrder roles;
    private final GroupSpread groups;
    private final PairCharges pairs;
    private final InstantIndex byInstant;

    private final long[] deviationNano;
    private final long[] overload;
    private final int[] interruptions;
    private long panelDeviationNano;
    private long overloads;
    private long interrupted;
    private long unreached;
    private final IndexSet unassigned;
    private final IndexSet overloadedPanels;
    private final IndexSet muddledBoards;
    private int boardsUsed;

    private final Place[] nextPlace;
    private final Output[] nextOutput;
    private final int[] changedLoads;
    private final boolean[] isChanged;
    private int changedCount;
    private final IntBag lifted;
    private final IntBag touchedBoards;
    private final IntBag touchedNodes;

    public PlanSums(CompiledProject compiled) {
        this.compiled = compiled;
        int loads = compiled.loadCount();
        placeOf = new Place[loads];
        outputOf = new Output[loads];
        atInstant = new int[loads];
        Arrays.fill(atInstant, CompiledProject.NONE);
        loadInSlot = new int[compiled.slotCount()];
        Arrays.fill(loadInSlot, CompiledProject.NONE);
        loadOnOutput = new int[compiled.outputs.size()];
        Arrays.fill(loadOnOutput, CompiledProject.NONE);
        clock = new BoardClock(compiled, loadOnOutput);
        int nodes = compiled.panelCount + 1;
        currents = new NodeCurrents[nodes];
        Arrays.setAll(currents, node -> new NodeCurrents(compiled, node));
        byInstant = new InstantIndex(compiled);
        profiles = new InrushProfile[nodes];
        profiles[0] = new InrushProfile(compiled, byInstant);
        for (int node = 1; node < nodes; node++) {
            if (Double.isFinite(compiled.limits.inrushAmps[node])) {
                profiles[node] = new InrushProfile(compiled, byInstant);
            }
        }
        events = new EventInrush[nodes];
        for (int node = 0; node < nodes; node++) {
            if (compiled.eventLoad.isAsked() && Double.isFinite(compiled.limits.inrushAmps[node])) {
                events[node] = new EventInrush(this, node, byInstant);
            }
        }
        roles = new RoleOrder(compiled);
        groups = new GroupSpread(compiled);
        pairs = new PairCharges(this);
        deviationNano = new long[nodes];
        overload = new long[nodes];
        interruptions = new int[compiled.boardCount];
        nextPlace = new Place[loads];
        nextOutput = new Output[loads];
        changedLoads = new int[loads];
        isChanged = new boolean[loads];
        lifted = new IntBag(loads);
        touchedBoards = new IntBag(compiled.boardCount);
        touchedNodes = new IntBag(nodes);
        unassigned = new IndexSet(loads);
        for (int load = 0; load < loads; load++) {
            unassigned.set(load, true);
        }
        overloadedPanels = new IndexSet(compiled.panelCount);
        muddledBoards = new IndexSet(compiled.boardCount);
    }

    public static PlanSums of(CompiledProject compiled, PlanSnapshot plan) {
        PlanSums sums = new PlanSums(compiled);
        sums.take(plan);
        return sums;
    }

    // ---- changes

    /** Becomes another plan. */
    public void take(PlanSnapshot plan) {
        for (int board = 0; board < plan.boardCount(); board++) {
            set(board, plan.startDelay(board), plan.step(board));
        }
        for (int load = 0; load < plan.loadCount(); load++) {
            place(load, plan.placeOf(load));
            wire(load, plan.outputOf(load));
        }
        settle();
    }

    /** The plan as it is now. */
    public PlanSnapshot snapshot() {
        Setting[] startDelays = new Setting[compiled.boardCount];
        Setting[] steps = new Setting[compiled.boardCount];
        Arrays.setAll(startDelays, clock::startDelay);
        Arrays.setAll(steps, clock::step);
        return new PlanSnapshot(placeOf.clone(), outputOf.clone(), startDelays, steps);
    }

    public void place(int load, Place place) {
        noteChange(load);
        nextPlace[load] = place;
    }

    public void wire(int load, Output output) {
        noteChange(load);
        nextOutput[load] = output;
    }

    public void set(int board, Setting startDelay, Setting step) {
        clock.propose(board, startDelay, step);
        touchedBoards.add(board);
    }

    private void noteChange(int load) {
        if (!isChanged[load]) {
            isChanged[load] = true;
            changedLoads[changedCount++] = load;
            nextPlace[load] = placeOf[load];
            nextOutput[load] = outputOf[load];
        }
    }

    /** Works the collected changes into every sum. */
    public void settle() {
        if (changedCount == 0 && touchedBoards.isEmpty()) {
            return;
        }
        for (int i = 0; i < changedCount; i++) {
            int load = changedLoads[i];
            isChanged[load] = false;
            if (nextPlace[load] != placeOf[load] || nextOutput[load] != outputOf[load]) {
                lift(load);
                sumSeat(load, nextPlace[load] != placeOf[load], nextOutput[load] != outputOf[load], -1);
                vacate(load);
            }
        }
        for (int i = 0; i < changedCount; i++) {
            occupy(changedLoads[i]);
        }
        changedCount = 0;
        retimeBoards();
        for (int i = 0; i < lifted.size(); i++) {
            land(lifted.get(i));
        }
        lifted.clear();
        for (int i = 0; i < touchedBoards.size(); i++) {
            countInterruptions(touchedBoards.get(i));
        }
        touchedBoards.clear();
        for (int i = 0; i < touchedNodes.size(); i++) {
            refreshNode(touchedNodes.get(i));
        }
        touchedNodes.clear();
    }

    private void vacate(int load) {
        if (placeOf[load] != null) {
            for (int slot : placeOf[load].slots()) {
                if (loadInSlot[slot] == load) {
                    loadInSlot[slot] = CompiledProject.NONE;
                }
            }
        }
        if (outputOf[load] != null) {
            if (loadOnOutput[outputOf[load].index()] == load) {
                loadOnOutput[outputOf[load].index()] = CompiledProject.NONE;
            }
            touchedBoards.add(outputOf[load].board());
        }
    }

    private void occupy(int load) {
        if (!lifted.contains(load)) {
            return;
        }
        boolean moves = nextPlace[load] != placeOf[load];
        boolean isRewired = nextOutput[load] != outputOf[load];
        placeOf[load] = nextPlace[load];
        outputOf[load] = nextOutput[load];
        sumSeat(load, moves, isRewired, 1);
        if (placeOf[load] != null) {
            for (int slot : placeOf[load].slots()) {
                loadInSlot[slot] = load;
            }
        }
        if (outputOf[load] != null) {
            loadOnOutput[outputOf[load].index()] = load;
            touchedBoards.add(outputOf[load].board());
        }
    }

    private void retimeBoards() {
        if (touchedBoards.isEmpty()) {
            return;
        }
        for (int board : clock.retimed(touchedBoards)) {
            touchedBoards.add(board);
            for (int k = compiled.firstOutput[board]; k < compiled.firstOutput[board + 1]; k++) {
                int load = loadOnOutput[k];
                if (load != CompiledProject.NONE && !lifted.contains(load)) {
                    lift(load);
                }
            }
        }
    }

    /** Takes a load out of every sum over the instants, as it sits now. */
    private void lift(int load) {
        lifted.add(load);
        sumInstant(load, -1);
        atInstant[load] = CompiledProject.NONE;
    }

    /** Brings a load back into every sum over the instants, as it will sit. */
    private void land(int load) {
        Output output = outputOf[load];
        atInstant[load] = output == null ? CompiledProject.NONE : compiled.instants.indexOf(clock.onMicros(output));
        sumInstant(load, 1);
    }

    /** What depends on when a load comes on, and so changes with its board's setting, too. */
    private void sumInstant(int load, int sign) {
        Place place = placeOf[load];
        int instant = atInstant[load];
        if (place != null) {
            addToProfiles(0, load, place, instant, sign);
            addToProfiles(place.panel() + 1, load, place, instant, sign);
        }
        if (instant != CompiledProject.NONE) {
            roles.add(load, instant, sign);
            byInstant.add(load, instant, sign);
        }
        pairs.refresh(load, sign > 0);
    }

    private void addToProfiles(int node, int load, Place place, int instant, int sign) {
        touchedNodes.add(node);
        if (profiles[node] != null) {
            if (instant != CompiledProject.NONE || !compiled.switched[load]) {
                profiles[node].add(load, place.phaseMask(), Math.max(0, instant), sign);
            }
        }
        if (events[node] != null) {
            int board = outputOf[load] == null ? CompiledProject.NONE : outputOf[load].board();
            events[node].add(load, place.phaseMask(), board, instant, sign);
        }
    }

    /** What depends on where a load sits and what switches it; most moves leave one of the two as it is. */
    private void sumSeat(int load, boolean moves, boolean isRewired, int sign) {
        Place place = placeOf[load];
        Output output = outputOf[load];
        if (place != null && moves) {
            addCurrents(0, load, place, sign);
            addCurrents(place.panel() + 1, load, place, sign);
            if (compiled.switched[load]) {
                groups.addToPanel(load, place.panel(), sign);
            }
        }
        if (output != null && isRewired) {
            groups.addToBoard(load, output.board(), sign);
            boardsUsed += groups.loadsOn(output.board()) == (sign > 0 ? 1 : 0) ? sign : 0;
        }
        if (place != null && (output != null || !compiled.switched[load])) {
            unassigned.set(load, sign < 0);
        }
        if (place != null && output != null && !compiled.reach[output.board()].get(place.panel())) {
            unreached += sign;
        }
    }

    private void addCurrents(int node, int load, Place place, int sign) {
        currents[node].add(load, place.phaseMask(), sign);
        touchedNodes.add(node);
    }

    /** How often a group's loads on a board are interrupted, in output order. */
    private void countInterruptions(int board) {
        int previous = CompiledProject.NONE - 1;
        int broken = 0;
        for (int k = compiled.firstOutput[board]; k < compiled.firstOutput[board + 1]; k++) {
            int load = loadOnOutput[k];
            if (load != CompiledProject.NONE) {
                int group = compiled.group[load];
                if (group != previous && group != CompiledProject.NONE && seenBefore(board, k, group)) {
                    broken++;
                }
                previous = group;
            }
        }
        interrupted += broken - interruptions[board];
        interruptions[board] = broken;
        muddledBoards.set(board, broken > 0 || groups.isMixed(board));
    }

    private boolean seenBefore(int board, int output, int group) {
        for (int k = compiled.firstOutput[board]; k < output; k++) {
            if (loadOnOutput[k] != CompiledProject.NONE && compiled.group[loadOnOutput[k]] == group) {
                return true;
            }
        }
        return false;
    }

    private void refreshNode(int node) {
        long deviation = currents[node].deviationNano();
        if (node > 0) {
            panelDeviationNano += deviation - deviationNano[node];
        }
        deviationNano[node] = deviation;
        long over = currents[node].overload();
        if (profiles[node] != null && Double.isFinite(compiled.limits.inrushAmps[node])) {
            double excessAmps =
                    profiles[node].peakUnits() / compiled.envelopes.unitsPerAmp - compiled.limits.inrushAmps[node];
            over += Charges.overMilliAmps(excessAmps * Currents.NANO);
        }
        if (events[node] != null) {
            over += events[node].charge(profiles[node], compiled.limits.inrushAmps[node]);
        }
        overloads += over - overload[node];
        overload[node] = over;
        if (node > 0) {
            overloadedPanels.set(node - 1, over > 0);
        }
    }

    // ---- what follows

    /** How much hard rules are broken; 0 for a feasible plan. */
    public long hardCharge() {
        return unassigned.size() * compiled.unassignedCharge
                + (unreached + interrupted) * Charges.PLACE
                + groups.charge()
                + pairs.charge()
                + roles.lateness()
                + overloads;
    }

    public double peakInrushAmps() {
        return profiles[0].peakUnits() / compiled.envelopes.unitsPerAmp;
    }

    double supplyDeviationAmps() {
        return deviationNano[0] / Currents.NANO;
    }

    double panelDeviationsAmps() {
        return panelDeviationNano / Currents.NANO;
    }

    public double supplyImbalancePercent() {
        double mean = currents[0].meanNano();
        return mean == 0 ? 0 : 100 * deviationNano[0] / mean;
    }

    /** The objective in milliampere-equivalents, rounded once. */
    public long objectiveMilliAmps() {
        return Math.round(1000 * objectiveWith(peakInrushAmps()));
    }

    /** The objective with another figure in the place of the peak. */
    public double objectiveWith(double peakAmps) {
        ObjectiveWeights weights = compiled.project.objective();
        return weights.peakInrush() * peakAmps
                + weights.supplyImbalance() * supplyDeviationAmps()
                + weights.panelImbalance() * panelDeviationsAmps()
                + weights.duration() * roles.durationMicros() / 1e6
                + weights.boards() * boardsUsed;
    }

    /** The profile's norm in the place of the peak: see {@link InrushProfile#norm}. */
    public double inrushNormAmps(int doublings) {
        return profiles[0].norm(doublings) / compiled.envelopes.unitsPerAmp;
    }

    public InrushProfile supplyProfile() {
        return profiles[0];
    }

    public RoleOrder roles() {
        return roles;
    }

    public InstantIndex byInstant() {
        return byInstant;
    }

    public GroupSpread groups() {
        return groups;
    }

    public NodeCurrents currents(int node) {
        return currents[node];
    }

    public BoardClock clock() {
        return clock;
    }

    /** Whether a group's loads on the board are interrupted. */
    public boolean isInterrupted(int board) {
        return interruptions[board] > 0;
    }

    /** Whether a panel carries more than it may, or peaks higher. */
    public boolean isOverloaded(int panel) {
        return overload[panel + 1] > 0;
    }

    /** Profile of a panel, or null where it has no limit to hold. */
    public InrushProfile panelProfile(int panel) {
        return profiles[panel + 1];
    }

    public PairCharges pairs() {
        return pairs;
    }

    public Place placeOf(int load) {
        return placeOf[load];
    }

    public Output outputOf(int load) {
        return outputOf[load];
    }

    /** Instant at which a load comes on, or {@link CompiledProject#NONE}. */
    public int instantOf(int load) {
        return atInstant[load];
    }

    /** Load whose breaker takes a project-wide slot, or {@link CompiledProject#NONE}. */
    public int loadInSlot(int slot) {
        return loadInSlot[slot];
    }

    /** Load on a project-wide output, or {@link CompiledProject#NONE}. */
    public int loadOnOutput(int output) {
        return loadOnOutput[output];
    }

    public int unassigned() {
        return unassigned.size();
    }

    /** One of the loads without a place or an output. */
    public int unassignedLoad(int position) {
        return unassigned.get(position);
    }

    /** Boards with a group that is interrupted, or with loads that must not share one. */
    public IndexSet muddledBoards() {
        return muddledBoards;
    }

    /** Panels that carry more than they may, or peak higher. */
    public IndexSet overloadedPanels() {
        return overloadedPanels;
    }
}
