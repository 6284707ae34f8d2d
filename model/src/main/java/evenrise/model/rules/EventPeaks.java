package evenrise.model.rules;

import evenrise.model.electrical.Draw;
import evenrise.model.electrical.FullUse;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.electrical.PeakInrush;
import evenrise.model.plan.EventPeak;
import evenrise.model.project.Behaviour;
import evenrise.model.project.Board;
import evenrise.model.project.DeadBoard;
import evenrise.model.project.DeadContacts;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PlanEvent;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.function.Predicate;

/**
 * What a node peaks at, at most, when the mains return, when an emergency is released, when the worst single board fails
 * and when a deep dip is ridden through: figures of the plan alone, each from a state of rest in which the show runs. What
 * is on draws what it does in full use, what comes on its envelope. docs/events.md has the argument for each. A switched
 * load without an output never comes on and counts nowhere.
 *
 * <p>Time, for each node: loads, and for each board the square of its loads there; the release is as dear as a peak.
 */
final class EventPeaks {
    private final Layout layout;
    private final Behaviour behaviour;
    private final List<Phase> phases;
    private final double toleranceSeconds;
    private final Map<String, Set<String>> chains = new HashMap<>();
    private final boolean hasDrops;

    EventPeaks(Layout layout) {
        this.layout = layout;
        this.behaviour = layout.project().behaviourOrDefault();
        this.phases = layout.project().supply().system().phases();
        this.toleranceSeconds = layout.project().timingToleranceSeconds();
        this.hasDrops = layout.project().loads().stream()
                .anyMatch(each -> each.switched() && layout.index().drops(each));
        layout.project().boards().forEach(board -> chains.put(board.id(), new HashSet<>(Set.of(board.id()))));
        layout.project().boards().forEach(this::joinChains);
    }

