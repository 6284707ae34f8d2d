package evenrise.model.simulation;

import java.util.List;

/**
 * Loads that come on in order behind one source.
 *
 * @param sourceOhms of each phase; {@code sourceHenry} as well
 */
record Scene(String name, String inWords, int phases, double sourceOhms, double sourceHenry, List<Closing> closings) {
    /** @param nominalSeconds near which the load closes, at its worst point of the wave */
    record Closing(Device device, int phase, double nominalSeconds) {
        double closesSeconds() {
            return device.worstAt(phase, nominalSeconds);
        }
    }

    static final double LAST_SECONDS = 1.6;

    private static Closing at(Device device, int phase, double seconds) {
        return new Closing(device, phase, seconds);
    }

    static List<Scene> all() {
        return List.of(
                new Scene(
                        "stiff-together",
                        "four amplifiers at once, 0.05 Ω",
                        1,
                        0.05,
                        0,
                        List.of(
                                at(Device.AMPLIFIER, 1, 0.1),
                                at(Device.AMPLIFIER, 1, 0.1),
                                at(Device.AMPLIFIER, 1, 0.1),
                                at(Device.AMPLIFIER, 1, 0.1))),
                new Scene(
                        "stiff-in-turn",
                        "processor, then three amplifiers 0.25 s apart, 0.05 Ω",
                        1,
                        0.05,
                        0,
                        List.of(
                                at(Device.PROCESSOR, 1, 0.1),
                                at(Device.AMPLIFIER, 1, 0.35),
                                at(Device.AMPLIFIER, 1, 0.6),
                                at(Device.AMPLIFIER, 1, 0.85))),
                new Scene(
                        "weak-in-turn",
                        "the same behind 0.6 Ω and 1 mH",
                        1,
                        0.6,
                        1e-3,
                        List.of(
                                at(Device.PROCESSOR, 1, 0.1),
                                at(Device.AMPLIFIER, 1, 0.35),
                                at(Device.AMPLIFIER, 1, 0.6),
                                at(Device.AMPLIFIER, 1, 0.85))),
                new Scene(
                        "transformers-in-turn",
                        "three transformers 0.25 s apart, 0.1 Ω",
                        1,
                        0.1,
                        0,
                        List.of(
                                at(Device.TRANSFORMER, 1, 0.1),
                                at(Device.TRANSFORMER, 1, 0.35),
                                at(Device.TRANSFORMER, 1, 0.6))),
                new Scene(
                        "mixed-behind-a-weak-source",
                        "transformer, processor, two amplifiers at once behind 0.3 Ω and 2 mH",
                        1,
                        0.3,
                        2e-3,
                        List.of(
                                at(Device.TRANSFORMER, 1, 0.1),
                                at(Device.PROCESSOR, 1, 0.35),
                                at(Device.AMPLIFIER, 1, 0.6),
                                at(Device.AMPLIFIER, 1, 0.6))),
                new Scene(
                        "three-phases",
                        "an amplifier on each phase in turn, then a second one on each at once, 0.2 Ω",
                        3,
                        0.2,
                        0,
                        List.of(
                                at(Device.AMPLIFIER, 1, 0.1),
                                at(Device.AMPLIFIER, 2, 0.35),
                                at(Device.AMPLIFIER, 3, 0.6),
                                at(Device.AMPLIFIER, 1, 0.85),
                                at(Device.AMPLIFIER, 2, 0.85),
                                at(Device.AMPLIFIER, 3, 0.85))));
    }

    Circuit circuit() {
        Circuit circuit = new Circuit(name, phases, sourceOhms, sourceHenry, 0);
        closings.forEach(each -> each.device().add(circuit, each.phase(), each.closesSeconds()));
        return circuit;
    }
}
