package evenrise.model.check;

import evenrise.model.contract.Decimals;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.OffTiming;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.SlotLayout;
import evenrise.model.project.Spare;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * For each load the panels in which it could sit if it were alone but for loads whose slot is fixed. A panel is ruled out
 * only by what holds in every plan: {@code panels} and {@code fixed}; no free run of slots on different phases; no board
 * that reaches it; the load's own current over the panel's rating, its own peak over the panel's inrush limit.
 */
final class Candidates {
    /** What rating and limit comparisons of a plan forgive, in ampere. */
    static final double AMPS_TOLERANCE = 1e-6;

    /** How far the voltage at a load may be from what it states, as the rule has it. */
    private static final double VOLTAGE_WITHIN = 0.05;

    final ProjectParts parts;
    final List<Panel> panels;
    /** In the project's order; a position is that of the panel in the project. */
    final Map<String, BitSet> ofLoad = new LinkedHashMap<>();

    private final List<Load> placeable = new ArrayList<>();
    private final Map<Integer, List<Load>> bound = new HashMap<>();
    private final Map<String, Integer> panelIndex = new HashMap<>();
    private final List<SlotLayout> layouts = new ArrayList<>();
    private final List<Set<Integer>> reserved = new ArrayList<>();
    private final List<Set<Integer>> switchable = new ArrayList<>();
    private final List<Map<Integer, String>> fixedOwners = new ArrayList<>();
    private final BitSet reachable = new BitSet();
    /** By panel, poles and kind of breaker; null where nobody has asked. */
    private final Boolean[][] anySlot;

    private final Map<Board, BitSet> reached = new IdentityHashMap<>();
    private final Map<Integer, Double> voltsOfPanel = new HashMap<>();
    private final Map<String, List<Load>> boundBelow = new HashMap<>();
    private final Map<List<Object>, List<Board>> boardsOfAlike = new HashMap<>();

    Candidates(ProjectParts parts) {
        this.parts = parts;
        panels = parts.project.panels();
        anySlot = new Boolean[panels.size()][2 * Phase.values().length + 2];
        for (Panel panel : panels) {
            panelIndex.putIfAbsent(panel.id(), layouts.size());
            layouts.add(new SlotLayout(panel, parts.systemOf(panel)));
            reserved.add(new HashSet<>(panel.reservedSlots()));
            switchable.add(panel.switchedSlots().map(HashSet::new).orElse(null));
            fixedOwners.add(new HashMap<>());
        }
        parts.project.boards().forEach(board -> reachable.or(reach(board)));
        if (parts.project.boards().isEmpty()) {
            reachable.or(all()); // that there are no boards is said once
        }
        parts.project.loads().forEach(this::noteFixedSlots);
        for (Load load : parts.project.loads()) {
            BitSet fits = stated(load);
            for (int p = fits.nextSetBit(0); p >= 0; p = fits.nextSetBit(p + 1)) {
                if (!whyNot(load, p).isEmpty()) {
                    fits.clear(p);
                }
            }
            if (ofLoad.putIfAbsent(load.id(), fits) == null && !fits.isEmpty()) {
                placeable.add(load);
                if (fits.cardinality() == 1) {
                    bound.computeIfAbsent(fits.nextSetBit(0), key -> new ArrayList<>())
                            .add(load);
                }
            }
        }
    }

    /** Panels that {@code panels} and {@code fixed} allow. */
    BitSet stated(Load load) {
        BitSet stated = load.panels().isEmpty() ? all() : indexes(load.panels());
        load.fixed().panel().ifPresent(id -> stated.and(indexes(List.of(id))));
        return stated;
    }

