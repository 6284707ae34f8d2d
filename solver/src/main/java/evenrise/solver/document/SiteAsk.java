package evenrise.solver.document;

import evenrise.model.contract.Figures;
import evenrise.model.measured.Allowed;
import java.util.Locale;
import java.util.OptionalDouble;

/**
 * One figure that is to be read on site.
 *
 * @param key of the readings file; of places after the phase and a point where it is of one phase
 * @param label with its unit
 * @param planned in words, with what it may be
 * @param floor as {@link Allowed} has it, and so the three after it
 * @param error which of the meter's errors counts: none, current or time
 * @param greatest what can be at all: more is a slip
 */
public record SiteAsk(
        String key,
        String label,
        String planned,
        OptionalDouble floor,
        OptionalDouble least,
        OptionalDouble most,
        OptionalDouble limit,
        String error,
        double greatest) {
    static SiteAsk of(String key, String label, String planned, Allowed allowed, double greatest) {
        return new SiteAsk(
                key,
                label,
                planned,
                allowed.floor(),
                allowed.least(),
                allowed.most(),
                allowed.limit(),
                allowed.error().name().toLowerCase(Locale.ROOT),
                greatest);
    }

    /** Of which nothing is planned, so that nothing is judged. */
    static SiteAsk unjudged(String key, String label, double greatest) {
        OptionalDouble none = OptionalDouble.empty();
        return new SiteAsk(key, label, "not limited", none, none, none, none, "none", greatest);
    }

    /** {@code 0.9 to 1.5 A}. */
    static String range(String unit, double least, double most) {
        String from = Figures.THOUSANDTHS.in(unit, Math.max(0, least));
        return from.substring(0, from.length() - unit.length() - 1) + " to " + Figures.THOUSANDTHS.in(unit, most);
    }
}
