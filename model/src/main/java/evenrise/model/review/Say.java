package evenrise.model.review;

import java.util.Locale;

/** Puts figures into the words of a remark, the same on every machine. */
final class Say {
    private Say() {}

    static String amps(double amps) {
        return String.format(Locale.ROOT, "%.2f A", amps);
    }

    static String percent(double percent) {
        return String.format(Locale.ROOT, "%.1f %%", percent);
    }

    static String watts(double watts) {
        return String.format(Locale.ROOT, "%.0f W", watts);
    }

    static String quoted(String id) {
        return "'" + id + "'";
    }

    /** The supply or a panel, as messages call it. */
    static String node(String node) {
        return node.equals(evenrise.model.rules.NodeFigures.SUPPLY) ? "the supply" : "panel " + quoted(node);
    }
}
