package evenrise.model.validation;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LineAmps;
import evenrise.model.electrical.LineCurrents;
import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.breaker.Disconnection;
import evenrise.model.electrical.breaker.InstantaneousBand;
import evenrise.model.electrical.conductor.ConductorImpedance;
import evenrise.model.electrical.conductor.ConductorSize;
import evenrise.model.electrical.source.FaultCurrent;
import evenrise.model.electrical.source.RadialPlant;
import evenrise.model.electrical.source.SharedSource;
import evenrise.model.electrical.source.SourceImpedance;
import evenrise.model.electrical.source.StepDip;
import evenrise.model.project.ConductorMaterial;
import evenrise.model.project.Conduit;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.TripCurve;
import java.util.List;
import java.util.Map;

/** Outside values of fault currents, dips and shared sources. */
final class SourceChecks extends CheckList {
    private static final String BY_HAND = "computed by hand from the stated formula";
    private static final String FAULTS = "Fault currents";
    private static final String LOOPS = "Fault loops";
    private static final String IEC_EXAMPLE = "hand calculation by IEC 60909-0 (standard from memory)";
    private static final String DIPS = "Voltage dips";
    private static final String PEAKS = "Peaks behind a shared resistance";
    private static final String HANDBOOK =
            "Electrical Plan Review, handbook, point-to-point example at 208Y/120 V, read in a copy";
    private static final String ONE_PHASE = "handbook sheet of the same method at 240 V, read in a copy";

    static List<Check> all() {
        SourceChecks table = new SourceChecks();
        table.transformers();
        table.coldAndWarm();
        table.loops();
        table.dips();
        table.neutrals();
        table.lineCurrents();
        table.peaks();
        return List.copyOf(table.checks);
    }

    private void transformers() {
        number(
                FAULTS,
                "at the transformer, 2 % less a tenth",
                "300 kVA, 208 V",
                46_273,
                46,
                "A",
                transformerAmps(300, 208, 2 * FaultCurrent.LEAST_IMPEDANCE_RATIO),
                HANDBOOK);
        transformer(750, 480, 5.75, 15_689, "wiregaugecalculator.com: roughly 15.7 kA");
        transformer(45, 208, 4, 3123, BY_HAND + ": S/(√3·V·%Z)");
        transformer(112.5, 208, 5, 6245, BY_HAND + ": S/(√3·V·%Z)");
        transformer(630, 400, 4, 22_733, BY_HAND + ": S/(√3·V·%Z)");
        transformer(1000, 400, 6, 24_056, BY_HAND + ": S/(√3·V·%Z)");
        double phase = 400 / Math.sqrt(3);
        Impedance source = SourceImpedance.ofPercent(PhaseSystem.THREE_PHASE, phase, 630, 4, 1e9);
        number(
                FAULTS,
                "impedance of a transformer",
                "630 kVA, 400 V, 4 %",
                10.159,
                0.001,
                "mΩ",
                1000 * source.magnitudeOhms(),
                BY_HAND + ": V²·%/S");
        Impedance cable = new Impedance(0.193, 0.08).times(0.05);
        String behind = BY_HAND + ": c·V/(√3·|Z|), cable 0.193 + j0.08 Ω/km (typical, from memory)";
        number(
                FAULTS,
                "behind 50 m of 95 mm²",
                "630 kVA, 400 V, 4 % as pure reactance, c 1.00",
                13.48,
                0.01,
                "kA",
                FaultCurrent.amps(1, phase, source.plus(cable)) / 1000,
                behind);
        number(
                FAULTS,
                "behind 50 m of 95 mm²",
                "the same, c 1.05",
                14.15,
                0.01,
                "kA",
                FaultCurrent.amps(1.05, phase, source.plus(cable)) / 1000,
                behind);
    }

