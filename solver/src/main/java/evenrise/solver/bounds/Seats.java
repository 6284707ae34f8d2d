package evenrise.solver.bounds;

import evenrise.model.electrical.TransformerDraw;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.SlotLayout;
import evenrise.model.project.SwitchedBy;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Distribution.Point;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * Where each load may sit, by panel and phases, and how much of it every node that carries it would see there. More is
 * allowed than by the rules, never less: nobody asks whether a slot is taken, or whether a board reaches it.
 */
public final class Seats {
    private static final double VOLTAGE_WITHIN = 0.05;
    private static final int PHASES = Phase.values().length;

    private final Project project;
    private final Distribution distribution;
    private final Map<String, List<Seat>> seats = new LinkedHashMap<>();

    /**
     * One way to sit.
     *
     * @param panel place of the panel among the project's
     * @param phases that its poles touch there
     * @param parts by place of the node among the distribution's points: how much of its envelope each phase there sees
     */
    public record Seat(int panel, Set<Phase> phases, Map<Integer, double[]> parts) {

        /** How much of it a phase of a node sees. */
        public double part(int node, Phase phase) {
            double[] own = parts.get(node);
            return own == null ? 0 : own[phase.ordinal()];
        }
    }

    /** Time: loads, panels, and how deep they are fed. */
    public Seats(Project project) {
        this.project = project;
        this.distribution = Distribution.of(project);
        Map<List<Object>, List<Seat>> alike = new HashMap<>();
        for (Load load : project.loads()) {
            boolean isSwitchedBreaker =
                    load.switched() && load.comesWith().isEmpty() && load.switchedBy() == SwitchedBy.BREAKER;
            List<Object> kind =
                    List.of(load.poles(), isSwitchedBreaker, load.panels(), load.fixed(), load.lineToNeutralVolts());
            seats.put(load.id(), alike.computeIfAbsent(kind, any -> seatsOf(load, isSwitchedBreaker)));
        }
        keepTogether();
    }

    /** What is behind one contactor sits in one panel, so in one that all of it may have. */
    private void keepTogether() {
        Map<String, Set<Integer>> common = new HashMap<>();
        for (Load load : project.loads()) {
            Set<Integer> panels = new HashSet<>();
            of(load).forEach(seat -> panels.add(seat.panel()));
            common.merge(load.comesWith().orElse(load.id()), panels, (one, other) -> {
                one.retainAll(other);
                return one;
            });
        }
        for (Load load : project.loads()) {
            Set<Integer> panels = common.get(load.comesWith().orElse(load.id()));
            seats.computeIfPresent(
                    load.id(),
                    (id, own) -> own.stream()
                            .filter(seat -> panels.contains(seat.panel()))
                            .toList());
        }
    }

    /** Ways to sit of a load; empty where it fits nowhere, and then no plan keeps every rule. */
    public List<Seat> of(Load load) {
        return seats.get(load.id());
    }

    public Distribution distribution() {
        return distribution;
    }

    /** Whether every way to sit of a load is seen by a node. */
    public boolean isCertainAt(Load load, int node) {
        return !of(load).isEmpty()
                && of(load).stream().allMatch(seat -> seat.parts().containsKey(node));
    }

    private List<Seat> seatsOf(Load load, boolean isSwitchedBreaker) {
        List<Seat> found = new ArrayList<>();
        for (int index = 0; index < project.panels().size(); index++) {
            Panel panel = project.panels().get(index);
            Point point = distribution.of(panel);
            if (mayHave(load, panel, point)) {
                for (Set<Phase> phases : phases(load, panel, point, isSwitchedBreaker)) {
                    found.add(new Seat(index, phases, parts(point, phases)));
                }
            }
        }
        return found;
    }

    private static boolean mayHave(Load load, Panel panel, Point point) {
        OptionalDouble stated = load.lineToNeutralVolts();
        boolean isVoltage = stated.isEmpty()
                || Math.abs(point.lineToNeutralVolts() - stated.getAsDouble()) <= VOLTAGE_WITHIN * stated.getAsDouble();
        return isVoltage && load.maySitIn(panel.id());
    }

    private static Set<Set<Phase>> phases(Load load, Panel panel, Point point, boolean isSwitchedBreaker) {
        SlotLayout layout = new SlotLayout(panel, point.system());
        Set<Set<Phase>> all = new LinkedHashSet<>();
        for (int slot = 1; slot <= panel.slots(); slot++) {
            List<Integer> span = layout.span(slot, load.poles());
            boolean suits =
                    !span.isEmpty() && load.fixed().slot().orElse(slot) == slot && panel.takes(span, isSwitchedBreaker);
            if (suits) {
                Set<Phase> touched = EnumSet.noneOf(Phase.class);
                span.forEach(each -> touched.add(layout.phase(each)));
                if (touched.size() == load.poles()) {
                    all.add(touched);
                }
            }
        }
        return all;
    }

    private Map<Integer, double[]> parts(Point panel, Set<Phase> phases) {
        Map<Integer, double[]> parts = new LinkedHashMap<>();
        double[] seen = new double[PHASES];
        phases.forEach(phase -> seen[phase.ordinal()] = 1);
        Point at = panel;
        while (true) {
            for (int node : distribution.onward(at.index())) {
                parts.put(node, seen.clone());
            }
            Point origin = distribution.points().get(at.origin());
            if (origin.transformer().isEmpty()) {
                return parts;
            }
            TransformerDraw draw = origin.transformer().get();
            System.arraycopy(draw.envelope(seen), 0, seen, 0, PHASES);
            at = distribution.points().get(origin.parent());
        }
    }
}
