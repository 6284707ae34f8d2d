package evenrise.model.rules;

import evenrise.model.electrical.FullUse;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.electrical.PeakInrush;
import evenrise.model.plan.EventPeak;
import evenrise.model.project.Behaviour;
import evenrise.model.project.Board;
import evenrise.model.project.DeadBoard;
import evenrise.model.project.DeadContacts;
import evenrise.model.project.Overlap;
import evenrise.model.project.Phase;
import evenrise.model.project.PlanEvent;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.NodeLoads.Seen;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/**
 * What a node peaks at, at most, when the mains return, when an emergency is released, when the worst single board fails
 * and when a deep dip is ridden through: figures of the plan alone, each from a state of rest in which the show runs. What
 * is on draws what it does in full use, what comes on its envelope, as the node sees them through transformers, which draw
 * their own inrush when energised. docs/events.md has the argument for each. A switched load without an output never comes
 * on and counts nowhere.
 *
 * <p>Time, for each node: loads, and for each board the square of its loads there; the release is as dear as a peak.
 */
final class EventPeaks {
    private final Layout layout;
    private final Behaviour behaviour;
    private final double toleranceSeconds;
    private final Map<String, Set<String>> chains = new HashMap<>();
    private final boolean hasDrops;
    private final boolean hasClocks;
    private final Energising energising;
    /** The source that feeds each board itself in the end. */
    private final Map<String, Integer> boardRoots = new HashMap<>();

    EventPeaks(Layout layout) {
        this.layout = layout;
        this.behaviour = layout.project().behaviourOrDefault();
        this.toleranceSeconds = layout.project().timingToleranceSeconds();
        this.hasClocks = layout.project().hasClocks();
        this.energising = Energising.of(layout.distribution());
        this.hasDrops = layout.project().loads().stream()
                .anyMatch(each -> each.switched() && layout.index().drops(each));
        layout.project().boards().forEach(board -> chains.put(board.id(), new HashSet<>(Set.of(board.id()))));
        layout.project().boards().forEach(this::joinChains);
        layout.project().boards().forEach(board -> boardRoots.put(board.id(), root(board)));
    }

    private int root(Board board) {
        Distribution distribution = layout.distribution();
        String fedBy = board.fedBy().orElse(board.panel());
        return distribution.points().stream()
                .filter(each -> each.id().equals(fedBy))
                .findFirst()
                .or(() -> layout.placement(fedBy)
                        .flatMap(Placement::panel)
                        .or(() -> layout.index().panel(board.panel()))
                        .map(distribution::of))
                .map(each -> distribution.root(each.index()))
                .orElse(Distribution.SUPPLY);
    }

    /** As {@link Layout#nodes()}; the peaks of a node in the order of {@link PlanEvent}. */
    List<List<EventPeak>> ofAllNodes() {
        return layout.distribution().points().stream().map(this::of).toList();
    }

    /** A board is in the chain of each board that starts it, directly or by others. */
    private void joinChains(Board board) {
        Set<String> seen = new HashSet<>();
        for (Optional<String> head = board.after(); head.isPresent() && seen.add(head.get()); ) {
            Set<String> chain = chains.get(head.get());
            if (chain == null) {
                return;
            }
            chain.add(board.id());
            head = layout.index().board(head.get()).flatMap(Board::after);
        }
    }

    /**
     * What one node sees.
     *
     * @param live loads that are on at all
     * @param staying of these, switched ones whose board is fed from another source, and does not see this one fail
     * @param dropping of these, for each other source, those whose board is fed from that one
     * @param normal the peak of the sequence
     * @param energising what its transformers draw when they are energised, and after the wait
     */
    private record Seeing(
            List<Seen> live,
            List<Seen> staying,
            List<List<Seen>> dropping,
            double[] normal,
            double[] energising,
            double[] energisingLater) {}

