package evenrise.solver.app;

import evenrise.model.plan.Plan;
import evenrise.solver.compare.Judged;
import evenrise.solver.compare.LeastPrice;
import evenrise.solver.compare.PriceRange;
import evenrise.solver.compare.ScenarioResult;
import evenrise.solver.compare.Scenarios;
import evenrise.solver.report.CompareText;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * What each number of panels and boards comes to.
 *
 * @since 0.1.0
 */
public final class CompareResult implements Listing {
    private final String project;
    private final String currency;
    private final LeastPrice least;
    private final Optional<PriceRange> range;
    private final List<Scenarios.Cell> cells;
    private final List<ScenarioResult> findings;
    private final boolean wasCancelled;

    CompareResult(
            String project,
            String currency,
            LeastPrice least,
            Optional<PriceRange> range,
            List<Scenarios.Cell> cells,
            List<ScenarioResult> findings,
            boolean wasCancelled) {
        this.project = project;
        this.currency = currency;
        this.least = least;
        this.range = range;
        this.cells = List.copyOf(cells);
        this.findings = List.copyOf(findings);
        this.wasCancelled = wasCancelled;
    }

    /** Whether some make-up has a plan that keeps every hard rule. */
    public boolean isAnySound() {
        return least.cheapest().isPresent() || findings.stream().anyMatch(ScenarioResult::isSound);
    }

    /** A plan of the cheapest make-up of which one was found that keeps every hard rule. */
    public Optional<Plan> cheapest() {
        return least.cheapest().flatMap(Judged::finding).map(ScenarioResult::plan);
    }

    /** Its price, of everything that has one; whether any other stands for less says {@link #isLeastProven}. */
    public OptionalDouble leastPrice() {
        return least.cheapest()
                .map(each -> OptionalDouble.of(each.makeUp().price()))
                .orElse(OptionalDouble.empty());
    }

    /** Whether it is proven that no make-up that is cheaper has a plan that keeps every hard rule. */
    public boolean isLeastProven() {
        return least.isProven();
    }

    /** Below this price it is proven that no make-up has a plan that keeps every hard rule. */
    public double undecidedFrom() {
        return Math.min(least.undecidedFrom(), leastPrice().orElse(Double.POSITIVE_INFINITY));
    }

    /**
     * The price that so many percent of the draws do not exceed, without a plan for each; empty where none were drawn or no
     * make-up was found for that many.
     */
    public OptionalDouble drawnPrice(int percent) {
        return range.map(each -> each.percentile(percent)).orElse(OptionalDouble.empty());
    }

    /** Plans found, those that break hard rules among them. */
    public List<Plan> plans() {
        return findings.stream().map(ScenarioResult::plan).toList();
    }

    /** All of it, as whoever listened was told it on the way. */
    public EstimateState estimate() {
        return EstimateState.of(project, currency, least, range, findings);
    }

    public boolean wasCancelled() {
        return wasCancelled;
    }

    @Override
    public List<String> text(TextStyle style) {
        return CompareText.lines(project, currency, least, range, cells, findings, style.paint());
    }
}
