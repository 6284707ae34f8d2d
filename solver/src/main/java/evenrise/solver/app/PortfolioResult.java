package evenrise.solver.app;

import evenrise.solver.portfolio.Lot;
import evenrise.solver.portfolio.Outcome;
import evenrise.solver.report.PortfolioText;
import java.util.List;

/**
 * What the plans of a portfolio come to.
 *
 * @since 0.1.0
 */
public final class PortfolioResult implements Listing {
    private final List<Outcome> outcomes;
    private final int wanted;
    private final int earlier;
    private final int slots;
    private final int moves;
    private final List<String> priceRemarks;
    private final boolean wasCancelled;

    PortfolioResult(
            List<Outcome> outcomes,
            int wanted,
            int earlier,
            int slots,
            int moves,
            List<String> priceRemarks,
            boolean wasCancelled) {
        this.outcomes = List.copyOf(outcomes);
        this.wanted = wanted;
        this.earlier = earlier;
        this.slots = slots;
        this.moves = moves;
        this.priceRemarks = List.copyOf(priceRemarks);
        this.wasCancelled = wasCancelled;
    }

    List<Outcome> outcomes() {
        return outcomes;
    }

    /** What stands with prices. */
    List<String> priceRemarks() {
        return priceRemarks;
    }

    List<Lot> lots() {
        return Lot.of(outcomes);
    }

    /** How many plans were asked for. */
    public int wanted() {
        return wanted;
    }

    /** How many of them were there from earlier runs. */
    public int foundEarlier() {
        return earlier;
    }

    public boolean wasCancelled() {
        return wasCancelled;
    }

    /** Whether something could not be planned at all. */
    public boolean isAnyFailed() {
        return outcomes.stream().anyMatch(each -> each.failure().isPresent());
    }

    /** Whether each project in each variant has a plan that keeps every hard rule. */
    public boolean keepsRules() {
        return lots().stream().allMatch(lot -> lot.best().isPresent());
    }

    /** Whether each has one that breaks no electrical limit, either. */
    public boolean isSound() {
        return lots().stream().allMatch(lot -> lot.sound() > 0);
    }

    String facts() {
        return PortfolioText.facts(outcomes.size(), wanted, earlier, slots, moves);
    }

    @Override
    public List<String> text(TextStyle style) {
        return PortfolioText.lines(lots(), facts(), priceRemarks, style.paint());
    }
}
