package evenrise.model.validation;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.Lag;
import evenrise.model.electrical.breaker.BranchRating;
import evenrise.model.electrical.breaker.ContinuousLoad;
import evenrise.model.electrical.breaker.ConventionalCurrents;
import evenrise.model.electrical.breaker.InstantaneousBand;
import evenrise.model.electrical.breaker.StandardRatings;
import evenrise.model.electrical.breaker.TripEquivalent;
import evenrise.model.electrical.conductor.Ampacity;
import evenrise.model.electrical.conductor.ConductorImpedance;
import evenrise.model.electrical.conductor.ConductorSize;
import evenrise.model.electrical.conductor.HarmonicReduction;
import evenrise.model.electrical.conductor.VoltageDrop;
import evenrise.model.project.ConductorMaterial;
import evenrise.model.project.Conduit;
import evenrise.model.project.Practice;
import evenrise.model.project.ReferenceMethod;
import evenrise.model.project.TripCurve;
import java.util.List;
import java.util.OptionalDouble;

/** Outside values of breakers, conductors and voltage drop. */
final class WiringChecks extends CheckList {
    private static final String BY_HAND = "computed by hand from the stated formula";
    private static final String SIZES = "Conductor sizes";
    private static final String RESISTANCE = "Conductor resistance and reactance";
    private static final String AMPACITY = "Ampacity";
    private static final String HARMONICS = "Reduction for third harmonics";
    private static final String DROP = "Voltage drop";
    private static final String BREAKERS = "Breakers";
    private static final String LESSONS =
            "Lessons in Electric Circuits, reference chapter 3, table of wire gauges (open textbook)";
    private static final String PUBLIC_TEST =
            "test values of an open-source calculator (voltage drop by NEC chapter 9)";
    private static final double METRES_PER_FOOT = 0.3048;

    static List<Check> all() {
        WiringChecks table = new WiringChecks();
        table.sizes();
        table.resistance();
        table.ampacity();
        table.harmonics();
        table.drop();
        table.breakers();
        return List.copyOf(table.checks);
    }

    private void sizes() {
        area("4/0 AWG", 107.219);
        area("1/0 AWG", 53.475);
        area("4 AWG", 21.151);
        area("6 AWG", 13.302);
        area("8 AWG", 8.3656);
        area("10 AWG", 5.2612);
        area("12 AWG", 3.3088);
        area("14 AWG", 2.0809);
        number(
                SIZES,
                "cross-section",
                "250 kcmil",
                126.677,
                0.01,
                "mm²",
                size("250 kcmil").squareMillimetres(),
                BY_HAND + ": 250,000 circles of 0.001 inch");
    }

    private void resistance() {
        // NEC table 9 is rounded to two digits; the direct-current values of table 8 are the finer yardstick.
        tabulated("12 AWG", 1.98, 0.05);
        tabulated("4 AWG", 0.308, 0.005);
        tabulated("1/0 AWG", 0.122, 0.005);
        number(
                RESISTANCE,
                "resistance",
                "2.5 mm² copper at 70 °C",
                8.866,
                1e-3,
                "Ω/km",
                ConductorImpedance.perKilometre(size("2.5 mm2"), ConductorMaterial.COPPER, Conduit.NONMETALLIC, 70)
                        .resistanceOhms(),
                "IEC 60228: 7.41 Ω/km at 20 °C, read in several copies; " + BY_HAND + ": ·(1 + 0.00393·50)");
        number(
                RESISTANCE,
                "resistance",
                "4/0 AWG aluminium at 75 °C",
                0.100,
                5e-3,
                "Ω/kft",
                0.3048
                        * ConductorImpedance.perKilometre(
                                        size("4/0 AWG"), ConductorMaterial.ALUMINIUM, Conduit.NONMETALLIC, 75)
                                .resistanceOhms(),
                "NEC chapter 9 table 9, read in an open-source copy: 0.10");
        aluminium("500 kcmil", Conduit.ALUMINIUM, 0.048);
        aluminium("4/0 AWG", Conduit.ALUMINIUM, 0.11);
        aluminium("600 kcmil", Conduit.STEEL, 0.038);
        aluminium("1000 kcmil", Conduit.NONMETALLIC, 0.023);
        number(
                RESISTANCE,
                "resistance",
                "16 mm² aluminium at 20 °C",
                1.91,
                1e-9,
                "Ω/km",
                ConductorImpedance.perKilometre(size("16 mm2"), ConductorMaterial.ALUMINIUM, Conduit.NONMETALLIC, 20)
                        .resistanceOhms(),
                "IEC 60228, read in several copies");
    }

