package evenrise.solver.compare;

import evenrise.solver.compare.Judged.Standing;
import java.util.List;
import java.util.Optional;

/**
 * The cheapest make-up that stands, as far as anybody has looked.
 *
 * @param makeUps by price, from the cheapest that counting allows
 * @param completeBelow every make-up below this price is among them
 * @param wasStopped before all was looked at that was to be
 * @param basis what prices rest on, in sentences: spare, panels and boards that stay, and why
 * @param leftOut kinds that nobody knows the price of
 * @param unpriced what varies and has no price in any make-up
 */
public record LeastPrice(
        List<Judged> makeUps,
        double completeBelow,
        boolean wasStopped,
        List<String> basis,
        List<String> leftOut,
        List<String> unpriced) {
    /** Sums of prices that differ by less are the same. */
    static final double SAME_PRICE = 1e-6;

    public LeastPrice {
        makeUps = List.copyOf(makeUps);
    }

    /** The cheapest with a plan that keeps every rule. */
    public Optional<Judged> cheapest() {
        return makeUps.stream()
                .filter(each -> each.standing() == Standing.SOUND)
                .findFirst();
    }

    /** Whether no make-up below the cheapest that stands is left open. */
    public boolean isProven() {
        return cheapest().isPresent() && openBelow().isEmpty() && undecidedFrom() >= price() - SAME_PRICE;
    }

    /** Below this price no make-up is left open: what every plan that keeps the rules costs at least. */
    public double undecidedFrom() {
        double open = makeUps.stream()
                .filter(LeastPrice::isOpen)
                .mapToDouble(each -> each.makeUp().price())
                .findFirst()
                .orElse(Double.POSITIVE_INFINITY);
        return Math.min(open, completeBelow);
    }

    /** Make-ups below the cheapest that stands of which it is not known whether they do; all open ones where none does. */
    public List<Judged> openBelow() {
        return makeUps.stream()
                .filter(LeastPrice::isOpen)
                .filter(each -> each.makeUp().price() < price() - SAME_PRICE)
                .toList();
    }

    /** How far the cheapest that stands is above what is proven, in percent of it. */
    public double gapPercent() {
        return Math.max(0, 100 * (price() - undecidedFrom()) / price());
    }

    private double price() {
        return cheapest().map(each -> each.makeUp().price()).orElse(Double.POSITIVE_INFINITY);
    }

    private static boolean isOpen(Judged each) {
        return each.standing() == Standing.UNDECIDED || each.standing() == Standing.NOT_LOOKED_AT;
    }
}
