package evenrise.solver.document;

import evenrise.model.evaluation.Evaluation;
import java.util.List;

/**
 * Whether it may be built, and how tight it is: what stands first on the page and on the cover.
 *
 * @param places currents against their limits, the tightest first
 * @param otherPlaces how many more there are
 * @param tightest margins of every kind
 * @param otherMargins how many more there are
 * @param events the sequence's peak and those of events against what is allowed
 * @param held for what the limits of peaks are asked to hold
 * @param dip what the voltage does while the sequence runs
 * @param search how good the plan is, and how it was found
 * @param open what rests on guesses or is unchecked
 */
public record Overview(
        List<PlaceLoading> places,
        int otherPlaces,
        List<TightMargin> tightest,
        int otherMargins,
        List<EventLoading> events,
        String held,
        String dip,
        List<Fact> search,
        List<Fact> open) {
    private static final int PLACES = 8;
    private static final int MARGINS = 10;

    /** A margin with its bar. */
    public record TightMargin(Margin margin, Bullet bullet) {}

    static Overview of(Evaluation evaluation, DocumentTable<Margin> margins) {
        List<PlaceLoading> places = PlaceLoading.of(evaluation.layout());
        return new Overview(
                first(places, PLACES),
                Math.max(0, places.size() - PLACES),
                first(margins.rows(), MARGINS).stream()
                        .map(margin -> new TightMargin(margin, Bullet.of(margin)))
                        .toList(),
                Math.max(0, margins.rows().size() - MARGINS),
                EventLoading.of(evaluation.layout()),
                EventLoading.held(evaluation.layout()),
                Quality.dip(evaluation),
                Quality.search(evaluation),
                Quality.open(evaluation));
    }

    private static <T> List<T> first(List<T> all, int most) {
        return all.subList(0, Math.min(most, all.size()));
    }
}
