package evenrise.solver.document;

import evenrise.model.rules.Distribution;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeLoads.Seen;
import evenrise.model.rules.NodeStart;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * One load coming on.
 *
 * @param envelopeAmps the supply's current by the envelopes at nominal voltage right then, by phase in the system's order;
 *     where systems have clocks of their own, with the others at their worst
 */
public record SwitchOn(PlannedCircuit circuit, List<Double> envelopeAmps) {
    /** In order, system by system where these have clocks of their own. */
    static List<SwitchOn> of(Layout layout) {
        return layout.starts(Distribution.SUPPLY).stream()
                .flatMap(start -> of(layout, start).stream())
                .toList();
    }

    private static List<SwitchOn> of(Layout layout, NodeStart start) {
        List<Placement> inOrder = layout.placements().stream()
                .filter(Placement::isSequenced)
                .filter(each -> start.system().isEmpty() || each.load().system().equals(start.system()))
                .sorted(Comparator.comparingDouble(
                                (Placement each) -> each.onSeconds().getAsDouble())
                        .thenComparing(
                                each -> each.board().map(board -> board.id()).orElse(""))
                        .thenComparing(each -> each.assignment().output().orElse(0)))
                .toList();
        double tolerance = layout.project().timingToleranceSeconds();
        double[] instants = inOrder.stream()
                .mapToDouble(each -> each.onSeconds().getAsDouble() - tolerance)
                .toArray();
        List<Seen> fed = Envelopes.switchedBy(layout, Distribution.SUPPLY, start.system());
        List<double[]> amps = new ArrayList<>();
        start.restAmps()
                .forEach((phase, rest) -> amps.add(Arrays.stream(EnvelopeSum.amps(fed, phase, tolerance, instants))
                        .map(each -> rest + each)
                        .toArray()));
        return IntStream.range(0, instants.length)
                .mapToObj(i -> new SwitchOn(
                        PlannedCircuit.of(layout, inOrder.get(i)),
                        amps.stream().map(phase -> phase[i]).toList()))
                .toList();
    }

    /** From the command to switch on. */
    public double onSeconds() {
        return circuit.onSeconds().orElseThrow();
    }
}
