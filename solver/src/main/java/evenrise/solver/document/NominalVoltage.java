package evenrise.solver.document;

import evenrise.model.electrical.LinePower;
import evenrise.model.project.PhaseSystem;
import evenrise.model.rules.Distribution.Point;
import java.util.List;

/** The voltages of a system as a schedule's head has them: {@code 120/208 V, 3-phase, 4-wire}. */
final class NominalVoltage {
    /** Between lines, where √3 times the voltage to neutral is called otherwise: IEC 60038 table 1, from memory. */
    private static final List<Integer> BETWEEN_LINES = List.of(208, 400, 480, 600, 690);

    private static final double NEAR = 0.01;

    private NominalVoltage() {}

    static String of(Point point) {
        String neutral = Unrounded.rated(point.lineToNeutralVolts());
        return switch (point.system()) {
            case THREE_PHASE -> neutral + "/" + betweenLines(point) + " V, 3-phase, 4-wire";
            case SPLIT_PHASE -> neutral + "/" + betweenLines(point) + " V, 1-phase, 3-wire";
            case SINGLE_PHASE -> neutral + " V, 1-phase, 2-wire";
        };
    }

    /** The same in words of a language. */
    static String in(SheetWords words, Point point) {
        return words.voltage(of(point));
    }

    /** {@code 120/208 V, 3 ph}: the same in few words. */
    static String words(Point point) {
        String whole = of(point);
        return whole.substring(0, whole.indexOf("-")) + " ph";
    }

    private static String betweenLines(Point point) {
        double volts = LinePower.voltAmpsPerAmp(point.system(), 2, point.lineToNeutralVolts());
        return BETWEEN_LINES.stream()
                .filter(named -> point.system() == PhaseSystem.THREE_PHASE && Math.abs(named - volts) < NEAR * volts)
                .map(String::valueOf)
                .findFirst()
                .orElseGet(() -> String.valueOf(Math.round(volts)));
    }
}
