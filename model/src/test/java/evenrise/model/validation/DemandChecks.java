package evenrise.model.validation;

import evenrise.model.electrical.AmplifierDemand;
import evenrise.model.electrical.LinePower;
import evenrise.model.electrical.LockedRotor;
import evenrise.model.electrical.Phasor;
import evenrise.model.electrical.SymmetricalComponents;
import evenrise.model.electrical.TriplenNeutral;
import evenrise.model.project.CodeLetter;
import evenrise.model.project.PhaseSystem;
import java.util.List;

/** Outside values of sequences, triplen neutrals, amplifiers, heat and motors. */
final class DemandChecks extends CheckList {
    private static final String BY_HAND = "computed by hand from the stated formula";
    private static final String SEQUENCES = "Symmetrical components";
    private static final String UNBALANCE = "Negative over positive sequence of line voltages, from their magnitudes";
    private static final String TRIPLEN = "Triplen neutral of a balanced circuit, both conventions";
    private static final String AMPLIFIERS = "Amplifiers: demand and heat";
    private static final String MOTORS = "Motors at standstill";
    private static final String GONEN =
            "T. Gönen, Electric Power Transmission System Engineering, 2nd ed., example 9.1, read in a published solution script";
    private static final String MANUAL = "manual of a touring amplifier, p. 13, tables of mains power and heat";
    private static final String LETTERS =
            "NEC table 430.7(B), read in secondary copies; " + BY_HAND + ": kVA/hp · hp · 1000/(√3·V)";

    static List<Check> all() {
        DemandChecks table = new DemandChecks();
        table.sequences();
        table.unbalance();
        table.triplen();
        table.amplifiers();
        table.motors();
        return List.copyOf(table.checks);
    }

    private void sequences() {
        SymmetricalComponents it = SymmetricalComponents.of(degrees(7.3, 12.5), degrees(0.4, -100), degrees(4.4, 154));
        String inputs = "7.3∠12.5°, 0.4∠−100°, 4.4∠154°";
        phasor("zero sequence", inputs, it.zero(), 1.47, 45.1);
        phasor("positive sequence", inputs, it.positive(), 3.97, 20.5);
        phasor("negative sequence", inputs, it.negative(), 2.52, -19.7);
    }

    /** A triangle of line voltages closes, so three magnitudes fix it. */
    private void unbalance() {
        unbalance(460, 467, 450, 2.146);
        unbalance(462, 463, 455, 1.091);
        unbalance(203, 210, 212, 2.606);
        unbalance(480, 476, 472, 0.970);
        unbalance(400, 400, 380, 3.363);
    }

    private void triplen() {
        number(
                TRIPLEN,
                "neutral, k of the line current",
                "39 A, k 0.40",
                46.8,
                5e-2,
                "A",
                39 * TriplenNeutral.ratioByLineCurrent(0.4),
                "worked example of IEC 60364-5-52 annex E; text from memory, arithmetic by hand");
        number(
                TRIPLEN,
                "neutral, k of the line current",
                "39 A, k 0.50",
                58.5,
                5e-2,
                "A",
                39 * TriplenNeutral.ratioByLineCurrent(0.5),
                "worked example of IEC 60364-5-52 annex E; text from memory, arithmetic by hand");
        number(
                TRIPLEN,
                "neutral, k of the line current",
                "25 A, k 0.44",
                33,
                5e-2,
                "A",
                25 * TriplenNeutral.ratioByLineCurrent(0.44),
                BY_HAND + ": 3·k·I; two pages take the line current here, which the table's rule forbids");
        number(
                TRIPLEN,
                "ceiling of rectifiers over line rms",
                "three disjoint pulses",
                1.732,
                5e-4,
                "",
                TriplenNeutral.RECTIFIER_CEILING_RATIO,
                "principle from memory; computed: squares of disjoint pulses add");
    }

