package evenrise.solver.engine.state;

import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.PlanEvent;
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
    private static final FeederTree.Seen[] NOTHING_SEEN = {};

    public final CompiledProject compiled;

    private final boolean hasTransformers;
    private final boolean hasBundles;

    private final Place[] placeOf;
    private final Output[] outputOf;
    private final Setting[] timeOf;
    private final int[] atInstant;
    private final int[] loadInSlot;
    private final int[] loadOnOutput;
    private final BoardClock clock;

    private final NodeCurrents[] currents;
    private final WindingSums windings;
    private final NodeInrush[] inrush;
    private final EventInrush[] events;
    private final ChainRise chainRise;
    private final Precedence roles;
    private final GroupSpread groups;
    private final SystemSpread systems;
    private final BoardMix mix;
    private final RackSums racks;
    private final SpareRoom spare;
    private final PairCharges pairs;
    private final InstantIndex byInstant;
    /** By clock; the same as {@link #byInstant} where there is one. */
    private final InstantIndex[] byClock;

    private final long[] deviationNano;
    private final long[] overload;
    private final int[] interruptions;
    private long sourceDeviationNano;
    private long panelDeviationNano;
    private long innerDeviationNano;
    private long offFixedTime;
    private long leaning;
    private long offWishes;
    private final double longestMicros;
    private int moved;
    private long overloads;
    private long interrupted;
    private long unreached;
    private final IndexSet unassigned;
    private final IndexSet overloadedNodes;
    private final IndexSet muddledBoards;
    private int boardsUsed;

    private final Place[] nextPlace;
    private final Output[] nextOutput;
    private final Setting[] nextTime;
    private final int[] changedLoads;
    private final boolean[] isChanged;
    private final boolean[] isLeaving;
    private int changedCount;
    private final IntBag lifted;
    private final IntBag touchedBoards;
    private final IntBag touchedNodes;

    public PlanSums(CompiledProject compiled) {
        this.compiled = compiled;
        hasTransformers = compiled.tree.transformers.length > 0;
        hasBundles = compiled.hasBundles;
        int loads = compiled.loadCount();
        longestMicros = Math.max(1, compiled.instants.micros(compiled.usefulInstants() - 1));
        placeOf = new Place[loads];
        outputOf = new Output[loads];
        timeOf = new Setting[loads];
        atInstant = new int[loads];
        Arrays.fill(atInstant, CompiledProject.NONE);
        loadInSlot = new int[compiled.slotCount()];
        Arrays.fill(loadInSlot, CompiledProject.NONE);
        loadOnOutput = new int[compiled.outputs.size()];
        Arrays.fill(loadOnOutput, CompiledProject.NONE);
        clock = new BoardClock(compiled, loadOnOutput, timeOf);
        int nodes = compiled.tree.nodeCount;
        currents = new NodeCurrents[nodes];
        Arrays.setAll(currents, node -> new NodeCurrents(compiled, node));
        windings = new WindingSums(compiled, currents);
        byInstant = new InstantIndex(compiled);
        byClock = new InstantIndex[compiled.clockCount];
        Arrays.setAll(byClock, clock -> compiled.hasClocks ? new InstantIndex(compiled) : byInstant);
        inrush = new NodeInrush[nodes];
        for (int source : compiled.tree.sources) {
            inrush[source] = new NodeInrush(compiled, byClock);
        }
        events = new EventInrush[nodes];
        chainRise = compiled.eventLoad.asked.contains(PlanEvent.BOARD_FAILURE) ? new ChainRise(this, byClock) : null;
        for (int node = 0; node < nodes; node++) {
            if (Double.isFinite(compiled.limits.inrushAmps[node])) {
                inrush[node] = inrush[node] == null ? new NodeInrush(compiled, byClock) : inrush[node];
                events[node] = compiled.eventLoad.isAsked() ? new EventInrush(this, node, inrush[node], byClock) : null;
            }
        }
        roles = new Precedence(compiled);
        systems = new SystemSpread(compiled);
        mix = new BoardMix(compiled);
        racks = new RackSums(compiled);
        spare = new SpareRoom(compiled, loadInSlot);
        groups = new GroupSpread(compiled);
        pairs = new PairCharges(this);
        deviationNano = new long[nodes];
        overload = new long[nodes];
        interruptions = new int[compiled.boardCount];
        nextPlace = new Place[loads];
        nextOutput = new Output[loads];
        nextTime = new Setting[loads];
        isLeaving = new boolean[loads];
        changedLoads = new int[loads];
        isChanged = new boolean[loads];
        lifted = new IntBag(loads);
        touchedBoards = new IntBag(compiled.boardCount);
        touchedNodes = new IntBag(nodes);
        unassigned = new IndexSet(loads);
        for (int load = 0; load < loads; load++) {
            unassigned.set(load, true);
        }
        overloadedNodes = new IndexSet(nodes);
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
            time(load, plan.time(load));
        }
        settle();
    }

    /** The plan as it is now. */
    public PlanSnapshot snapshot() {
        Setting[] startDelays = new Setting[compiled.boardCount];
        Setting[] steps = new Setting[compiled.boardCount];
        Arrays.setAll(startDelays, clock::startDelay);
        Arrays.setAll(steps, clock::step);
        return new PlanSnapshot(placeOf.clone(), outputOf.clone(), startDelays, steps, timeOf.clone());
    }

    /** The same as {@link #place}, {@link #wire} and {@link #time} together. */
    public void seat(int load, Place place, Output output, Setting time) {
        noteChange(load);
        nextPlace[load] = place;
        nextOutput[load] = output;
        nextTime[load] = time;
    }

    public void place(int load, Place place) {
        noteChange(load);
        nextPlace[load] = place;
    }

    public void wire(int load, Output output) {
        noteChange(load);
        nextOutput[load] = output;
    }

    /** The time of a load's output, where that has one of its own; it means nothing elsewhere. */
    public void time(int load, Setting time) {
        noteChange(load);
        nextTime[load] = time;
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
            nextTime[load] = timeOf[load];
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
            boolean moves = nextPlace[load] != placeOf[load];
            boolean isRewired = nextOutput[load] != outputOf[load];
            if (moves || isRewired || nextTime[load] != timeOf[load]) {
                isLeaving[load] = true;
                liftAll(load);
                if (moves && compiled.eventLoad.sourcesFailApart) {
                    liftFed(load);
                }
                sumSeat(load, moves, isRewired, -1);
                vacate(load);
            }
        }
        for (int i = 0; i < changedCount; i++) {
            if (isLeaving[changedLoads[i]]) {
                isLeaving[changedLoads[i]] = false;
                occupy(changedLoads[i]);
            }
        }
        changedCount = 0;
        retimeBoards();
        for (int i = 0; i < lifted.size(); i++) {
            land(lifted.get(i));
        }
        lifted.clear();
        for (int i = 0; i < touchedBoards.size(); i++) {
            countInterruptions(touchedBoards.get(i));
            systems.refresh(touchedBoards.get(i));
        }
        touchedBoards.clear();
        windings.settle(touchedNodes);
        spare.settle();
        for (int i = 0; i < touchedNodes.size(); i++) {
            refreshNode(touchedNodes.get(i));
        }
        touchedNodes.clear();
    }

    /** Loads on the boards that a load feeds, whose source may soon be another. */
    private void liftFed(int load) {
        for (int board : compiled.eventLoad.feeds.fedBy(load)) {
            for (int k = compiled.firstOutput[board]; k < compiled.firstOutput[board + 1]; k++) {
                if (loadOnOutput[k] != CompiledProject.NONE) {
                    liftAll(loadOnOutput[k]);
                }
            }
        }
    }

    private void vacate(int load) {
        if (placeOf[load] != null) {
            for (int slot : placeOf[load].slots()) {
                if (loadInSlot[slot] == load) {
                    loadInSlot[slot] = CompiledProject.NONE;
                }
            }
            spare.touch(placeOf[load].panel());
        }
        if (outputOf[load] != null) {
            if (loadOnOutput[outputOf[load].index()] == load) {
                loadOnOutput[outputOf[load].index()] = CompiledProject.NONE;
            }
            touchedBoards.add(outputOf[load].board());
        }
    }

    private void occupy(int load) {
        boolean moves = nextPlace[load] != placeOf[load];
        boolean isRewired = nextOutput[load] != outputOf[load];
        placeOf[load] = nextPlace[load];
        outputOf[load] = nextOutput[load];
        timeOf[load] = nextTime[load];
        sumSeat(load, moves, isRewired, 1);
        if (placeOf[load] != null) {
            for (int slot : placeOf[load].slots()) {
                loadInSlot[slot] = load;
            }
            spare.touch(placeOf[load].panel());
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
                if (load != CompiledProject.NONE) {
                    liftAll(load);
                }
            }
        }
    }

    /** Takes a load and those behind its contactor out of every sum over the instants, as they sit now. */
    private void liftAll(int load) {
        if (hasBundles) {
            for (int each : compiled.bundle[load]) {
                lift(each);
            }
        } else {
            lift(load);
        }
    }

    private void lift(int load) {
        if (!lifted.contains(load)) {
            lifted.add(load);
            sumInstant(load, -1);
            atInstant[load] = CompiledProject.NONE;
        }
    }

    /** Brings a load back into every sum over the instants, as it will sit. */
    private void land(int load) {
        int lead = hasBundles ? compiled.leadOf[load] : load;
        Output output = outputOf[lead];
        atInstant[load] =
                output == null ? CompiledProject.NONE : compiled.instants.indexOf(clock.onMicros(lead, output));
        sumInstant(load, 1);
    }

    /** What depends on when a load comes on, and so changes with its board's setting, too. */
    private void sumInstant(int load, int sign) {
        Place place = placeOf[load];
        int instant = atInstant[load];
        if (place != null) {
            for (int node : compiled.tree.carriers[place.panel()]) {
                addToInrush(node, load, place, instant, sign);
            }
            for (FeederTree.Seen seen : hasTransformers ? compiled.tree.seen(place) : NOTHING_SEEN) {
                if (inrush[seen.node()] != null) {
                    touchedNodes.add(seen.node());
                    inrush[seen.node()].addShares(load, seen.shares(), instant, sign);
                }
                if (events[seen.node()] != null) {
                    events[seen.node()].add(load, seen.shares(), instant, sign);
                }
            }
        }
        if (instant != CompiledProject.NONE) {
            roles.add(load, instant, sign);
            byInstant.add(load, instant, sign);
            leaning += sign * compiled.lean[load] * compiled.instants.micros(instant);
            if (compiled.hasClocks) {
                byClock[compiled.systemOf[load]].add(load, instant, sign);
            }
            if (compiled.hasSingleTimes) {
                sumTime(load, instant, sign);
            }
        }
        pairs.refresh(load, sign > 0);
    }

    private void sumTime(int load, int instant, int sign) {
        long fixed = compiled.fixedOnMicros[load];
        if (fixed != CompiledProject.NONE) {
            offFixedTime += sign * Charges.late(Math.abs(compiled.instants.micros(instant) - fixed));
        }
        if (compiled.earlier != null && outputOf[load] != null) {
            boolean isRetimed = compiled.earlier.isRetimed(outputOf[load], compiled.instants.micros(instant));
            moved += isRetimed ? sign : 0;
        }
    }

    private void addToInrush(int node, int load, Place place, int instant, int sign) {
        touchedNodes.add(node);
        if (inrush[node] != null) {
            inrush[node].add(load, place.phaseMask(), instant, sign);
        }
        if (events[node] != null) {
            events[node].add(load, compiled.tree.whole(place), instant, sign);
        }
    }

    /** What depends on where a load sits and what switches it; most moves leave one of the two as it is. */
    private void sumSeat(int load, boolean moves, boolean isRewired, int sign) {
        Place place = placeOf[load];
        Output output = outputOf[load];
        if (place != null && moves) {
            addCurrents(load, place, sign);
            if (compiled.needsOutput[load]) {
                groups.addToPanel(load, place.panel(), sign);
            }
        }
        if (output != null && isRewired) {
            groups.addToBoard(load, output.board(), sign);
            systems.add(load, output.board(), sign);
            mix.add(load, output.board(), sign);
            boardsUsed += groups.loadsOn(output.board()) == (sign > 0 ? 1 : 0) ? sign : 0;
        }
        if (compiled.rackOf[load] != CompiledProject.NONE) {
            sumRack(load, place, output, moves, isRewired, sign);
        }
        if (compiled.earlier != null) {
            moved += place != null && moves && compiled.earlier.isMoved(load, place) ? sign : 0;
            moved += place != null && compiled.earlier.isRewired(load, output) ? sign : 0;
        }
        if (place != null && (output != null || !compiled.needsOutput[load])) {
            unassigned.set(load, sign < 0);
        }
        if (place != null && output != null && !compiled.reach[output.board()].get(place.panel())) {
            unreached += sign;
        }
    }

    private void sumRack(int load, Place place, Output output, boolean moves, boolean isRewired, int sign) {
        int rack = compiled.rackOf[load];
        if (place != null && moves) {
            racks.addPlace(rack, place, sign);
        }
        if (output != null && isRewired) {
            racks.addBoard(rack, output.board(), sign);
        }
    }

    private void addCurrents(int load, Place place, int sign) {
        offWishes += sign * compiled.wishes.offUnits(load, place.phaseMask());
        FeederTree tree = compiled.tree;
        for (int node : tree.carriers[place.panel()]) {
            currents[node].add(load, place.phaseMask(), sign);
            touchedNodes.add(node);
        }
        int origin = tree.origin[place.panel()];
        if (hasTransformers && tree.windings[origin] != null) {
            windings.add(origin, load, place.phaseMask(), sign);
            for (FeederTree.Returned each : tree.returned(place)) {
                currents[each.node()].addReturned(load, each.phase(), each.part(), sign);
                touchedNodes.add(each.node());
            }
        }
    }

    /** How often a group's loads on a board are interrupted, in output order. */
    private void countInterruptions(int board) {
        int previous = CompiledProject.NONE - 1;
        int broken = 0;
        for (int k = compiled.firstOutput[board]; k < compiled.firstOutput[board + 1]; k++) {
            int load = loadOnOutput[k];
            if (load != CompiledProject.NONE) {
                int group = compiled.group[load];
                boolean begins = group != previous && group != CompiledProject.NONE;
                if (begins && compiled.seatsGroupsWhole[board] && seenBefore(board, k, group)) {
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
        long rise = deviation - deviationNano[node];
        if (node > 0 && node <= compiled.panelCount) {
            panelDeviationNano += rise;
        } else if (compiled.tree.isInner[node]) {
            innerDeviationNano += rise;
        } else {
            sourceDeviationNano += rise;
        }
        deviationNano[node] = deviation;
        long over = currents[node].overload();
        if (inrush[node] != null && Double.isFinite(compiled.limits.inrushAmps[node])) {
            double excessAmps =
                    inrush[node].peakUnits() / compiled.envelopes.unitsPerAmp - compiled.limits.inrushAmps[node];
            over += Charges.overMilliAmps(excessAmps * Currents.NANO);
        }
        if (events[node] != null) {
            over += events[node].charge(compiled.limits.inrushAmps[node]);
        }
        overloads += over - overload[node];
        overload[node] = over;
        if (node > 0) {
            overloadedNodes.set(node, over > 0);
        }
    }

    // ---- what follows

    /** How much hard rules are broken; 0 for a feasible plan. */
    public long hardCharge() {
        return unassigned.size() * compiled.unassignedCharge
                + (unreached + interrupted) * Charges.PLACE
                + groups.charge()
                + systems.charge()
                + spare.charge()
                + pairs.charge()
                + roles.lateness()
                + offFixedTime
                + overloads;
    }

    /** Of the supply. */
    public double peakInrushAmps() {
        return inrush[0].peakUnits() / compiled.envelopes.unitsPerAmp;
    }

    /** Of the supply and of all further sources, each at its own worst time. */
    public double sourcePeaksAmps() {
        double amps = peakInrushAmps();
        for (int i = 1; i < compiled.tree.sources.length; i++) {
            amps += inrush[compiled.tree.sources[i]].peakUnits() / compiled.envelopes.unitsPerAmp;
        }
        return amps;
    }

    double sourceDeviationsAmps() {
        return sourceDeviationNano / Currents.NANO;
    }

    double panelDeviationsAmps() {
        return panelDeviationNano / Currents.NANO;
    }

    public double supplyImbalancePercent() {
        return currents[0].imbalancePercent();
    }

    /** The objective in milliampere-equivalents, rounded once. */
    public long objectiveMilliAmps() {
        return Math.round(1000 * objective());
    }

    /** The objective, in ampere-equivalents. */
    public double objective() {
        return objectiveWith(sourcePeaksAmps());
    }

    /** The objective with another figure in the place of the sources' peaks. */
    public double objectiveWith(double peakAmps) {
        ObjectiveWeights weights = compiled.project.objective();
        double objective = weights.peakInrush() * peakAmps
                + weights.supplyImbalance() * sourceDeviationsAmps()
                + weights.panelImbalance() * panelDeviationsAmps()
                + weights.duration() * roles.durationMicros() / 1e6
                + weights.boards() * boardsUsed;
        return compiled.hasTidiness
                ? objective
                        + weights.nodeImbalance() * (innerDeviationNano / Currents.NANO)
                        + weights.rackPanels() * racks.panels()
                        + weights.rackBoards() * racks.boards()
                        + weights.rackRows() * racks.rows()
                        + weights.move() * (moved + movedSettings())
                : objective;
    }

    private int movedSettings() {
        return clock.movedSettings();
    }

    /** The profiles' norms in the place of the peaks: see {@link InrushProfile#norm}. */
    public double inrushNormAmps(int doublings) {
        double norm = 0;
        for (int source : compiled.tree.sources) {
            norm += inrush[source].norm(doublings);
        }
        return norm / compiled.envelopes.unitsPerAmp;
    }

    /** The lower, the flatter the sources' profiles, also far from their peaks. */
    public double unevenness() {
        double sum = 0;
        for (int source : compiled.tree.sources) {
            sum += inrush[source].unevenness();
        }
        return sum;
    }

    /** Greatest currents of a source, or of a node with a limit to hold; null elsewhere. */
    public NodeInrush inrush(int node) {
        return inrush[node];
    }

    /**
     * How unlike amplifiers of one board are in what they draw as they come on: the sum of squares of what each excess is off
     * the mean of its board, by the mean of all.
     */
    public double unlikeness() {
        return mix.unlikeness();
    }

    /**
     * The lower, the more of what draws most comes on first: over all amplifiers, how much more than on average each draws
     * above its base as it comes on, as a part of that average, times its switch-on as a part of the longest sequence.
     */
    public double leaning() {
        return leaning / 1000.0 / longestMicros;
    }

    /** How far loads are from the phases on which they had best sit: a sum of parts, each 1 for a load that matters as most do. */
    public double offWishes() {
        return PhaseWishes.parts(offWishes);
    }

    ChainRise chainRise() {
        return chainRise;
    }

    public Precedence roles() {
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

    /** Whether a panel, or a node that carries its current, carries more than it may, peaks higher or has too little left. */
    public boolean isOverloaded(int panel) {
        for (int node : compiled.tree.carriers[panel]) {
            if (node > 0 && overload[node] > 0) {
                return true;
            }
        }
        return spare.isShort(panel);
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

    /** Panels and further nodes that carry more than they may, or peak higher. */
    public IndexSet overloadedNodes() {
        return overloadedNodes;
    }

    /** Panels that leave less room than they are to. */
    public IndexSet shortPanels() {
        return spare.shortPanels();
    }

    /** Whether a load comes on at another time than it is fixed to. */
    public boolean isOffFixedTime(int load) {
        long fixed = compiled.fixedOnMicros[load];
        return fixed != CompiledProject.NONE
                && atInstant[load] != CompiledProject.NONE
                && Charges.late(Math.abs(compiled.instants.micros(atInstant[load]) - fixed)) > 0;
    }

    /** The time of a load whose output has one of its own. */
    public Setting timeOf(int load) {
        return timeOf[load];
    }

    public SystemSpread systems() {
        return systems;
    }
}
