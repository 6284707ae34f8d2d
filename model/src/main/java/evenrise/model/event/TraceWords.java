package evenrise.model.event;

import evenrise.model.contract.Decimals;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import java.util.Locale;

/** Figures in the words of a trace, the same on every machine. */
final class TraceWords {
    private TraceWords() {}

    static String number(double value) {
        return Decimals.toThousandths(value);
    }

    static String seconds(double value) {
        return number(value) + " s";
    }

    /** The supply, a panel or a node, as messages call it. */
    static String place(Layout layout, String node) {
        if (node.equals(NodeFigures.SUPPLY)) {
            return "the supply";
        }
        return (layout.index().panel(node).isPresent() ? "panel " : "node ") + node;
    }

    static String amps(double value) {
        return String.format(Locale.ROOT, "%.1f A", value);
    }

    /** A current beside the one that it is held against: as many digits as tell the two apart. */
    static String amps(double value, double beside) {
        return Decimals.apart(value, beside, 1) + " A";
    }

    static String counted(long count, String noun) {
        return count + " " + noun + (count == 1 ? "" : "s");
    }
}