    /** A board behind a transformer, its cable cold for the greatest and warm for the least. */
    private void coldAndWarm() {
        double phase = 400 / Math.sqrt(3);
        Impedance network = new Impedance(0.0350e-3, 0.3502e-3);
        Impedance transformer = new Impedance(2.7937e-3, 9.7671e-3);
        String inputs = "20 kV network of 500 MVA, 630 kVA 4 %, 50 m of 4 × 95 mm²";
        number(
                FAULTS,
                "greatest, three phases, 20 °C, c 1.05, K_T 0.975",
                inputs,
                13.03,
                0.01,
                "kA",
                FaultCurrent.amps(
                                1.05,
                                phase,
                                network.plus(transformer.times(0.975))
                                        .plus(cable("95 mm2", 0.05, FaultCurrent.COLD_CELSIUS)))
                        / 1000,
                IEC_EXAMPLE);
        number(
                FAULTS,
                "least, line to neutral, 70 °C, c 0.95",
                inputs,
                6.942,
                0.02,
                "kA",
                FaultCurrent.amps(
                                FaultCurrent.LEAST_VOLTAGE_FACTOR,
                                phase,
                                network.times(2 / 3.0)
                                        .plus(transformer)
                                        .plus(cable("95 mm2", 0.05, 70).times(2)))
                        / 1000,
                IEC_EXAMPLE + "; 0.004 per kelvin there, 0.00393 here");
        Impedance american = new Impedance(10.742e-3, 23.632e-3).plus(new Impedance(0, 1.735e-3));
        String panel = "30 kA at 480 V, 75 kVA 4.5 %, 50 ft of 3/0 AWG in steel, 208 V";
        number(
                FAULTS,
                "three phases, 75 °C",
                panel,
                3801,
                3,
                "A",
                FaultCurrent.amps(1, 208 / Math.sqrt(3), american.plus(cable("3/0 AWG", 0.01524, 75))),
                BY_HAND + ": V/|Z|, cable 0.079 + j0.052 Ω/kft (NEC chapter 9 table 9)");
        number(
                FAULTS,
                "three phases, 20 °C",
                panel,
                3840,
                3,
                "A",
                FaultCurrent.amps(
                        1, 208 / Math.sqrt(3), american.plus(cable("3/0 AWG", 0.01524, FaultCurrent.COLD_CELSIUS))),
                BY_HAND + ": the same, resistance times 0.8223");
        number(
                FAULTS,
                "greatest, 20 °C, c 1.1",
                "400 kVA 4 % at X/R 3, 25 m of 16 mm², 230 V",
                6687.5,
                1,
                "A",
                FaultCurrent.amps(
                        FaultCurrent.GREATEST_VOLTAGE_FACTOR,
                        230,
                        SourceImpedance.ofPercent(PhaseSystem.THREE_PHASE, 230, 400, 4, 3)
                                .plus(cable("16 mm2", 0.025, FaultCurrent.COLD_CELSIUS))),
                BY_HAND + ": 253 V/|33.769 + j17.056| mΩ; 5,891 A with the cable at 70 °C");
    }

    private void loops() {
        for (Object[] row : new Object[][] {
            {TripCurve.B, 6, 7.28}, {TripCurve.B, 16, 2.73}, {TripCurve.B, 32, 1.37}, {TripCurve.C, 16, 1.37},
            {TripCurve.C, 32, 0.68}, {TripCurve.C, 63, 0.35}, {TripCurve.D, 20, 0.55}, {TripCurve.D, 32, 0.34}
        }) {
            TripCurve curve = (TripCurve) row[0];
            int amps = (Integer) row[1];
            number(
                    LOOPS,
                    "largest loop",
                    curve + "" + amps + ", 230 V, c 0.95",
                    (Double) row[2],
                    0.0051,
                    "Ω",
                    Disconnection.mostLoopOhms(
                            FaultCurrent.LEAST_VOLTAGE_FACTOR,
                            230,
                            InstantaneousBand.of(curve).mostRatio() * amps),
                    "BS 7671 table 41.3, read on three pages that print it");
        }
        Impedance loop =
                new Impedance(0.35, 0).plus(cable("2.5 mm2", 0.025, 70)).plus(cable("1.5 mm2", 0.025, 70));
        number(
                LOOPS,
                "loop, warm",
                "0.35 Ω before, 25 m of 2.5 mm² with 1.5 mm²",
                0.9353,
                0.002,
                "Ω",
                loop.magnitudeOhms(),
                BY_HAND + ": 0.35 + 0.48775·1.2; 1.1965 here");
        number(
                LOOPS,
                "least current, warm",
                "0.35 Ω before, 25 m of 2.5 mm² with 1.5 mm²",
                233.6,
                0.6,
                "A",
                FaultCurrent.amps(FaultCurrent.LEAST_VOLTAGE_FACTOR, 230, loop),
                BY_HAND + ": 0.95·230/0.9353");
        Impedance longer =
                new Impedance(0.35, 0).plus(cable("2.5 mm2", 0.04, 70).times(2));
        number(
                LOOPS,
                "least current, warm",
                "0.35 Ω before, 40 m of 2.5 mm² with 2.5 mm²",
                205.9,
                0.6,
                "A",
                FaultCurrent.amps(FaultCurrent.LEAST_VOLTAGE_FACTOR, 230, longer),
                BY_HAND + ": 0.95·230/1.0614; C16 trips from 160 A, D20 from 400 A");
    }

    private static Impedance cable(String size, double kilometres, double celsius) {
        return ConductorImpedance.perKilometre(
                        ConductorSize.of(size).orElseThrow(), ConductorMaterial.COPPER, Conduit.STEEL, celsius)
                .times(kilometres);
    }

    /** Lines and neutral of 0.05 + j0.05 Ω each, 120/208 V: what 200 A from A, or between A and B, do to every voltage. */
    private void neutrals() {
        Impedance wire = new Impedance(0.05, 0.05);
        RadialPlant plant = new RadialPlant(
                PhaseSystem.THREE_PHASE,
                120,
                Impedance.ZERO,
                Map.of("P", RadialPlant.feeder(PhaseSystem.THREE_PHASE, wire, wire)));
        String how = BY_HAND + ": V − Z·I − Zn·In by phasors";
        String inputs = "200 A from A, lines and neutral 0.05 + j0.05 Ω, 120 V, power factor ";
        double[][] expected = {{1, 101.98, 133.71, 117.14}, {0.7, 91.72, 127.54, 127.77}, {0.3, 95.82, 121.43, 132.15}};
        for (double[] row : expected) {
            LineValues volts = volts(plant, row[0], Phase.A);
            for (Phase phase : Phase.values()) {
                number(
                        DIPS,
                        "phase " + phase + " beside a shared neutral",
                        inputs + row[0],
                        row[1 + phase.ordinal()],
                        0.005,
                        "V",
                        volts.line(phase).length(),
                        how);
            }
        }
        LineValues between = volts(plant, 0.3, Phase.A, Phase.B);
        number(
                DIPS,
                "between lines A and B",
                "200 A between them, lines 0.05 + j0.05 Ω, 208 V, power factor 0.3",
                183.24,
                0.01,
                "V",
                between.a().minus(between.b()).length(),
                how);
    }