    private void ampacity() {
        number(
                AMPACITY,
                "corrected ampacity",
                "300 kcmil copper, 75 °C column, 40 °C, 4 conductors",
                200.6,
                0.1,
                "A",
                corrected("300 kcmil"),
                "worked table of an open-source calculator: 285 · 0.88 · 0.80");
        number(
                AMPACITY,
                "corrected ampacity",
                "400 kcmil copper, 75 °C column, 40 °C, 4 conductors",
                235.84,
                0.1,
                "A",
                corrected("400 kcmil"),
                "the same: 335 · 0.88 · 0.80");
        american("600 kcmil", ConductorMaterial.COPPER, 420);
        american("700 kcmil", ConductorMaterial.COPPER, 460);
        american("1000 kcmil", ConductorMaterial.COPPER, 545);
        american("750 kcmil", ConductorMaterial.ALUMINIUM, 385);
        metric("6 mm2", 41);
        metric("10 mm2", 57);
        metric("16 mm2", 76);
        number(
                AMPACITY,
                "correction for 35 °C, PVC",
                "70 °C conductor",
                0.94,
                1e-9,
                "",
                Ampacity.ambientFactor(70, 35, false),
                "IEC 60364-5-52 table B.52.14, from memory: 0.94");
        number(
                AMPACITY,
                "correction for 45 °C",
                "75 °C conductor",
                0.82,
                1e-9,
                "",
                Ampacity.ambientFactor(75, 45, true),
                "NEC table 310.15(B)(1)(1), from memory: 0.82");
    }

    private void harmonics() {
        needed(39, 0, 39, "IEC 60364-5-52 annex E, worked example; text from memory, arithmetic by hand: 6 mm²");
        needed(39, 20, 45.35, "the same: 39/0.86, 10 mm²");
        needed(39, 40, 54.42, "the same: neutral 46.8/0.86, 10 mm²");
        needed(39, 50, 58.5, "the same: neutral 58.5/1, 16 mm²");
        needed(25, 32, 29.07, BY_HAND + ": 25/0.86");
        needed(25, 44, 38.37, BY_HAND + ": neutral 33/0.86; two pages print 25/0.86, against the table's own rule");
    }

    private void drop() {
        american(
                "120 V, 10 A, 100 ft of 12 AWG, unity",
                120,
                10,
                1,
                "12 AWG",
                1,
                100,
                Conduit.NONMETALLIC,
                false,
                3.9999,
                2e-4);
        american(
                "120 V, 20 A, 100 ft of 12 AWG, 0.9",
                120,
                20,
                0.9,
                "12 AWG",
                1,
                100,
                Conduit.NONMETALLIC,
                false,
                7.2460,
                2e-4);
        american(
                "480 V, 460 A, 250 ft of 2 × 4/0 AWG in aluminium, 0.85",
                480,
                460,
                0.85,
                "4/0 AWG",
                2,
                250,
                Conduit.ALUMINIUM,
                true,
                7.8228,
                2e-4);
        Impedance coated = new Impedance(0.13, 0.044).times(0.35 / 2);
        volts(
                "208 V, 130 A, 350 ft of 2 × 1/0 AWG, 0.13 + j0.044 Ω/kft, 0.9",
                5.3649,
                1e-3,
                VoltageDrop.exactVolts(208, 130, Lag.behind(0.9), coated, VoltageDrop.ways(true)),
                PUBLIC_TEST);
    }

