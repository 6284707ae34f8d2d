package evenrise.model.validation;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;

import evenrise.model.electrical.Imbalance;
import evenrise.model.electrical.Lag;
import evenrise.model.electrical.NeutralCurrent;
import evenrise.model.electrical.WorstNeutral;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.SlotLayout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.Referee;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;

/**
 * Outside values of the electrical quantities and of slot numbering. No standard's own text was read for them: a value
 * that stands in a page or a book names it, one that was worked out from the stated formula says so, and one that was
 * recalled says 'from memory'.
 */
final class QuantityChecks {
    private static final String BY_HAND = "computed by hand from the stated formula";
    private static final String NEUTRAL = "Neutral current, three-phase, fundamental";
    private static final String TRIPLEN = "Neutral current, three-phase, with third harmonic (I3/I1)";
    private static final String SPLIT = "Neutral current, split-phase";
    private static final String IMBALANCE = "Imbalance, the NEMA MG 1 form";
    private static final String SLOTS = "Slot numbering";

    private final List<Check> checks = new ArrayList<>();

    static List<Check> all() {
        QuantityChecks table = new QuantityChecks();
        table.neutral();
        table.triplen();
        table.splitPhase();
        table.imbalance();
        table.slots();
        return List.copyOf(table.checks);
    }

    private void neutral() {
        unity(10, 15, 20, 8.66, 0.005, "neutral current calculator, bit1024.com, which prints 8.66");
        unity(10, 10, 5, 5, 0.001, "iee-business.com, page neutral-current-9, which prints 5.0");
        unity(
                100,
                75,
                50,
                43.3,
                0.1,
                "J. Bird, Electrical & Electronic Principles & Technology, ch. 20 problem 4: 24, 18, 12 kW in star,"
                        + " 240 V a phase");
        unity(10, 8, 6, 3.464, 0.005, BY_HAND + ": √(A² + B² + C² − AB − BC − CA)");
        unity(60, 40, 30, 26.458, 0.005, BY_HAND + ": √(A² + B² + C² − AB − BC − CA)");
        unity(50, 50, 50, 0, 1e-9, "identity: a balanced load returns nothing");
        unity(0, 17, 0, 17, 1e-9, "identity: one phase alone returns all");
        neutral(
                "75 A each, any of them on",
                75,
                1e-6,
                worst(75, 0),
                "NEC 220.61(A), which counts one line conductor against the neutral (clause from memory)");
        neutral(
                "1 A each, third harmonic 0.4, any of them on",
                1.18903,
                1e-5,
                worst(1, 0.4),
                BY_HAND + ": two phases, √(1² + (2·0.4)²)/√(1 + 0.4²); all three only 3·0.4/√(1 + 0.4²) = 1.11417");
        unity(17, 17, 0, 17, 1e-9, "identity: two equal phases return one");
        String problem = "problem printed at meomock.com (4th Engineer, Sep 2025), its answer not; " + BY_HAND
                + ": |Σ I·e^j(θ−φ)|";
        double lag45 = Math.acos(0.707);
        double lag30 = Math.acos(0.866);
        neutral(
                "A 50 A pf 0.707 lag, B 40 A pf 0.866 lag, C 40 A pf 0.707 lead",
                58.86,
                0.05,
                phasors(PhaseSystem.THREE_PHASE, new double[] {50, 40, 40}, new double[] {lag45, lag30, -lag45}),
                problem);
        neutral(
                "the same with the sequence reversed",
                56.97,
                0.05,
                phasors(PhaseSystem.THREE_PHASE, new double[] {50, 40, 40}, new double[] {lag45, -lag45, lag30}),
                problem);
        neutral(
                "10 A each, pf 0.8, 1, 0.9 lag",
                5.210,
                0.001,
                loads(PhaseSystem.THREE_PHASE, 0, new double[] {10, 10, 10}, new double[] {0.8, 1, 0.9}),
                BY_HAND + ": |Σ I·e^j(θ−φ)|");
        neutral(
                "20 A each, 60° lag, in phase, 60° lead",
                40,
                0.001,
                phasors(PhaseSystem.THREE_PHASE, new double[] {20, 20, 20}, new double[] {Math.PI / 3, 0, -Math.PI / 3
                }),
                BY_HAND + ": |Σ I·e^j(θ−φ)|");
        neutral(
                "2 kVA between two lines at 208 V, 9.615 A in each",
                0,
                1e-9,
                ofTwoPoleLoad(9.615),
                "identity: a load without a neutral returns nothing through it");
        neutral(
                "10 A on A and 10 A on B: two legs of 208Y/120 are not split-phase",
                10,
                0.001,
                loads(PhaseSystem.THREE_PHASE, 0, new double[] {10, 10, 0}, new double[] {1, 1, 1}),
                BY_HAND + ": √(A² + B² + C² − AB − BC − CA)");
    }

