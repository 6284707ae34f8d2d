package evenrise.model.nodal;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.Phasor;
import org.junit.jupiter.api.Test;

/** The yardstick itself against circuits that a pencil solves. */
class CircuitTest {
    private final Circuit circuit = new Circuit();

    @Test
    void dividesAVoltage() {
        int top = circuit.node();
        int middle = circuit.node();
        circuit.source(0, top, new Phasor(120, 0), new Impedance(1e-9, 0));
        int upper = circuit.impedance(top, middle, new Impedance(3, 0));
        circuit.impedance(middle, 0, new Impedance(0, 4));

        circuit.solve();

        // 120 V on 3 + j4 Ω: 24 A, 53.13° late; j4 Ω of it: 96 V
        assertThat(circuit.amps(upper).length()).isCloseTo(24, within(1e-6));
        assertThat(Math.toDegrees(circuit.amps(upper).angleRadians())).isCloseTo(-53.1301, within(1e-3));
        assertThat(circuit.volts(middle).length()).isCloseTo(96, within(1e-6));
    }

    @Test
    void letsAKnownCurrentFlowWhateverTheVoltage() {
        int bus = circuit.node();
        int line = circuit.source(0, bus, new Phasor(120, 0), new Impedance(0.1, 0.2));
        circuit.current(bus, 0, new Phasor(10, -5));

        circuit.solve();

        // 120 − (10 − j5)(0.1 + j0.2) = 120 − (2 + j1.5)
        assertThat(circuit.volts(bus).real()).isCloseTo(118, within(1e-9));
        assertThat(circuit.volts(bus).imaginary()).isCloseTo(-1.5, within(1e-9));
        assertThat(circuit.amps(line).imaginary()).isCloseTo(-5, within(1e-9));
    }
}
