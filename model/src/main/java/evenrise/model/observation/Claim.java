package evenrise.model.observation;

import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * What was said, and when by the logger's clock it shows.
 *
 * @param price of that explanation, in squared deviations
 * @param start number of the one it is of; -1 for what no load stands for
 * @param unknown that; null where it is of a start
 */
record Claim(Otherwise what, Set<Double> moments, double price, int start, RecordedStart unknown) {
    /** Both, which may be the same. */
    static Set<Double> moments(double one, double other) {
        return new HashSet<>(List.of(one, other));
    }

    /** All that is said, but for one claim. */
    static Otherwise all(List<Claim> claims, Claim but) {
        Otherwise all = Otherwise.NOTHING;
        for (Claim each : claims) {
            all = each.equals(but) ? all : all.and(each.what());
        }
        return all;
    }
}