    private List<EventPeak> of(Point point) {
        List<Seen> live = layout.nodeLoads().seen(point.index()).stream()
                .filter(each -> each.placement().isSequenced()
                        || !each.placement().load().switched())
                .toList();
        double[] normal = new double[Phase.values().length];
        if (hasClocks) {
            normal = systemsFromRest(live);
        } else {
            for (PhasePeak peak : layout.nodes().get(point.index()).peaks()) {
                normal[peak.phase().ordinal()] = peak.amps();
            }
        }
        int root = layout.distribution().root(point.index());
        Map<Integer, List<Seen>> byRoot = new TreeMap<>();
        for (Seen each : live) {
            int its =
                    each.placement().isSequenced() ? boardRoots.getOrDefault(switching(each.placement()), root) : root;
            byRoot.computeIfAbsent(its, any -> new ArrayList<>()).add(each);
        }
        byRoot.remove(root);
        Seeing at = new Seeing(
                live,
                byRoot.values().stream().flatMap(List::stream).toList(),
                List.copyOf(byRoot.values()),
                normal,
                energising.amps(point.index(), 0),
                energising.amps(point.index(), waitSeconds()));
        List<Phase> phases = point.system().phases();
        List<EventPeak> peaks = new ArrayList<>();
        peaks.add(worst(phases, PlanEvent.RETURN, Optional.empty(), returning(at)));
        if (hasDrops) {
            peaks.add(worst(phases, PlanEvent.RELEASE, Optional.empty(), release(live)));
        }
        if (!layout.project().boards().isEmpty()) {
            peaks.add(boardFailure(phases, at));
        }
        double[] dip = added(sum(live, EventPeaks::anewAmps), at.energising());
        peaks.add(worst(phases, PlanEvent.DIP, Optional.empty(), dip));
        return List.copyOf(peaks);
    }

    private double waitSeconds() {
        return Math.max(0, behaviour.steadyWaitSeconds() - toleranceSeconds);
    }

    /** Unswitched loads at once; then the sequence, with those in use and what is left of their excess after the wait. */
    private double[] returning(Seeing at) {
        double[] amps = larger(atOnce(at), later(at));
        if (layout.distribution().points().stream().anyMatch(Point::isFurtherSource)) {
            amps = larger(
                    amps, sum(at.live(), EventPeaks::useAmps)); // another source returns, and nothing changes here
        }
        for (List<Seen> dropped : at.dropping()) { // or with it boards that switch loads here
            double[] others = added(sum(at.live(), EventPeaks::useAmps), negative(sum(dropped, EventPeaks::useAmps)));
            amps = larger(amps, added(others, comingBack(dropped)));
        }
        return amps;
    }

    private double[] atOnce(Seeing at) {
        return added(added(atOnce(unswitched(at.live())), atOnce(at.staying())), at.energising());
    }

    private double[] later(Seeing at) {
        double[] kept = added(
                added(at.normal(), at.energisingLater()),
                sum(at.staying(), each -> useAmps(each) + excessAfterWaitAmps(each)));
        return added(
                kept,
                sum(
                        unswitched(at.live()),
                        each -> (hasClocks ? 0 : useAmps(each) - baseAmps(each)) + excessAfterWaitAmps(each)));
    }

    private double[] atOnce(List<Seen> always) {
        return sum(
                always,
                each -> useAmps(each) + (staysOff(each) ? 0 : envelope(each).excessAmps()));
    }

    /** What drops comes on as in the sequence, onto all that holds, in use: released everywhere, or in one system alone. */
    private double[] release(List<Seen> live) {
        List<Seen> dropped = live.stream()
                .filter(each -> each.placement().isSequenced() && drops(each.placement()))
                .toList();
        double[] amps = released(live, dropped);
        Map<Optional<String>, List<Seen>> bySystem = new LinkedHashMap<>();
        dropped.forEach(each -> bySystem.computeIfAbsent(each.placement().load().system(), any -> new ArrayList<>())
                .add(each));
        if (layout.project().systems().size() > 1) {
            amps = larger(amps, sum(live, EventPeaks::useAmps)); // one of which nothing is fed from here
            for (List<Seen> each : bySystem.values()) {
                amps = larger(amps, released(live, each));
            }
        }
        return amps;
    }

