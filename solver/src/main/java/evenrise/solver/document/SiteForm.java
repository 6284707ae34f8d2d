package evenrise.solver.document;

import evenrise.model.rules.Layout;
import java.util.List;

/**
 * All that is read on site, as somebody walks along the panels, with what each reading may be.
 *
 * @param planSha256 of what the plan places and sets
 * @param usualOfReadingPercent what a meter may be off by of which nothing is stated
 * @param usualSeconds the same of times
 * @param places where somebody stands, in the order of the walk
 */
public record SiteForm(
        String planSha256,
        double usualOfReadingPercent,
        double usualLeastAmps,
        double usualSeconds,
        List<Stop> places,
        List<SiteCard> cards) {
    /**
     * A panel, a node or the supply.
     *
     * @param name for people
     */
    public record Stop(String id, String name) {}

    public SiteForm {
        places = List.copyOf(places);
        cards = List.copyOf(cards);
    }

    public static SiteForm of(Layout layout) {
        return new SiteWalk(layout).form();
    }
}