    /** Why a load fits nowhere in a panel, in a few words; empty where it fits. */
    String whyNot(Load load, int panelAt) {
        Panel panel = panels.get(panelAt);
        double rated = panel.continuousAmpsUnder(parts.project.supply());
        if (load.switched() && !reachOf(load).get(panelAt)) {
            return load.fixed().board().isPresent() ? "its board does not reach it" : "no board reaches it";
        }
        double stated = load.lineToNeutralVolts().orElse(0);
        double volts = stated == 0 ? 0 : volts(panelAt, stated);
        if (Math.abs(volts - stated) > VOLTAGE_WITHIN * stated) {
            return "it has " + Decimals.toThousandths(volts) + " V to neutral, the load is made for "
                    + Decimals.toThousandths(stated) + " V";
        }
        if (parts.project.scenes().isEmpty() && load.runningAmps() > rated + AMPS_TOLERANCE) {
            return "it may carry " + Decimals.toThousandths(rated, load.runningAmps()) + " A a phase, the load draws "
                    + Decimals.toThousandths(load.runningAmps(), rated) + " A";
        }
        if (panel.inrushLimitAmps().isPresent()
                && peakAmps(load) > panel.inrushLimitAmps().getAsDouble() + AMPS_TOLERANCE) {
            return "its inrush limit is "
                    + Decimals.toThousandths(panel.inrushLimitAmps().getAsDouble(), peakAmps(load))
                    + " A, the load peaks at "
                    + Decimals.toThousandths(
                            peakAmps(load), panel.inrushLimitAmps().getAsDouble()) + " A";
        }
        boolean slot = load.fixed().slot().isPresent()
                ? takes(load, panelAt, load.fixed().slot().getAsInt(), false)
                : anySlotTakes(load, panelAt);
        return slot
                ? ""
                : load.fixed().slot().isPresent() ? "the fixed slot does not take it" : "no slot there takes it";
    }

    /** Greatest instantaneous current of the load alone. */
    static double peakAmps(Load load) {
        return load.switched() ? Math.max(load.baseAmps(), load.inrushAmps()) : load.baseAmps();
    }

    /** Panels that a board reaches. */
    BitSet reach(Board board) {
        return (BitSet) reachOf(board).clone();
    }

    /** Whether a board reaches one of these panels. */
    boolean reaches(Board board, BitSet some) {
        return reachOf(board).intersects(some);
    }

    private BitSet reachOf(Board board) {
        return reached.computeIfAbsent(board, it -> indexes(it.reaches()));
    }

    /**
     * Boards that could switch a load: those that reach one of its candidate panels, have its output, and are not ruled out.
     * Loads that ask for the same get the very same list.
     */
    List<Board> boardsFor(Load load) {
        BitSet fits = ofLoad.get(load.id());
        List<Object> asked = List.of(fits, load.fixed(), load.system(), load.offAfterSeconds() > 0);
        return boardsOfAlike.computeIfAbsent(
                asked,
                any -> parts.project.boards().stream()
                        .filter(board -> mayFeed(board, load) && reaches(board, fits))
                        .toList());
    }

    /** Whether what is fixed of a load, its system and its off delay leave a board possible. */
    boolean mayFeed(Board board, Load load) {
        BoardType type = parts.types.get(board.type());
        boolean servesAnother = load.system().isPresent()
                && board.system().isPresent()
                && !board.system().equals(load.system());
        boolean isTooSoon = load.offAfterSeconds() > 0 && type != null && type.off() == OffTiming.MIRROR;
        return !servesAnother
                && !isTooSoon
                && load.fixed().board().map(board.id()::equals).orElse(true)
                && load.fixed().output().orElse(1) <= parts.outputs(board);
    }

    /** Loads with at least one candidate panel: the others are reported once and count no more. */
    List<Load> placeable() {
        return placeable;
    }

    /** Loads that can sit in no other panel. */
    List<Load> bound(int panelAt) {
        return bound.getOrDefault(panelAt, List.of());
    }

    /** All loads where nothing but the supply and panels is there; else those that it must carry as they are. */
    List<Load> belowSupply() {
        boolean isStar = parts.project.nodes().isEmpty()
                && panels.stream().allMatch(panel -> panel.fedFrom().isEmpty());
        return isStar ? List.copyOf(parts.loads.values()) : boundBelow(ProjectParts.SUPPLY);
    }

    /**
     * Loads that can sit nowhere but where a point carries their current as it is.
     *
     * @param point a panel, a node or the supply
     */
    List<Load> boundBelow(String point) {
        if (boundBelow.isEmpty()) {
            noteBound();
        }
        return boundBelow.getOrDefault(point, List.of());
    }

