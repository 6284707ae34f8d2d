package evenrise.solver.sample;

import static evenrise.model.project.Role.AMPLIFIER;
import static evenrise.model.project.Role.AUXILIARY;
import static evenrise.model.project.Role.PROCESSING;

import java.util.List;

/**
 * The kinds of equipment of a drawn venue. Three kinds of inrush: rectifiers charge within 1 to 5 ms, transformers
 * magnetise within 20 to 60 ms, soft starts and drives take 300 to 900 ms. Figures: invented, in the range of common
 * practice, no source.
 */
final class EquipmentKinds {
    private static final Range NONE = new Range(0, 0);
    private static final Range RECTIFIER = new Range(1, 5);
    private static final Range TRANSFORMER = new Range(20, 60);
    private static final Range SOFT_START = new Range(300, 900);

    static final Kit CORE_SWITCH = processing("core network switch", 1.2, 2.0, 3, 4);
    static final Kit SWITCH = processing("network switch", 0.5, 1.1, 4, 6);
    static final Kit PROCESSOR = processing("audio processor", 1.2, 2.6, 5, 8);

    static final List<Kit> PROCESSING_KITS = List.of(
            processing("stage box", 0.8, 1.8, 3, 5),
            processing("wireless receiver rack", 1.4, 2.8, 4, 7),
            processing("intercom rack", 0.8, 1.6, 4, 8),
            processing("camera control rack", 1.6, 3.4, 3, 6),
            processing("show control computer", 1.2, 2.4, 4, 8));

    private static final Kit FOLLOW_SPOT = auxiliary("follow spot", 1, 20, 6, 11, 0.12, 0.97, 0.15, 4, SOFT_START);
    private static final Kit PROJECTOR = auxiliary("projector", 2, 20, 6, 12, 0.15, 0.96, 0.1, 3.5, SOFT_START);

    /** What has a lamp that cools before it goes off. */
    static final List<Kit> COOLS = List.of(FOLLOW_SPOT, PROJECTOR);

    static final List<Kit> AUXILIARY_KITS = List.of(
            auxiliary("programme displays", 1, 20, 2, 6, 0.9, 0.95, 0.35, 15, RECTIFIER),
            auxiliary("picture monitors", 1, 20, 1.5, 4, 0.9, 0.95, 0.4, 16, RECTIFIER),
            auxiliary("lighting network rack", 1, 20, 1.2, 3, 0.95, 0.93, 0.42, 18, RECTIFIER),
            auxiliary("desk lights", 1, 20, 3, 7, 1.0, 0.98, 0.08, 11, TRANSFORMER),
            FOLLOW_SPOT,
            PROJECTOR,
            auxiliary("hoist controller", 3, 30, 6, 14, 0.1, 0.88, 0, 3.5, SOFT_START));

    static final List<Kit> DISPLAY_KITS = List.of(
            auxiliary("ribbon display supply", 2, 20, 6, 11, 0.25, 0.97, 0.12, 12, RECTIFIER),
            auxiliary("scoreboard supply", 1, 20, 5, 10, 0.25, 0.97, 0.2, 12, RECTIFIER));

    static final Kit MAIN_ARRAY = amplifier("main array amplifier", 2, 30, 6, 11, 0.2, 14, RECTIFIER);

    static final List<Kit> AMPLIFIER_KITS = List.of(
            amplifier("upper tier amplifier", 1, 20, 4, 8, 0.48, 14, RECTIFIER),
            amplifier("lower tier amplifier", 1, 20, 4, 8, 0.48, 14, RECTIFIER),
            MAIN_ARRAY,
            amplifier("subwoofer amplifier", 2, 30, 7, 12, 0.2, 13, RECTIFIER),
            amplifier("delay ring amplifier", 1, 20, 3, 7, 0.42, 17, TRANSFORMER),
            amplifier("concourse ceiling amplifier", 1, 20, 2, 5, 0.42, 18, TRANSFORMER),
            amplifier("press gallery amplifier", 1, 20, 1.5, 4, 0.42, 18, TRANSFORMER));

    static final Kit CALL_AMPLIFIER = amplifier("call amplifier", 1, 20, 1.5, 4, 0.42, 18, TRANSFORMER);

    static final List<Kit> ALWAYS_ON_KITS = List.of(
            steady("cabinet fans", 1, 0.5, 1.5, 0.85, 0),
            steady("service outlets", 1, 3, 7, 0.97, 0.2),
            steady("battery chargers", 1, 1.5, 4, 0.92, 0.5),
            steady("cooling unit", 3, 4, 9, 0.85, 0));

    private EquipmentKinds() {}

    private static Kit processing(String name, double from, double to, double settleFrom, double settleTo) {
        return new Kit(
                name,
                PROCESSING,
                1,
                20,
                new Range(from, to),
                0.9,
                0.93,
                0.45,
                22,
                RECTIFIER,
                new Range(settleFrom, settleTo));
    }

    private static Kit auxiliary(
            String name,
            int poles,
            double breaker,
            double from,
            double to,
            double idleRatio,
            double powerFactor,
            double thirdHarmonic,
            double peakRatio,
            Range half) {
        return new Kit(
                name,
                AUXILIARY,
                poles,
                breaker,
                new Range(from, to),
                idleRatio,
                powerFactor,
                thirdHarmonic,
                peakRatio,
                half,
                NONE);
    }

    private static Kit amplifier(
            String name,
            int poles,
            double breaker,
            double from,
            double to,
            double thirdHarmonic,
            double peakRatio,
            Range half) {
        return new Kit(
                name, AMPLIFIER, poles, breaker, new Range(from, to), 0.22, 0.92, thirdHarmonic, peakRatio, half, NONE);
    }

    private static Kit steady(
            String name, int poles, double from, double to, double powerFactor, double thirdHarmonic) {
        return new Kit(
                name,
                AUXILIARY,
                poles,
                20,
                new Range(from, to),
                1,
                powerFactor,
                thirdHarmonic,
                Math.sqrt(2),
                new Range(10, 10),
                NONE);
    }
}
