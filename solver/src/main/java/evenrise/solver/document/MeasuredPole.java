package evenrise.solver.document;

import java.util.List;

/**
 * One pole of a circuit, to be measured.
 *
 * @param phase its letter; empty where the circuit's slots do not fit its panel
 */
public record MeasuredPole(PlannedCircuit circuit, String phase) {
    static List<MeasuredPole> of(PlannedCircuit circuit) {
        if (circuit.phases().isEmpty()) {
            return List.of(new MeasuredPole(circuit, ""));
        }
        return circuit.phases()
                .chars()
                .mapToObj(letter -> new MeasuredPole(circuit, String.valueOf((char) letter)))
                .toList();
    }

    public String load() {
        return circuit.load();
    }
}
