package evenrise.model.event;

import java.util.Locale;

/** Figures in the words of a trace, the same on every machine. */
final class Words {
    private Words() {}

    static String number(double value) {
        String text = String.format(Locale.ROOT, "%.3f", value);
        return text.contains(".") ? text.replaceAll("0+$", "").replaceAll("\\.$", "") : text;
    }

    static String seconds(double value) {
        return number(value) + " s";
    }

    static String amps(double value) {
        return String.format(Locale.ROOT, "%.1f A", value);
    }

    static String counted(long count, String noun) {
        return count + " " + noun + (count == 1 ? "" : "s");
    }
}