    private void breakers() {
        number(
                BREAKERS,
                "rating for a continuous load",
                "10 kW, 240 V, 0.9",
                57.87,
                0.01,
                "A",
                ContinuousLoad.necAmps(10_000 / 240.0 / 0.9, true, false),
                "test value of an open-source calculator, NEC 210.20(A): 57.9 A, 60 A");
        rating(57.87, 60);
        rating(52.5, 60);
        rating(225, 225);
        branch("load of 9.26 A, a rack", BranchRating.carrying(Practice.NEC, 9.26, 0.8), 15, "NEC 210.20(A), 240.6(A)");
        branch(
                "load of 4.12 A, 900 W at 230 V and 0.95",
                BranchRating.carrying(Practice.IEC, 4.12, 0.8),
                6,
                "IEC 60364-4-43");
        branch("motor of 1 hp, 208 V, 4.6 A", BranchRating.ofMotor(4.6), 15, "NEC 430.52(C)(1): 11.5 A, next size");
        branch("motor of 5 hp, 208 V, 16.7 A", BranchRating.ofMotor(16.7), 45, "NEC 430.52(C)(1): 41.75 A, next size");
        branch(
                "motor of 100 hp, 460 V, 124 A",
                BranchRating.ofMotor(124),
                350,
                "published example, NEC 430.52(C)(1): 310 A, next size");
        branch(
                "transformer of 30 kVA, 480 V, 36.08 A",
                BranchRating.ofTransformer(36.08),
                50,
                "NEC 450.3(B), primary alone: 45.1 A, next size");
        branch(
                "transformer of 75 kVA, 480 V, 90.21 A",
                BranchRating.ofTransformer(90.21),
                125,
                "NEC 450.3(B), primary alone: 112.8 A, next size");
        band("B16", TripCurve.B, 48, 80);
        band("C16", TripCurve.C, 80, 160);
        band("D16", TripCurve.D, 160, 320);
        number(
                BREAKERS,
                "conventional non-tripping current",
                "16 A, IEC 60898-1",
                18.08,
                1e-9,
                "A",
                16 * ConventionalCurrents.of(Practice.IEC).holdsRatio(),
                "IEC 60898-1, read in a breaker's manual: 1.13 In");
        number(
                BREAKERS,
                "conventional tripping current",
                "16 A, IEC 60898-1",
                23.2,
                1e-9,
                "A",
                16 * ConventionalCurrents.of(Practice.IEC).tripsRatio(),
                "IEC 60898-1, read in a breaker's manual: 1.45 In");
        number(
                BREAKERS,
                "pulse at the trip, rms over 10 ms",
                "65.05 A, halving in 1.629 ms (τ 2.35 ms), 50 Hz",
                22.30,
                0.01,
                "A",
                TripEquivalent.pulseAmps(65.05, 0.00235 * Math.log(2), 50),
                BY_HAND
                        + ": ½·I²·τ·(1 − e^(−20/2.35)) = 4.971 A²s over 0.01 s; a source without the end of the"
                        + " half-cycle gives V²C/(2R) = 4.973 A²s");
    }

    private void rating(double needed, double expected) {
        number(
                BREAKERS,
                "next standard rating",
                needed + " A",
                expected,
                1e-9,
                "A",
                StandardRatings.atLeast(Practice.NEC, needed).orElseThrow(),
                "NEC 240.6(A), read in two copies");
    }

    private void branch(String inputs, OptionalDouble ours, double expected, String source) {
        number(BREAKERS, "branch breaker", inputs, expected, 1e-9, "A", ours.orElseThrow(), source);
    }