    private void triplen() {
        ratio(
                0.7,
                1.72,
                0.005,
                "BSRIA AG 2/2000, quoted at designingbuildings.co.uk: 172 % of line current for 70 % third harmonic");
        ratio(0.33, 0.940, 0.001, BY_HAND + ": 3k/√(1 + k²)");
        ratio(0.5, 1.342, 0.001, BY_HAND + ": 3k/√(1 + k²)");
        ratio(0.8, 1.874, 0.001, BY_HAND + ": 3k/√(1 + k²)");
        add(Check.number(
                TRIPLEN,
                "neutral current",
                "20, 15, 10 A, third harmonic 0.7",
                26.763,
                0.01,
                "A",
                loads(PhaseSystem.THREE_PHASE, 0.7, new double[] {20, 15, 10}, new double[] {1, 1, 1}),
                BY_HAND + ": √(7.095² + 25.806²)"));
    }

    private void splitPhase() {
        split("20 A and 12 A, unity", 8, loads(PhaseSystem.SPLIT_PHASE, 0, new double[] {20, 12}, new double[] {1, 1}));
        split(
                "20 A unity, 12 A pf 0.8 lag",
                12.649,
                loads(PhaseSystem.SPLIT_PHASE, 0, new double[] {20, 12}, new double[] {1, 0.8}));
        split("15 A and 15 A", 0, loads(PhaseSystem.SPLIT_PHASE, 0, new double[] {15, 15}, new double[] {1, 1}));
        add(Check.number(
                SPLIT,
                "neutral current",
                "15 A and 15 A, third harmonic 0.7",
                0,
                1e-9,
                "A",
                loads(PhaseSystem.SPLIT_PHASE, 0.7, new double[] {15, 15}, new double[] {1, 1}),
                "from memory: leg 2 is shifted by n·180°, so odd harmonics of equal legs cancel"));
    }

    private void imbalance() {
        imbalance(
                1.961,
                0.001,
                "definition of NEMA MG 1, read in a secondary copy (Pillay & Manyage, Definitions of Voltage"
                        + " Unbalance); example at tools.gera.services, about 1.96",
                460,
                467,
                450);
        imbalance(1.087, 0.001, "eng-tips.com thread 481112, which prints 1.1", 462, 463, 455);
        imbalance(2.56, 0.001, "manual of a motor protection relay, p. 5, which cuts it to 2.5", 203, 210, 212);
        imbalance(
                0.840,
                0.001,
                "industrialmonitordirect.com; (max − min)/mean would give 1.68 and is wrong",
                480,
                476,
                472);
        imbalance(
                1.695,
                0.001,
                BY_HAND + "; a manual prints 1.8 for the same inputs, from a mean rounded to 216: sources disagree",
                220,
                216,
                213);
        imbalance(3.390, 0.001, BY_HAND + ": 100·max|I − mean|/mean", 400, 400, 380);
        imbalance(0, 1e-9, "identity", 32, 32, 32);
    }

    private void slots() {
        String rows = "article 'Distribution board' of an encyclopaedia, copy at masterliness.com: 1–2 A, 3–4 B, 5–6 C,"
                + " 7–8 A, … (letters X, Y, Z there)";
        String byRow = BY_HAND + ": row = ⌈slot/2⌉, phase = (row − 1) mod 3";
        SlotLayout three = new SlotLayout(aPanel("P").slots(42).build(), PhaseSystem.THREE_PHASE);
        SlotLayout two = new SlotLayout(aPanel("P").slots(42).build(), PhaseSystem.SPLIT_PHASE);
        SlotLayout rail = new SlotLayout(aPanel("P").slots(42).sequential().build(), PhaseSystem.THREE_PHASE);
        for (String each : List.of("1 A", "2 A", "3 B", "6 C", "7 A", "10 B", "13 A", "41 C", "42 C")) {
            String[] part = each.split(" ");
            boolean printed = Integer.parseInt(part[0]) <= 12;
            phase("alternating, slot " + part[0], part[1], three, Integer.parseInt(part[0]), 1, printed ? rows : byRow);
        }
        phase("alternating, three poles from slot 1", "A B C", three, 1, 3, byRow);
        phase("alternating, three poles from slot 3", "B C A", three, 3, 3, byRow);
        String sameSide = "the same article: 7, 9, 11 on the left and 8, 10, 12 on the right";
        span("alternating, three poles from slot 7", "7 9 11", three, 7, 3, sameSide);
        span("alternating, three poles from slot 8", "8 10 12", three, 8, 3, sameSide);
        span("alternating, three poles from slot 5", "5 7 9", three, 5, 3, "mikeholt.com thread 1743027");
        phase("split-phase, slot 5", "A", two, 5, 1, BY_HAND + ": phase = (row − 1) mod 2");
        phase("split-phase, two poles from slot 1", "A B", two, 1, 2, BY_HAND + ": phase = (row − 1) mod 2");
        String comb = "from memory: a comb busbar repeats L1, L2, L3 module by module";
        phase("sequential, slot 4", "A", rail, 4, 1, comb);
        phase("sequential, three poles from slot 2", "B C A", rail, 2, 3, comb);
    }

