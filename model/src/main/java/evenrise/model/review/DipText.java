package evenrise.model.review;

import java.util.Locale;

/** Says what a switch-on does to a voltage, and how that is known. */
final class DipText {
    private DipText() {}

    /** The phasor figure says its bound, the bound its phasor figure. */
    static String of(Dip dip, DipVerdict.Way way) {
        DipStep step = dip.step();
        boolean isBound = dip.isByBound();
        Dip other = isBound ? step.phasors() : step.bound();
        String text = way == DipVerdict.Way.SWELL
                ? words("swells", dip.risePercent(), 100 + dip.highPercent(), 100 + other.highPercent(), isBound)
                : words("dips", dip.fallPercent(), 100 - dip.lowPercent(), 100 - other.lowPercent(), isBound);
        return step.text() + " " + text;
    }

    private static String words(String verb, double change, double to, double otherTo, boolean isBound) {
        return String.format(
                Locale.ROOT,
                isBound
                        ? "%s by at most %.1f %% to %.1f %% of nominal whatever the angles of inrush (by phasors to"
                                + " %.1f %%)"
                        : "%s by %.1f %% to %.1f %% of nominal by phasors, inrush at the worst angle (bound: to %.1f"
                                + " %%)",
                verb,
                change,
                to,
                otherTo);
    }
}
