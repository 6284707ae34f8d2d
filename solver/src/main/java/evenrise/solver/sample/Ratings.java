package evenrise.solver.sample;

import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Transformer;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.PhasePeak;
import java.util.List;

/** Sizes and ratings, each the next common one above what a layout draws. Common practice, no source. */
final class Ratings {
    /** Stands in until the layout's currents are known. */
    static final double UNKNOWN_AMPS = 100_000;

    /** Part of a rating that continuous current may use. */
    static final double CONTINUOUS_FRACTION = 0.8;

    private static final double SPARE = 1.1;
    private static final double ROOMY = 1.4;

    /** Up to which the instantaneous trip of a moulded-case device holds, of its rating; invented. */
    static final double HOLDS = 8;

    /** The same of a main device with a trip of its own setting; invented. */
    static final double MAIN_HOLDS = 16;

    private static final List<Integer> SLOTS = List.of(12, 18, 24, 30, 42, 54, 66, 72, 84, 96);
    private static final List<Integer> AMPS = List.of(
            60, 80, 100, 125, 150, 200, 225, 250, 300, 400, 500, 600, 800, 1000, 1200, 1600, 2000, 2500, 3000, 4000,
            5000);
    private static final List<Double> KVA = List.of(
            15.0, 30.0, 45.0, 75.0, 112.5, 150.0, 225.0, 300.0, 500.0, 750.0, 1000.0, 1500.0, 2000.0, 2500.0, 3000.0,
            5000.0);
    private static final List<Double> SINGLE_KVA = List.of(5.0, 10.0, 15.0, 25.0, 37.5, 50.0, 75.0, 100.0, 167.0);
    private static final double PROTECTED = 1.25;
    /** Peak at switch-on over rated primary current, rms; invented. */
    private static final double ENERGISING = 7;

    private static final int BEYOND_STEP_AMPS = 1000;
    private static final int LIMIT_STEP_AMPS = 10;

    private Ratings() {}

    /** The smallest common panel with that many slots. */
    static int slots(int needed) {
        return SLOTS.stream().filter(slots -> slots >= needed).findFirst().orElseThrow();
    }

    /** The smallest common rating that carries the node's running current with a tenth to spare. */
    static double ratedAmps(NodeFigures node) {
        return ratedAmps(node, SPARE);
    }

    /** The same with room to grow. */
    static double roomyAmps(NodeFigures node) {
        return ratedAmps(node, ROOMY);
    }

    /** The peak that a device of that rating surely lets pass, rounded down: √2 times the lower end of its instantaneous trip. */
    static double passingAmps(double ratedAmps, double holds) {
        return Math.floor(Math.sqrt(2) * holds * ratedAmps / LIMIT_STEP_AMPS) * LIMIT_STEP_AMPS;
    }

    private static double ratedAmps(NodeFigures node, double spare) {
        double running = node.runningAmps().values().stream()
                .mapToDouble(Double::doubleValue)
                .max()
                .orElse(0);
        double needed = spare * running / CONTINUOUS_FRACTION;
        return AMPS.stream()
                .filter(amps -> amps >= needed)
                .findFirst()
                .orElseGet(() -> roundedUp(needed, BEYOND_STEP_AMPS));
    }

    /** 2 where a neutral of the lines' size would carry nearly its rating; else 1. */
    static double neutralFactor(NodeFigures node, double ratedAmps) {
        return SPARE * node.neutralAmps() > ratedAmps ? 2 : 1;
    }

    /** An inrush limit a little above the node's greatest peak. */
    static double inrushLimitAmps(NodeFigures node) {
        double peak = node.peaks().stream().mapToDouble(PhasePeak::amps).max().orElse(0);
        return roundedUp(SPARE * peak, LIMIT_STEP_AMPS);
    }

    /** The smallest common transformer whose secondary a device of that rating protects at up to 125 % (NEC 450.3(B)). */
    static Transformer built(Transformer open, double ratedAmps) {
        PhaseSystem system = open.secondary().system();
        boolean isThree = system == PhaseSystem.THREE_PHASE;
        double kva = kva(system, open.secondary().lineToNeutralVolts(), ratedAmps / PROTECTED);
        return open.with()
                .ratedKva(kva)
                .impedancePercent(isThree ? 4.5 : 3)
                .xOverR(isThree ? 2 : 1.5)
                .inrushPeakAmps(roundedUp(ENERGISING * primaryAmps(system, kva), LIMIT_STEP_AMPS))
                .inrushHalfMillis(60)
                .kFactor(13)
                .build();
    }

    /** The smallest common transformer of that secondary current. */
    static double kva(PhaseSystem system, double lineToNeutralVolts, double amps) {
        double needed = system.phases().size() * lineToNeutralVolts * amps / 1000;
        return (system == PhaseSystem.THREE_PHASE ? KVA : SINGLE_KVA)
                .stream().filter(each -> each >= needed).findFirst().orElseGet(() -> Math.ceil(needed / 1000) * 1000);
    }

    /** A device before a primary of 480 V: the next above 125 %, below the 250 % that NEC 450.3(B) allows at most. */
    static double primaryDeviceAmps(Transformer transformer) {
        double needed = PROTECTED
                * primaryAmps(
                        transformer.secondary().system(), transformer.ratedKva().orElseThrow());
        return AMPS.stream().filter(amps -> amps >= needed).findFirst().orElseThrow();
    }

    private static double primaryAmps(PhaseSystem system, double kva) {
        return kva * 1000 / (system == PhaseSystem.THREE_PHASE ? 3 * 277 : 480);
    }

    private static int roundedUp(double amps, int step) {
        return (int) Math.ceil(amps / step) * step;
    }
}