    private void band(String inputs, TripCurve curve, double least, double most) {
        InstantaneousBand band = InstantaneousBand.of(curve);
        String source = "IEC 60898-1, read on a page that cites it";
        number(BREAKERS, "holds for 0.1 s", inputs, least, 1e-9, "A", 16 * band.leastRatio(), source);
        number(BREAKERS, "trips within 0.1 s", inputs, most, 1e-9, "A", 16 * band.mostRatio(), source);
    }

    private static double corrected(String name) {
        return Ampacity.american(size(name), ConductorMaterial.COPPER, 75).orElseThrow()
                * Ampacity.ambientFactor(75, 40, true)
                * Ampacity.americanGroupFactor(4);
    }

    private void metric(String name, double expected) {
        number(
                AMPACITY,
                "table B.52.4, method C, copper, PVC",
                name,
                expected,
                1e-9,
                "A",
                Ampacity.metric(size(name), ConductorMaterial.COPPER, ReferenceMethod.C, 3)
                        .orElseThrow(),
                "IEC 60364-5-52, read in two copies");
    }

    private void needed(double lineAmps, double thirdPercent, double expected, String source) {
        number(
                HARMONICS,
                "tabulated current needed",
                String.format(java.util.Locale.ROOT, "%.0f A, third harmonic %.0f %%", lineAmps, thirdPercent),
                expected,
                0.05,
                "A",
                HarmonicReduction.of(lineAmps, thirdPercent).neededAmps(),
                source);
    }

    private void american(
            String inputs,
            double volts,
            double amps,
            double powerFactor,
            String name,
            int sets,
            double feet,
            Conduit conduit,
            boolean isThreePhase,
            double expected,
            double tolerance) {
        Impedance conductor = ConductorImpedance.perKilometre(size(name), ConductorMaterial.COPPER, conduit, 75)
                .times(feet * METRES_PER_FOOT / 1000 / sets);
        volts(
                inputs,
                expected,
                tolerance,
                VoltageDrop.exactVolts(volts, amps, Lag.behind(powerFactor), conductor, VoltageDrop.ways(isThreePhase)),
                PUBLIC_TEST);
    }

    private void volts(String inputs, double expected, double tolerance, double ours, String source) {
        number(DROP, "drop", inputs, expected, tolerance, "V", ours, source);
    }

    private void area(String name, double expected) {
        number(
                SIZES,
                "cross-section",
                name,
                expected,
                0.0005 * expected,
                "mm²",
                size(name).squareMillimetres(),
                LESSONS + ", in circular mils");
    }

    private void tabulated(String name, double expected, double tolerance) {
        number(
                RESISTANCE,
                "resistance, table 9 beside table 8",
                name + " copper in nonmetallic conduit, 75 °C",
                expected,
                tolerance,
                "Ω/kft",
                0.3048
                        * ConductorImpedance.perKilometre(size(name), ConductorMaterial.COPPER, Conduit.NONMETALLIC, 75)
                                .resistanceOhms(),
                "NEC chapter 9 table 8, stranded, read in an open-source copy");
    }

    private void aluminium(String name, Conduit conduit, double expected) {
        number(
                RESISTANCE,
                "resistance",
                name + " aluminium in " + conduit.name().toLowerCase(java.util.Locale.ROOT) + " conduit, 75 °C",
                expected,
                1e-9,
                "Ω/kft",
                0.3048
                        * ConductorImpedance.perKilometre(size(name), ConductorMaterial.ALUMINIUM, conduit, 75)
                                .resistanceOhms(),
                "NEC chapter 9 table 9, read in an open-source copy");
    }

    private void american(String name, ConductorMaterial material, double expected) {
        number(
                AMPACITY,
                "ampacity, 75 °C column",
                name + " " + material.name().toLowerCase(java.util.Locale.ROOT),
                expected,
                1e-9,
                "A",
                Ampacity.american(size(name), material, 75).orElseThrow(),
                "NEC table 310.16, read in several open-source copies");
    }

    private static ConductorSize size(String name) {
        return ConductorSize.of(name).orElseThrow();
    }
}