    private static LineValues volts(RadialPlant plant, double powerFactor, Phase... phases) {
        LineCurrents lines = new LineCurrents(PhaseSystem.THREE_PHASE);
        lines.add(List.of(phases), 200, Lag.behind(powerFactor));
        return plant.voltages(Map.of("P", RadialPlant.Draw.of(lines.lines()))).at("P");
    }

    /** 15 A each from A to B, from C to A, and at power factor 0.6 from B and from C. */
    private void lineCurrents() {
        LineAmps lines = new LineAmps(PhaseSystem.THREE_PHASE);
        lines.add(List.of(Phase.A, Phase.B), 15, Lag.NONE, 0);
        lines.add(List.of(Phase.C, Phase.A), 15, Lag.NONE, 0);
        lines.add(List.of(Phase.B), 15, Lag.behind(0.6), 0);
        lines.add(List.of(Phase.C), 15, Lag.behind(0.6), 0);
        double[] expected = {25.98, 29.39, 22.45};
        for (Phase phase : Phase.values()) {
            number(
                    "Line currents by phasors",
                    "line " + phase,
                    "15 A each A-B, C-A, B and C at 0.6; sums 30 A a line",
                    expected[phase.ordinal()],
                    0.005,
                    "A",
                    lines.amps(phase),
                    BY_HAND + ": sum of phasors");
        }
    }

    private void dips() {
        Impedance reference = new Impedance(0.4, 0.25);
        String zref = "reference impedance of IEC 60725, from memory; " + BY_HAND;
        number(DIPS, "magnitude", "0.4 + j0.25 Ω", 0.4717, 1e-4, "Ω", reference.magnitudeOhms(), zref);
        number(
                DIPS,
                "locked rotor against fault current",
                "600 A on 5,000 A",
                10.714,
                1e-3,
                "%",
                StepDip.dividedPercent(100 * 600 / 5000.0),
                "page on motor starting: 10.7 %");
        generator(100, 20, 50, 10.0, 9.09);
        generator(200, 25, 150, 18.75, 15.79);
        generator(500, 15, 200, 6.00, 5.66);
        generator(100, 12, 50, 6.0, 5.66);
    }

    private void generator(double kva, double reactancePercent, double stepKva, double linear, double divided) {
        Impedance source = SourceImpedance.ofPercent(PhaseSystem.THREE_PHASE, 120, kva, reactancePercent, 1e9);
        double ours = 100 * (1000 * stepKva / 360) * source.magnitudeOhms() / 120;
        String inputs = String.format(
                java.util.Locale.ROOT,
                "%.0f kVA, X %.0f %%, reactive step of %.0f kVA",
                kva,
                reactancePercent,
                stepKva);
        number(
                DIPS,
                "generator, linear",
                inputs,
                linear,
                0.005,
                "%",
                ours,
                "page on generator dips: 100·S·X/Sn; " + BY_HAND);
        number(
                DIPS,
                "generator, divider",
                inputs,
                divided,
                0.005,
                "%",
                StepDip.dividedPercent(ours),
                "form from memory; " + BY_HAND);
    }

    private void peaks() {
        double[] expected = {30.98, 59.14, 130.1, 216.8, 325.3};
        int[] loads = {1, 2, 5, 10, 20};
        for (int i = 0; i < loads.length; i++) {
            double crest = 230 * Math.sqrt(2);
            number(
                    PEAKS,
                    "crest",
                    loads[i] + " loads of 10 Ω behind 0.5 Ω, 230 V",
                    expected[i],
                    0.05,
                    "A",
                    SharedSource.crestAmps(loads[i] * crest / 10, crest, new Impedance(0.5, 0)),
                    BY_HAND + ": V/(Rs + R/N)");
        }
    }

    private void transformer(double kva, double volts, double percent, double expected, String source) {
        String inputs = String.format(java.util.Locale.ROOT, "%.1f kVA, %.0f V, %.2f %%", kva, volts, percent);
        number(FAULTS, "at the transformer", inputs, expected, 1.5, "A", transformerAmps(kva, volts, percent), source);
    }

    private static double transformerAmps(double kva, double volts, double percent) {
        double phase = volts / Math.sqrt(3);
        return FaultCurrent.amps(
                1, phase, SourceImpedance.ofPercent(PhaseSystem.THREE_PHASE, phase, kva, percent, 1e9));
    }
}