    private double[] released(List<Seen> live, List<Seen> dropped) {
        double[] held = added(sum(live, EventPeaks::useAmps), negative(sum(dropped, EventPeaks::useAmps)));
        List<Seen> back =
                dropped.stream().filter(each -> !staysOff(each.placement())).toList();
        return added(held, comingBack(back));
    }

    /** Never below the return, which is what a board without loads here leaves, nor below all in use, as it fails. */
    private EventPeak boardFailure(List<Phase> phases, Seeing at) {
        List<Seen> live = at.live();
        double[] atOnce = atOnce(at);
        double[] later = later(at);
        double[] inUse = sum(live, EventPeaks::useAmps);
        double[] anyhow = larger(added(inUse, waited(live)), larger(atOnce, later));
        EventPeak worst = worst(phases, PlanEvent.BOARD_FAILURE, Optional.empty(), anyhow);
        Map<String, List<Seen>> byBoard = new HashMap<>();
        live.stream()
                .filter(each -> each.placement().isSequenced())
                .forEach(each -> byBoard.computeIfAbsent(switching(each.placement()), any -> new ArrayList<>())
                        .add(each));
        for (Board board : layout.project().boards()) {
            double[] amps = new double[Phase.values().length];
            List<Seen> here = byBoard.getOrDefault(board.id(), List.of());
            if (behaviour.deadContacts() == DeadContacts.STAY && !here.isEmpty()) {
                amps = larger(amps, added(atOnce, atOnce(here)));
                amps = larger(amps, added(later, sum(here, each -> useAmps(each) + excessAfterWaitAmps(each))));
            }
            List<Seen> chain = chains.get(board.id()).stream()
                    .flatMap(each -> byBoard.getOrDefault(each, List.of()).stream())
                    .toList();
            double[] others = added(inUse, negative(sum(chain, EventPeaks::useAmps)));
            amps = larger(amps, added(others, comingBack(chain)));
            EventPeak peak = worst(phases, PlanEvent.BOARD_FAILURE, Optional.of(board.id()), amps);
            worst = peak.peakInrushAmps() > worst.peakInrushAmps() ? peak : worst;
        }
        return worst;
    }

    /** The board that switches a load, or the contactor that it is behind. */
    private String switching(Placement placement) {
        return RuleWords.boardOf(
                placement.load().comesWith().flatMap(layout::placement).orElse(placement));
    }

    /**
     * Inrush that may come beside all that is in use when a board works again: where the others stop, what needs its loads
     * has waited and comes on with them, whichever it is. In which case each load is counted in use throughout.
     */
    private double[] waited(List<Seen> live) {
        double[] most = new double[Phase.values().length];
        if (behaviour.deadBoard() == DeadBoard.CARRY_ON) {
            return most;
        }
        for (List<Seen> system : bySystem(live)) {
            double[] amps = perPhase(PeakInrush.of(system.stream()
                    .filter(each -> each.placement().isSequenced())
                    .flatMap(each -> each.draws(envelope(each.placement()).excessAlone()).stream())
                    .toList()));
            most = layout.project().overlap() == Overlap.ANY ? added(most, amps) : larger(most, amps);
        }
        return most;
    }

    /** Those of each clock. */
    private Collection<List<Seen>> bySystem(List<Seen> some) {
        if (!hasClocks) {
            return List.of(some);
        }
        Map<Optional<String>, List<Seen>> parts = new LinkedHashMap<>();
        some.forEach(each -> parts.computeIfAbsent(each.placement().load().system(), any -> new ArrayList<>())
                .add(each));
        return parts.values();
    }

    /** What these peak at if they come on as in the sequence, alone; of several clocks each as the overlap lets it. */
    private double[] comingBack(List<Seen> some) {
        return hasClocks
                ? systemsFromRest(some)
                : perPhase(PeakInrush.of(some.stream()
                        .flatMap(each -> each.draws(envelope(each.placement())).stream())
                        .toList()));
    }

