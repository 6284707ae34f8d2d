package evenrise.model.rules;

import evenrise.model.electrical.Phasor;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The circuit of a distribution with ideal transformers, winding by winding: a secondary winding has the voltage of its
 * primary one by the turns, and ampere-turns of the two are equal; what a line carries follows from the windings and loads
 * at its ends (Kirchhoff). It knows nothing of what the product makes of a connection.
 */
final class Windings {
    private static final int NEUTRAL = -1;

    /** A primary winding between two lines of what feeds it, or a line and neutral; turns are secondary over primary. */
    private record Winding(int from, int to, double turns, List<Integer> legs, List<Integer> signs) {}

    private final Project project;
    private final Map<String, DistributionNode> nodes = new HashMap<>();
    private final Map<String, Panel> panels = new HashMap<>();
    private final Map<String, Phasor[]> volts = new HashMap<>();

    Windings(Project project) {
        this.project = project;
        project.nodes().forEach(each -> nodes.put(each.id(), each));
        project.panels().forEach(each -> panels.put(each.id(), each));
    }

    /** Voltages of the lines of a point to neutral, all against phase A of the source at the top. */
    Phasor[] volts(String id) {
        if (!volts.containsKey(id)) {
            volts.put(id, solved(id));
        }
        return volts.get(id);
    }

    /** Currents of the lines of every point, for these currents of the poles of loads in panels. */
    Map<String, Phasor[]> lines(Map<String, Phasor[]> panelCurrents) {
        Map<String, Phasor[]> all = new HashMap<>();
        List<String> ids = new ArrayList<>(List.of("supply"));
        ids.addAll(panels.keySet());
        ids.addAll(nodes.keySet());
        ids.forEach(id -> all.put(id, zero()));
        panelCurrents.forEach((panel, currents) -> up(panel, currents, all));
        return all;
    }

    private void up(String id, Phasor[] currents, Map<String, Phasor[]> all) {
        Phasor[] at = all.get(id);
        for (int line = 0; line < 3; line++) {
            at[line] = at[line].plus(currents[line]);
        }
        if (isTop(id)) {
            return;
        }
        Phasor[] onward = currents;
        if (isTransformer(id)) {
            onward = zero();
            for (Winding each : windings(id)) {
                Phasor amps = Phasor.ZERO;
                for (int i = 0; i < each.legs().size(); i++) {
                    amps = amps.plus(currents[each.legs().get(i)].times(
                            each.turns() * each.signs().get(i)));
                }
                onward[each.from()] = onward[each.from()].plus(amps);
                if (each.to() != NEUTRAL) {
                    onward[each.to()] = onward[each.to()].plus(amps.times(-1));
                }
            }
        }
        up(above(id), onward, all);
    }

    private Phasor[] solved(String id) {
        if (isTop(id)) {
            boolean isSupply = id.equals("supply");
            double size = isSupply
                    ? project.supply().lineToNeutralVolts()
                    : nodes.get(id).source().orElseThrow().lineToNeutralVolts();
            return new Phasor[] {
                Phasor.polar(size, 0), Phasor.polar(size, -2 * Math.PI / 3), Phasor.polar(size, 2 * Math.PI / 3)
            };
        }
        Phasor[] above = volts(above(id));
        if (!isTransformer(id)) {
            return above;
        }
        Phasor[] below = zero();
        for (Winding each : windings(id)) {
            Phasor across =
                    each.to() == NEUTRAL ? above[each.from()] : above[each.from()].plus(above[each.to()].times(-1));
            for (int i = 0; i < each.legs().size(); i++) {
                below[each.legs().get(i)] =
                        across.times(each.turns() * each.signs().get(i));
            }
        }
        return below;
    }

    /** The secondary of phase a leads A by 30° where its winding lies from A to B, and lags where it lies from A to C. */
    private List<Winding> windings(String id) {
        Transformer transformer = nodes.get(id).transformer().orElseThrow();
        double wanted = transformer.secondary().lineToNeutralVolts();
        Phasor[] above = volts(above(id));
        List<Winding> windings = new ArrayList<>();
        if (transformer.connection() == TransformerConnection.SINGLE) {
            int from = transformer.primaryPhases().get(0).ordinal();
            int to = transformer.primaryPhases().size() > 1
                    ? transformer.primaryPhases().get(1).ordinal()
                    : NEUTRAL;
            windings.add(winding(
                    from,
                    to,
                    wanted,
                    above,
                    transformer.secondary().system().phases().size()));
            return windings;
        }
        for (int leg = 0; leg < 3; leg++) {
            int next = (leg + (transformer.shiftDegrees() > 0 ? 1 : 2)) % 3;
            int to = transformer.connection() == TransformerConnection.WYE_WYE ? NEUTRAL : next;
            double across = to == NEUTRAL
                    ? above[leg].length()
                    : above[leg].plus(above[to].times(-1)).length();
            windings.add(new Winding(leg, to, wanted / across, List.of(leg), List.of(1)));
        }
        return windings;
    }

    private static Winding winding(int from, int to, double wanted, Phasor[] above, int legs) {
        double across = to == NEUTRAL
                ? above[from].length()
                : above[from].plus(above[to].times(-1)).length();
        return new Winding(
                from,
                to,
                wanted / across,
                legs == 1 ? List.of(0) : List.of(0, 1),
                legs == 1 ? List.of(1) : List.of(1, -1));
    }

    private boolean isTop(String id) {
        return id.equals("supply")
                || nodes.containsKey(id) && nodes.get(id).source().isPresent();
    }

    private boolean isTransformer(String id) {
        return nodes.containsKey(id) && nodes.get(id).transformer().isPresent();
    }

    private String above(String id) {
        return (nodes.containsKey(id) ? nodes.get(id).fedFrom() : panels.get(id).fedFrom()).orElse("supply");
    }

    private static Phasor[] zero() {
        return new Phasor[] {Phasor.ZERO, Phasor.ZERO, Phasor.ZERO};
    }
}
