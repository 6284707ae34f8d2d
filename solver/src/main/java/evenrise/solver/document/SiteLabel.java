package evenrise.solver.document;

import java.util.List;

/**
 * One label, before anybody knows how large it is.
 *
 * @param lines in the order of their worth
 * @param anchor what the page shows of it, as the end of a link: {@code load=AMP-7}
 */
public record SiteLabel(List<Line> lines, String anchor) {
    public SiteLabel {
        lines = List.copyOf(lines);
    }

    /**
     * @param isStrong whether it is larger and bold
     * @param mayBeCut whether it is cut, or left out, where there is no room for it
     */
    public record Line(String text, boolean isStrong, boolean mayBeCut) {
        static Line strong(String text) {
            return new Line(Plain.text(text, LONGEST), true, false);
        }

        static Line needed(String text) {
            return new Line(Plain.text(text, LONGEST), false, false);
        }

        static Line beside(String text) {
            return new Line(Plain.text(text, LONGEST), false, true);
        }
    }

    private static final int LONGEST = 200;
}
