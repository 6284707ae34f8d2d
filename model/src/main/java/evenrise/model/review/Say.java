package evenrise.model.review;

import evenrise.model.contract.Decimals;
import evenrise.model.project.Load;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;

/** Puts figures into the words of a remark, the same on every machine. */
final class Say {
    private static final int MOST_NAMED = 5;

    private Say() {}

    static String amps(double amps) {
        return String.format(Locale.ROOT, "%.2f A", amps);
    }

    static String percent(double percent) {
        return String.format(Locale.ROOT, "%.1f %%", percent);
    }

    /** A current beside the one that it is held against: as many digits as tell the two apart. */
    static String amps(double amps, double beside) {
        return Decimals.apart(amps, beside, 2) + " A";
    }

    /** A percentage beside the one that it is held against. */
    static String percent(double percent, double beside) {
        return Decimals.apart(percent, beside, 1) + " %";
    }

    static String kva(double kva) {
        return Decimals.toThousandths(kva) + " kVA";
    }

    /** A number without a unit beside the one that it is held against. */
    static String number(double number, double beside) {
        return Decimals.apart(number, beside, 2);
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

    /** The first few by name, the rest counted. */
    static String named(List<Load> loads) {
        String first =
                loads.stream().limit(MOST_NAMED).map(load -> quoted(load.id())).collect(Collectors.joining(", "));
        return loads.size() > MOST_NAMED ? first + " and " + (loads.size() - MOST_NAMED) + " more" : first;
    }
}