    private void unity(double a, double b, double c, double expected, double tolerance, String source) {
        double ours = loads(PhaseSystem.THREE_PHASE, 0, new double[] {a, b, c}, new double[] {1, 1, 1});
        neutral(plain(a) + ", " + plain(b) + ", " + plain(c) + " A, unity", expected, tolerance, ours, source);
    }

    private void neutral(String inputs, double expected, double tolerance, double ours, String source) {
        add(Check.number(NEUTRAL, "neutral current", inputs, expected, tolerance, "A", ours, source));
    }

    private void ratio(double third, double expected, double tolerance, String source) {
        double ours = loads(PhaseSystem.THREE_PHASE, third, new double[] {1, 1, 1}, new double[] {1, 1, 1});
        add(Check.number(
                TRIPLEN,
                "neutral over line current",
                "balanced, third harmonic " + third,
                expected,
                tolerance,
                "",
                ours,
                source));
    }

    private void split(String inputs, double expected, double ours) {
        add(Check.number(
                SPLIT, "neutral current", inputs, expected, 0.001, "A", ours, BY_HAND + ": |I1 − I2| by phasor"));
    }

    private void imbalance(double expected, double tolerance, String source, double... phases) {
        String inputs = plain(phases[0]) + ", " + plain(phases[1]) + ", " + plain(phases[2]);
        double ours = Imbalance.of(phases).percent();
        add(Check.number(IMBALANCE, "imbalance", inputs, expected, tolerance, "%", ours, source));
    }

    private void phase(String inputs, String expected, SlotLayout layout, int slot, int poles, String source) {
        String ours = layout.span(slot, poles).stream()
                .map(layout::phase)
                .map(Phase::name)
                .collect(Collectors.joining(" "));
        add(Check.text(SLOTS, "phases", inputs, expected, ours, source));
    }

    private void span(String inputs, String expected, SlotLayout layout, int slot, int poles, String source) {
        String ours = layout.span(slot, poles).stream().map(String::valueOf).collect(Collectors.joining(" "));
        add(Check.text(SLOTS, "slots", inputs, expected, ours, source));
    }

    private void add(Check check) {
        checks.add(check);
    }

    private static double loads(PhaseSystem system, double third, double[] amps, double[] powerFactors) {
        NeutralCurrent neutral = new NeutralCurrent(system);
        for (int i = 0; i < amps.length; i++) {
            neutral.add(Phase.values()[i], amps[i], Lag.behind(powerFactors[i]), third);
        }
        return neutral.amps();
    }

    private static double worst(double amps, double third) {
        return WorstNeutral.of(PhaseSystem.THREE_PHASE.phases().stream()
                        .map(phase -> NeutralCurrent.share(PhaseSystem.THREE_PHASE, phase, amps, Lag.NONE, third))
                        .toList())
                .amps();
    }

    private static double phasors(PhaseSystem system, double[] amps, double[] lags) {
        NeutralCurrent neutral = new NeutralCurrent(system);
        for (int i = 0; i < amps.length; i++) {
            neutral.addFundamental(Phase.values()[i], amps[i], new Lag(lags[i]));
        }
        return neutral.amps();
    }

    private static double ofTwoPoleLoad(double lineAmps) {
        NodeFigures supply = Referee.judge(
                        aProject()
                                .loads(aLoad("L1").unswitched().twoPole().runningAmps(lineAmps))
                                .build(),
                        aPlan().assignments(anAssignment("L1").at("P1", 1)).build())
                .nodes()
                .get(0);
        return supply.neutralAmps();
    }

    private static String plain(double number) {
        return number == Math.rint(number) ? Long.toString((long) number) : Double.toString(number);
    }
}
