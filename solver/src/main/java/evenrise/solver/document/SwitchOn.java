package evenrise.solver.document;

import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * One load coming on.
 *
 * @param envelopeAmps the supply's envelopes at nominal voltage right then, by phase in the system's order
 */
public record SwitchOn(PlannedCircuit circuit, List<Double> envelopeAmps) {
    /** In order. */
    static List<SwitchOn> of(Layout layout) {
        List<Placement> inOrder = layout.placements().stream()
                .filter(Placement::isSequenced)
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
        List<Placement> fed =
                layout.placements().stream().filter(Placement::fits).toList();
        List<Phase> phases = layout.project().supply().system().phases();
        List<double[]> amps = phases.stream()
                .map(phase -> EnvelopeSum.amps(fed, phase, tolerance, instants))
                .toList();
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
