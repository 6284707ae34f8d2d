package evenrise.model.rules;

import evenrise.model.electrical.Draw;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.electrical.PeakInrush;
import evenrise.model.plan.EventPeak;
import evenrise.model.project.Behaviour;
import evenrise.model.project.Board;
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
 * and when a deep dip is ridden through: figures of the plan alone, each from a state of rest. docs/events.md has the
 * argument for each. A switched load without an output never comes on and counts nowhere.
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
        peaks.add(worst(PlanEvent.DIP, Optional.empty(), sum(live, this::peakAmps)));
        return List.copyOf(peaks);
    }

    /** Unswitched loads at once; then the sequence, with what is left of their excess after the wait. */
    private EventPeak returning(List<Placement> live, double[] normal) {
        List<Placement> always = unswitched(live);
        double[] atOnce = sum(always, this::peakAmps);
        double[] later = sum(always, this::excessAfterWaitAmps);
        return worst(PlanEvent.RETURN, Optional.empty(), larger(atOnce, added(normal, later)));
    }

    /** What drops comes on as in the sequence, onto all that holds. */
    private EventPeak release(List<Placement> live) {
        List<Draw> draws = live.stream()
                .map(each -> draw(each, each.isSequenced() && drops(each) ? each.onSeconds() : OptionalDouble.empty()))
                .toList();
        PeakInrush inrush = PeakInrush.of(draws);
        return worst(PlanEvent.RELEASE, Optional.empty(), perPhase(inrush));
    }

    /** Never below the return, which is what a board without loads here leaves. */
    private EventPeak boardFailure(List<Placement> live, double[] normal) {
        List<Placement> always = unswitched(live);
        double[] atOnce = sum(always, this::peakAmps);
        double[] later = added(normal, sum(always, this::excessAfterWaitAmps));
        double[] bases = sum(live, this::baseAmps);
        EventPeak worst = worst(PlanEvent.BOARD_FAILURE, Optional.empty(), larger(atOnce, later));
        Map<String, List<Placement>> byBoard = new HashMap<>();
        live.stream()
                .filter(Placement::isSequenced)
                .forEach(each -> byBoard.computeIfAbsent(Say.boardOf(each), any -> new ArrayList<>())
                        .add(each));
        for (Board board : layout.project().boards()) {
            double[] amps = new double[Phase.values().length];
            List<Placement> here = byBoard.getOrDefault(board.id(), List.of());
            if (behaviour.deadContacts() == DeadContacts.STAY && !here.isEmpty()) {
                amps = larger(amps, added(atOnce, sum(here, this::peakAmps)));
                amps = larger(
                        amps, added(later, added(sum(here, this::baseAmps), sum(here, this::excessAfterWaitAmps))));
            }
            List<Placement> chain = chains.get(board.id()).stream()
                    .flatMap(each -> byBoard.getOrDefault(each, List.of()).stream())
                    .toList();
            if (!chain.isEmpty()) {
                PeakInrush inrush = PeakInrush.of(
                        chain.stream().map(each -> draw(each, each.onSeconds())).toList());
                double[] others = added(bases, negative(sum(chain, this::baseAmps)));
                amps = larger(amps, added(others, perPhase(inrush)));
            }
            EventPeak peak = worst(PlanEvent.BOARD_FAILURE, Optional.of(board.id()), amps);
            worst = peak.peakInrushAmps() > worst.peakInrushAmps() ? peak : worst;
        }
        return worst;
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

    private double peakAmps(Placement placement) {
        InrushEnvelope envelope = envelope(placement);
        return envelope.baseAmps() + envelope.excessAmps();
    }

    /** What is left of the excess when the first breaker of the sequence may close after the wait. */
    private double excessAfterWaitAmps(Placement placement) {
        return envelope(placement).excessLeftAmps(Math.max(0, behaviour.steadyWaitSeconds() - toleranceSeconds));
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