    private void amplifiers() {
        heat("2 × 1500 W at 4 Ω, 1/3", 1440, 3000, AmplifierDemand.THIRD, 440, 1500);
        heat("2 × 1500 W at 4 Ω, 1/8", 685, 3000, AmplifierDemand.EIGHTH, 310, 1060);
        heat("2 × 1100 W at 8 Ω, 1/3", 1060, 2200, AmplifierDemand.THIRD, 327, 1116);
        heat("2 × 1700 W at 2 Ω, 1/3", 1720, 3400, AmplifierDemand.THIRD, 587, 2003);
        number(
                AMPLIFIERS,
                "headroom of 1/8",
                "10·log10(8)",
                9.03,
                5e-3,
                "dB",
                10 * Math.log10(1 / AmplifierDemand.EIGHTH),
                MANUAL + ": about 9 dB");
        number(
                AMPLIFIERS,
                "mains power, switching stage of 85 %",
                "1000 W out",
                1176,
                1,
                "W",
                AmplifierDemand.switchingWatts(1000, 1, 0, 0.85),
                "ohmicaudio.com: class D at 85 % draws 1176 W");
        number(
                AMPLIFIERS,
                "BTU per hour of a watt",
                "1 W",
                3.412142,
                1e-6,
                "BTU/h",
                LinePower.BTU_PER_HOUR_PER_WATT,
                "3600 s/h over 1055.056 J; printed in tables of conversion");
    }

    private void motors() {
        double threePhase208 = Math.sqrt(3) * 208;
        double threePhase460 = Math.sqrt(3) * 460;
        motor("10 hp, letter G, 208 V, lower end", 155.4, LockedRotor.amps(5.6, 10, threePhase208));
        motor("10 hp, letter G, 208 V, upper end", 174.6, greatest(CodeLetter.G, 10, threePhase208));
        motor("75 hp, letter G, 460 V, lower end", 527.1, LockedRotor.amps(5.6, 75, threePhase460));
        motor("75 hp, letter G, 460 V, upper end", 592.1, greatest(CodeLetter.G, 75, threePhase460));
        motor(
                "1 hp, letter L, 120 V, one phase, upper end",
                83.25,
                greatest(CodeLetter.L, 1, LinePower.voltAmpsPerAmp(PhaseSystem.SINGLE_PHASE, 1, 120)));
    }

    private static double greatest(CodeLetter letter, double horsepower, double voltAmpsPerAmp) {
        return LockedRotor.greatestAmps(letter, horsepower, voltAmpsPerAmp);
    }

    private void motor(String inputs, double expected, double ours) {
        number(MOTORS, "locked-rotor current", inputs, expected, 0.1, "A", ours, LETTERS);
    }

    private void heat(String inputs, double mains, double rated, double duty, double watts, double btu) {
        double ours = mains - duty * rated;
        number(AMPLIFIERS, "heat", inputs, watts, 1, "W", ours, MANUAL);
        number(
                AMPLIFIERS,
                "heat",
                inputs,
                btu,
                0.005 * btu,
                "BTU/h",
                ours * LinePower.BTU_PER_HOUR_PER_WATT,
                MANUAL + ", rounded there, or " + BY_HAND);
    }

    private void phasor(String quantity, String inputs, Phasor ours, double length, double degrees) {
        number(SEQUENCES, quantity, inputs, length, 5e-3, "", ours.length(), GONEN);
        number(SEQUENCES, quantity + ", angle", inputs, degrees, 5e-2, "°", Math.toDegrees(ours.angleRadians()), GONEN);
    }

    private void unbalance(double ab, double bc, double ca, double expected) {
        double angle = Math.acos((ab * ab + bc * bc - ca * ca) / (2 * ab * bc));
        Phasor first = Phasor.polar(ab, 0);
        Phasor second = Phasor.polar(bc, -(Math.PI - angle));
        Phasor third = first.plus(second).times(-1);
        number(
                UNBALANCE,
                "negative over positive sequence",
                String.format(java.util.Locale.ROOT, "%.0f, %.0f, %.0f V", ab, bc, ca),
                expected,
                1e-3,
                "%",
                SymmetricalComponents.of(first, second, third).negativePercent(),
                BY_HAND + ": 100·√((1 − s)/(1 + s)), s = √(3 − 6β), β = Σ V⁴/(Σ V²)² (form from memory)");
    }

    private static Phasor degrees(double length, double degrees) {
        return Phasor.polar(length, Math.toRadians(degrees));
    }
}
