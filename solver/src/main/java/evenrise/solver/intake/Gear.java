package evenrise.solver.intake;

import evenrise.model.project.Role;
import evenrise.solver.table.HeaderWords;
import java.util.regex.Pattern;

/**
 * What a piece is, by the words of its role and name in English, German, French and Spanish, and the figures that are usual
 * for it where a list says nothing. All figures are common practice, no source, and are marked as guessed.
 */
enum Gear {
    /** Starts an operating system: computers, servers, consoles, network switches. */
    COMPUTER(
            new Usual(0.95, 0.9, 15, 3, 0.3, 120),
            "computer|pc|server|recorder|console|mixer|mixing|switch|router|network|rechner|pult|netzwerk|serveur|ordinateur|reseau|servidor|ordenador|red|consola"),
    /** Starts in its firmware's time: receivers, stage boxes, clocks. */
    SMALL_PROCESSING(
            new Usual(0.95, 0.9, 15, 3, 0.3, 30),
            "receiver|transmitter|clock|stage"
                    + " ?box|intercom|antenna|empfanger|sender|recepteur|emetteur|receptor|transmisor"),
    /** Any other processing. */
    PROCESSING(new Usual(0.95, 0.9, 15, 3, 0.3, 60), ""),
    /** Its transformer's inrush lasts for cycles. */
    TOROID_AMPLIFIER(new Usual(0.95, 0.15, 20, 10, 0.3, 0), "toroid|toroidal|linear|ringkern|torique|toroidale"),
    AMPLIFIER(new Usual(0.95, 0.15, 10, 3, 0.3, 0), ""),
    /** Started across the line: locked rotor for the run-up, no third harmonic. */
    MOTOR(
            new Usual(0.8, 1, 6, 300, 0, 0),
            "motors?|hoists?|winch(es)?|fans?|blower|pumps?|turntable|revolve|curtain"
                    + " motor|lift|elevator|compressor|motoren|winden?|seilwinde|kettenzuge?|prospektzuge?|drehbuhne|lufter|ventilator|pumpe|aufzug|drehscheibe|moteurs?|palans?|treuils?|ventilateur|pompe|ascenseur|polipastos?|cabrestantes?|ventilador|bomba|ascensor|montacargas"),
    /** A distribution transformer of its own, not one inside a piece of gear. */
    TRANSFORMER(
            new Usual(0.95, 1, 12, 30, 0.3, 0),
            "transformer|transformator|trafo|step ?down|isolation transformer|transformateur|transformador"),
    /** Cold filaments take a dozen times their current for some cycles; no harmonics. */
    TUNGSTEN(
            new Usual(1, 1, 12, 20, 0, 0),
            "tungsten|halogen|incandescent|par"
                    + " ?(56|64|38)|quartz|gluhlampen?|halogenlampen?|gluhlicht|halogene|incandescente?s?|halogena"),
    /** Resistance. */
    HEATER(
            new Usual(1, 1, 1, 10, 0, 0),
            "heaters?|heating|dryer|oven|kettle|heizung|heizer|ofen|trockner|chauffage|radiateur|calefactor|calefaccion|secador"),
    /** Everything behind a power supply that rectifies. */
    ELECTRONICS(new Usual(0.95, 1, 15, 3, 0.3, 0), "");

    /**
     * @param idleRatio idle over running current
     * @param inrushRatio crest at switch-on over the crest of the running current
     * @param settleSeconds until what depends on it may follow
     */
    record Usual(
            double powerFactor,
            double idleRatio,
            double inrushRatio,
            double halfMillis,
            double thirdHarmonic,
            double settleSeconds) {
        double inrushPeakAmps(double runningAmps) {
            return Math.sqrt(2) * inrushRatio * runningAmps;
        }
    }

    private static final Pattern LED = Pattern.compile("\\bled\\b");

    private final Usual usual;
    private final Pattern words;

    Gear(Usual usual, String words) {
        this.usual = usual;
        this.words = Pattern.compile("\\b(" + (words.isEmpty() ? "(?!)" : words) + ")\\b");
    }

    Usual usual() {
        return usual;
    }

    /** Where its inrush comes from, and what published pages tell of such gear. */
    String inrushSource() {
        return switch (this) {
            case COMPUTER, SMALL_PROCESSING, PROCESSING, AMPLIFIER, ELECTRONICS ->
                "common practice, no source; told are 30 to 60 times for supplies without a limiter, for less than a"
                        + " millisecond (utilitiesbunker.com), up to 100 times for drivers of LED (trilux.com)";
            case TOROID_AMPLIFIER ->
                "common practice, no source; told are 10 or 30 times by the shape of the core, most for toroids"
                        + " (avellindberg.com)";
            case TRANSFORMER ->
                "common practice, no source; told are 3 to 14 times the rated current, 10 or 30 by the shape of the"
                        + " core (avellindberg.com)";
            case MOTOR -> "common practice, no source; the nameplate's code letter tells (NEC 430.7(B))";
            case TUNGSTEN, HEATER -> "common practice, no source";
        };
    }

    /** @param text of role and name */
    static Gear of(Role role, String text) {
        String plain = HeaderWords.words(text);
        return switch (role) {
            case PROCESSING ->
                SMALL_PROCESSING.isIn(plain) ? SMALL_PROCESSING : COMPUTER.isIn(plain) ? COMPUTER : PROCESSING;
            case AMPLIFIER -> TOROID_AMPLIFIER.isIn(plain) ? TOROID_AMPLIFIER : AMPLIFIER;
            case AUXILIARY -> auxiliary(plain);
        };
    }

    private static Gear auxiliary(String plain) {
        if (!LED.matcher(plain).find()) {
            for (Gear gear : new Gear[] {MOTOR, TRANSFORMER, TUNGSTEN, HEATER}) {
                if (gear.isIn(plain)) {
                    return gear;
                }
            }
        }
        return ELECTRONICS;
    }

    private boolean isIn(String plain) {
        return words.matcher(plain).find();
    }
}
