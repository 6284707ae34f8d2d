package evenrise.model.rules;

import evenrise.model.electrical.Draw;
import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.electrical.TransformerDraw;
import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution.Point;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;

/** What each load of a plan is at each node of the distribution: as it is, or as transformers pass it on. */
public final class NodeLoads {
    private static final int PHASES = Phase.values().length;

    private final List<List<Placement>> direct = new ArrayList<>();
    private final List<List<Seen>> seen = new ArrayList<>();
    private final List<List<Returned>> returning = new ArrayList<>();

    /**
     * A load as a node sees it.
     *
     * @param parts how much of the envelope of one of its poles is on each phase, by the phase's place
     */
    public record Seen(Placement placement, double[] parts) {

        /** What it asks of the node: one draw for all phases with the same part. */
        List<Draw> draws(InrushEnvelope envelope) {
            List<Draw> draws = new ArrayList<>();
            List<Phase> open = new ArrayList<>();
            for (Phase phase : Phase.values()) {
                if (parts[phase.ordinal()] > 0) {
                    open.add(phase);
                }
            }
            while (!open.isEmpty()) {
                double part = parts[open.get(0).ordinal()];
                List<Phase> alike = open.stream()
                        .filter(each -> parts[each.ordinal()] == part)
                        .toList();
                open.removeAll(alike);
                draws.add(new Draw(part == 1 ? envelope : envelope.times(part), alike, placement.onSeconds()));
            }
            return draws;
        }
    }

    /**
     * What of a load returns by the neutral of a node, as of a one-pole load.
     *
     * @param part of its current
     */
    public record Returned(Placement placement, Phase phase, double part) {}

    NodeLoads(Layout layout) {
        Distribution distribution = layout.distribution();
        List<Point> points = distribution.points();
        points.forEach(any -> {
            direct.add(new ArrayList<>());
            seen.add(new ArrayList<>());
            returning.add(new ArrayList<>());
        });
        for (Placement each : layout.placements()) {
            if (each.fits()) {
                int panel = distribution.of(each.panel().orElseThrow()).index();
                distribution.onward(panel).forEach(at -> direct.get(at).add(each));
            }
        }
        int[] topDown = distribution.topDown();
        for (int i = topDown.length - 1; i >= 0; i--) {
            int at = topDown[i];
            direct.get(at).forEach(each -> land(each, at));
            for (int below : distribution.transformersAt(at)) {
                pass(points.get(below).transformer().orElseThrow(), below, at);
            }
        }
    }

    /** Loads at the node's own voltage, not behind a transformer that it feeds; in the plan's order. */
    public List<Placement> direct(int node) {
        return direct.get(node);
    }

    /** All loads that the node feeds: first those at its own voltage, in the plan's order. */
    public List<Seen> seen(int node) {
        return seen.get(node);
    }

    /** What returns by its neutral. */
    public List<Returned> returning(int node) {
        return returning.get(node);
    }

    /** What all loads of the node ask of it. */
    List<Draw> draws(int node, Function<Placement, InrushEnvelope> envelope) {
        List<Draw> draws = new ArrayList<>();
        seen.get(node).forEach(each -> draws.addAll(each.draws(envelope.apply(each.placement()))));
        return draws;
    }

    private void land(Placement placement, int at) {
        double[] parts = new double[PHASES];
        placement.phases().forEach(phase -> parts[phase.ordinal()] = 1);
        seen.get(at).add(new Seen(placement, parts));
        if (placement.load().poles() == 1) {
            returning.get(at).add(new Returned(placement, placement.phases().get(0), 1));
        }
    }

    private void pass(TransformerDraw transformer, int from, int to) {
        List<Seen> passed = seen.get(from).stream()
                .map(each -> new Seen(each.placement(), transformer.envelope(each.parts())))
                .toList();
        seen.get(to).addAll(passed);
        if (transformer.passesNeutralOn()) {
            returning
                    .get(from)
                    .forEach(each -> returning
                            .get(to)
                            .add(new Returned(each.placement(), each.phase(), transformer.ratio() * each.part())));
        }
        if (transformer.returnsByNeutral()) {
            Phase phase = transformer.primaryPhases().get(0);
            passed.forEach(each ->
                    returning.get(to).add(new Returned(each.placement(), phase, each.parts()[phase.ordinal()])));
        }
    }
}