    /** What carries a load wherever it sits carries it in the first panel that it could sit in. */
    private void noteBound() {
        Map<String, BitSet> below = new HashMap<>();
        for (int p = 0; p < panels.size(); p++) {
            for (String carrier : parts.carriersOf(panels.get(p))) {
                below.computeIfAbsent(carrier, key -> new BitSet()).set(p);
            }
        }
        for (Load load : placeable) {
            BitSet fits = ofLoad.get(load.id());
            for (String carrier : parts.carriersOf(panels.get(fits.nextSetBit(0)))) {
                BitSet outside = (BitSet) fits.clone();
                outside.andNot(below.get(carrier));
                if (outside.isEmpty()) {
                    boundBelow
                            .computeIfAbsent(carrier, key -> new ArrayList<>())
                            .add(load);
                }
            }
        }
    }

    /**
     * Slots of a panel that take any breaker, or only those that take a switched one, less what of them is to stay free.
     */
    int slots(int panelAt, boolean forSwitched) {
        int count = 0;
        for (int slot = 1; slot <= panels.get(panelAt).slots(); slot++) {
            count += isUsable(panelAt, slot, forSwitched) ? 1 : 0;
        }
        Optional<Spare> spare = parts.project.spareIn(panels.get(panelAt));
        int free = spare.map(it -> forSwitched
                        ? it.switchedSlots()
                        : Math.max(Math.max(it.slots(), it.switchedSlots()), it.fits() * it.poles()))
                .orElse(0);
        return Math.max(0, count - free);
    }

    String names(BitSet set) {
        return Shown.quoted(set.stream().mapToObj(p -> panels.get(p).id()).toList());
    }

    /** Of a panel to neutral; {@code unsure} where that is not sure. */
    private double volts(int panelAt, double unsure) {
        return voltsOfPanel.computeIfAbsent(
                panelAt,
                at -> parts.linesOf(panels.get(at).fedFrom())
                        .map(ProjectParts.Lines::lineToNeutralVolts)
                        .orElse(unsure));
    }

    private BitSet reachOf(Load load) {
        return load.fixed().board().isEmpty()
                ? reachable
                : load.fixed().board().map(parts.boards::get).map(this::reach).orElseGet(this::all);
    }

    private boolean anySlotTakes(Load load, int panelAt) {
        int kind = 2 * load.poles() + (ProjectParts.needsSwitchedBreaker(load) ? 1 : 0);
        if (anySlot[panelAt][kind] == null) {
            anySlot[panelAt][kind] = IntStream.rangeClosed(
                            1, panels.get(panelAt).slots())
                    .anyMatch(slot -> takes(load, panelAt, slot, true));
        }
        return anySlot[panelAt][kind];
    }

    /** Fixed slots of other loads are taken only for a load whose own slot is free; where both are fixed it is an error. */
    private boolean takes(Load load, int panelAt, int slot, boolean heedFixed) {
        SlotLayout layout = layouts.get(panelAt);
        Set<Phase> phases = new HashSet<>();
        List<Integer> span = layout.span(slot, load.poles());
        for (int s : span) {
            boolean taken = heedFixed && fixedOwners.get(panelAt).containsKey(s);
            if (taken
                    || !isUsable(panelAt, s, ProjectParts.needsSwitchedBreaker(load))
                    || !phases.add(layout.phase(s))) {
                return false;
            }
        }
        return !span.isEmpty();
    }

    private boolean isUsable(int panelAt, int slot, boolean forSwitched) {
        Set<Integer> only = switchable.get(panelAt);
        return !reserved.get(panelAt).contains(slot) && (!forSwitched || only == null || only.contains(slot));
    }

    private void noteFixedSlots(Load load) {
        BitSet stated = stated(load);
        if (load.fixed().slot().isPresent() && stated.cardinality() == 1) {
            int panelAt = stated.nextSetBit(0);
            layouts.get(panelAt)
                    .span(load.fixed().slot().getAsInt(), load.poles())
                    .forEach(slot -> fixedOwners.get(panelAt).putIfAbsent(slot, load.id()));
        }
    }

    private BitSet all() {
        BitSet all = new BitSet();
        all.set(0, panels.size());
        return all;
    }

    private BitSet indexes(List<String> ids) {
        BitSet set = new BitSet();
        for (String id : ids) {
            Integer at = panelIndex.get(id);
            if (at != null) {
                set.set(at);
            }
        }
        return set;
    }
}
