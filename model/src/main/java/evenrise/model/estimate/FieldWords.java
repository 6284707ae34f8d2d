package evenrise.model.estimate;

import java.util.Map;

/** Fields of a load as people call them: what is printed with a price is read by whoever pays. */
final class FieldWords {
    private static final Map<String, String> WORDS = Map.ofEntries(
            Map.entry("breaker_a", "breaker rating"),
            Map.entry("cable", "cable"),
            Map.entry("circuit", "circuit"),
            Map.entry("crest_factor", "crest factor"),
            Map.entry("curve", "trip band"),
            Map.entry("equipment", "kind of equipment"),
            Map.entry("idle_a", "idle current"),
            Map.entry("inrush_half_ms", "how fast the inrush decays"),
            Map.entry("inrush_peak_a", "inrush current"),
            Map.entry("off_after_s", "off delay"),
            Map.entry("poles", "number of poles"),
            Map.entry("power_factor", "power factor"),
            Map.entry("role", "role"),
            Map.entry("running_a", "running current"),
            Map.entry("settle_s", "settling time"),
            Map.entry("switched", "whether it may be switched"),
            Map.entry("third_harmonic", "third harmonic"));

    private FieldWords() {}

    /** @param key as the file spells it */
    static String of(String key) {
        return WORDS.getOrDefault(
                key, key.replaceAll("_(a|v|s|ms|m|w|pct|hz)$", "").replace('_', ' '));
    }
}