    /** As {@link Layout#nodes()}; the peaks of a node in the order of {@link PlanEvent}. */
    List<List<EventPeak>> ofAllNodes() {
        List<List<EventPeak>> all = new ArrayList<>();
        all.add(of(
                layout.nodes().get(0),
                layout.placements().stream().filter(Placement::fits).toList()));
        for (Panel panel : layout.project().panels()) {
            all.add(of(layout.nodes().get(all.size()), layout.in(panel)));
        }
        return List.copyOf(all);
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

    private List<EventPeak> of(NodeFigures node, List<Placement> fed) {
        List<Placement> live = fed.stream()
                .filter(each -> each.isSequenced() || !each.load().switched())
                .toList();
        double[] normal = new double[Phase.values().length];
        node.peaks().forEach(peak -> normal[peak.phase().ordinal()] = peak.amps());
        List<EventPeak> peaks = new ArrayList<>();
        peaks.add(returning(live, normal));
        if (hasDrops) {
            peaks.add(release(live));
        }
        if (!layout.project().boards().isEmpty()) {
            peaks.add(boardFailure(live, normal));
        }
        peaks.add(worst(PlanEvent.DIP, Optional.empty(), sum(live, EventPeaks::anewAmps)));
        return List.copyOf(peaks);
    }

    /** Unswitched loads at once; then the sequence, with those in use and what is left of their excess after the wait. */
    private EventPeak returning(List<Placement> live, double[] normal) {
        List<Placement> always = unswitched(live);
        return worst(PlanEvent.RETURN, Optional.empty(), larger(atOnce(always), later(always, normal)));
    }

    private double[] atOnce(List<Placement> always) {
        return sum(
                always,
                each -> useAmps(each) + (staysOff(each) ? 0 : envelope(each).excessAmps()));
    }

    private double[] later(List<Placement> always, double[] normal) {
        return added(normal, sum(always, each -> useAmps(each) - baseAmps(each) + excessAfterWaitAmps(each)));
    }

    /** What drops comes on as in the sequence, onto all that holds, in use. */
    private EventPeak release(List<Placement> live) {
        List<Placement> dropped =
                live.stream().filter(each -> each.isSequenced() && drops(each)).toList();
        double[] held = added(sum(live, EventPeaks::useAmps), negative(sum(dropped, EventPeaks::useAmps)));
        List<Placement> back = dropped.stream().filter(each -> !staysOff(each)).toList();
        return worst(PlanEvent.RELEASE, Optional.empty(), added(held, sequence(back)));
    }

    /** Never below the return, which is what a board without loads here leaves, nor below all in use, as it fails. */
    private EventPeak boardFailure(List<Placement> live, double[] normal) {
        List<Placement> always = unswitched(live);
        double[] atOnce = atOnce(always);
        double[] later = later(always, normal);
        double[] inUse = sum(live, EventPeaks::useAmps);
        double[] anyhow = larger(added(inUse, waited(live)), larger(atOnce, later));
        EventPeak worst = worst(PlanEvent.BOARD_FAILURE, Optional.empty(), anyhow);
        Map<String, List<Placement>> byBoard = new HashMap<>();
        live.stream()
                .filter(Placement::isSequenced)
                .forEach(each -> byBoard.computeIfAbsent(Say.boardOf(each), any -> new ArrayList<>())
                        .add(each));
        for (Board board : layout.project().boards()) {
            double[] amps = new double[Phase.values().length];
            List<Placement> here = byBoard.getOrDefault(board.id(), List.of());
            if (behaviour.deadContacts() == DeadContacts.STAY && !here.isEmpty()) {
                amps = larger(amps, added(atOnce, atOnce(here)));
                amps = larger(amps, added(later, sum(here, each -> useAmps(each) + excessAfterWaitAmps(each))));
            }
            List<Placement> chain = chains.get(board.id()).stream()
                    .flatMap(each -> byBoard.getOrDefault(each, List.of()).stream())
                    .toList();
            double[] others = added(inUse, negative(sum(chain, EventPeaks::useAmps)));
            amps = larger(amps, added(others, sequence(chain)));
            EventPeak peak = worst(PlanEvent.BOARD_FAILURE, Optional.of(board.id()), amps);
            worst = peak.peakInrushAmps() > worst.peakInrushAmps() ? peak : worst;
        }
        return worst;
    }

    /**
     * Inrush that may come beside all that is in use when a board works again: where the others stop, what needs its loads
     * has waited and comes on with them, whichever it is. In which case each load is counted in use throughout.
     */
    private double[] waited(List<Placement> live) {
        if (behaviour.deadBoard() == DeadBoard.CARRY_ON) {
            return new double[Phase.values().length];
        }
        return perPhase(PeakInrush.of(live.stream()
                .filter(Placement::isSequenced)
                .map(each -> new Draw(
                        envelope(each).excessAlone(),
                        each.phases().stream().distinct().toList(),
                        each.onSeconds()))
                .toList()));
    }

    /** What these peak at if they come on as in the sequence, alone. */
    private double[] sequence(List<Placement> some) {
        return perPhase(PeakInrush.of(
                some.stream().map(each -> draw(each, each.onSeconds())).toList()));
    }

    /** A motor of which the project states that it stays off until somebody asks, after the mains and an emergency. */
    private boolean staysOff(Placement placement) {
        return behaviour.motorsStayOff() && placement.load().isMotor();
    }

    private boolean drops(Placement placement) {
        return layout.index().drops(placement.load());
    }

    private static List<Placement> unswitched(List<Placement> live) {
        Predicate<Placement> isSequenced = Placement::isSequenced;
        return live.stream().filter(isSequenced.negate()).toList();
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
        return staysOff(placement)
                ? 0
                : envelope(placement).excessLeftAmps(Math.max(0, behaviour.steadyWaitSeconds() - toleranceSeconds));
    }

    private InrushEnvelope envelope(Placement placement) {
        return InrushEnvelope.of(placement.load(), toleranceSeconds);
    }

    private Draw draw(Placement placement, OptionalDouble onSeconds) {
        return new Draw(
                envelope(placement), placement.phases().stream().distinct().toList(), onSeconds);
    }

    private interface Amps {
        double of(Placement placement);
    }

    private static double[] sum(List<Placement> placements, Amps amps) {
        double[] sums = new double[Phase.values().length];
        for (Placement each : placements) {
            double value = amps.of(each);
            each.phases().stream().distinct().forEach(phase -> sums[phase.ordinal()] += value);
        }
        return sums;
    }

    private double[] perPhase(PeakInrush inrush) {
        double[] amps = new double[Phase.values().length];
        phases.forEach(phase -> amps[phase.ordinal()] = inrush.amps(phase));
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

    private EventPeak worst(PlanEvent event, Optional<String> board, double[] amps) {
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
