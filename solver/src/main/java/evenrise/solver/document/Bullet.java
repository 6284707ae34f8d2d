package evenrise.solver.document;

import evenrise.model.contract.Decimals;

/**
 * A figure beside what it is held against, to be drawn as a bar of its limit with the distance written.
 *
 * @param unit of both
 * @param limit 0 where none is stated; then nothing is drawn
 */
public record Bullet(double figure, double limit, String unit) {
    /** Length of the drawing, as a percentage of the limit: what is over a limit goes on beyond its mark. */
    public static final int LONGEST = 125;

    private static final double NEGLIGIBLE = 1e-6;

    static Bullet of(Margin margin) {
        return new Bullet(margin.figure(), margin.limit(), margin.unit());
    }

    public boolean hasLimit() {
        return limit > 0;
    }

    public boolean isOver() {
        return hasLimit() && figure > limit + NEGLIGIBLE;
    }

    /** As a percentage of the limit, cut at the end of the drawing. */
    public String length() {
        return Decimals.fixed(hasLimit() ? Math.min(LONGEST, usedPercent()) : 0, 1);
    }

    double usedPercent() {
        return hasLimit() ? 100 * figure / limit : 0;
    }

    /** Never rounded onto its limit. */
    public String shown() {
        return Decimals.apart(figure, limit, 1) + (hasLimit() ? "" : " " + unit);
    }

    /** What it is held against and how far it is from it. */
    public String distance() {
        return hasLimit()
                ? "of " + Unrounded.rated(limit) + " " + unit + ", " + distanceAlone() + (isOver() ? " over" : " left")
                : "no limit stated";
    }

    /** With as many decimals as the figure beside its limit. */
    private String distanceAlone() {
        String text = shown();
        int point = text.indexOf('.');
        return Decimals.fixed(Math.abs(limit - figure), point < 0 ? 0 : text.length() - point - 1);
    }
}