    /** The systems' starts, what does not start in full use, whatever the scenes. */
    private double[] systemsFromRest(List<Seen> some) {
        SystemPeaks peaks =
                new SystemPeaks(layout, some, load -> InrushEnvelope.of(load, toleranceSeconds), FullUse::amps);
        double[] amps = new double[Phase.values().length];
        for (Phase phase : Phase.values()) {
            amps[phase.ordinal()] = peaks.peak(phase).amps();
        }
        return layout.project().overlap() == Overlap.ONE_AT_A_TIME
                ? added(amps, sum(some, this::excessAfterAnotherAmps))
                : amps;
    }

    /** What is left of the excess of a system that has just come up when the next begins. */
    private double excessAfterAnotherAmps(Placement placement) {
        double seconds = Math.max(0, behaviour.betweenSystemsSeconds() - 2 * toleranceSeconds);
        return placement.isSequenced() ? envelope(placement).excessLeftAmps(seconds) : 0;
    }

    /** A motor of which the project states that it stays off until somebody asks, after the mains and an emergency. */
    private boolean staysOff(Placement placement) {
        return behaviour.motorsStayOff() && placement.load().isMotor();
    }

    private boolean drops(Placement placement) {
        return layout.index().drops(placement.load());
    }

    private static List<Seen> unswitched(List<Seen> live) {
        return live.stream().filter(each -> !each.placement().isSequenced()).toList();
    }

    private double baseAmps(Placement placement) {
        return envelope(placement).baseAmps();
    }

    /** What a load draws that is on, with the show running. */
    private static double useAmps(Placement placement) {
        return FullUse.amps(placement.load());
    }

    /** What it draws when its voltage returns after it has lost its charge: its inrush beside what it is used for. */
    private static double anewAmps(Placement placement) {
        return useAmps(placement) + InrushEnvelope.of(placement.load(), 0).excessAmps();
    }

    /** What is left of the excess when the first breaker of the sequence may close after the wait. */
    private double excessAfterWaitAmps(Placement placement) {
        return staysOff(placement) ? 0 : envelope(placement).excessLeftAmps(waitSeconds());
    }

    private InrushEnvelope envelope(Placement placement) {
        return InrushEnvelope.of(placement.load(), toleranceSeconds);
    }

    private interface Amps {
        double of(Placement placement);
    }

    private static double[] sum(List<Seen> some, Amps amps) {
        double[] sums = new double[Phase.values().length];
        for (Seen each : some) {
            double value = amps.of(each.placement());
            for (int phase = 0; phase < sums.length; phase++) {
                sums[phase] += each.parts()[phase] * value;
            }
        }
        return sums;
    }

    private static double[] perPhase(PeakInrush inrush) {
        double[] amps = new double[Phase.values().length];
        List.of(Phase.values()).forEach(phase -> amps[phase.ordinal()] = inrush.amps(phase));
        return amps;
    }

    private static double[] added(double[] some, double[] more) {
        double[] sums = some.clone();
        for (int i = 0; i < sums.length; i++) {
            sums[i] += more[i];
        }
        return sums;
    }

    private static double[] larger(double[] some, double[] more) {
        double[] kept = some.clone();
        for (int i = 0; i < kept.length; i++) {
            kept[i] = Math.max(kept[i], more[i]);
        }
        return kept;
    }

    private static double[] negative(double[] some) {
        double[] turned = some.clone();
        for (int i = 0; i < turned.length; i++) {
            turned[i] = -turned[i];
        }
        return turned;
    }

    private static EventPeak worst(List<Phase> phases, PlanEvent event, Optional<String> board, double[] amps) {
        Phase worst = phases.get(0);
        for (Phase phase : phases) {
            worst = amps[phase.ordinal()] > amps[worst.ordinal()] ? phase : worst;
        }
        return EventPeak.builder()
                .event(event)
                .peakInrushAmps(amps[worst.ordinal()])
                .peakPhase(worst)
                .board(board)
                .build();
    }
}
