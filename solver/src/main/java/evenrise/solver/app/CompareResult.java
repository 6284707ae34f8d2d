package evenrise.solver.app;

import evenrise.model.plan.Plan;
import evenrise.solver.compare.ScenarioResult;
import evenrise.solver.compare.Scenarios;
import evenrise.solver.compare.UnbeatenScenarios;
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
    private final List<Scenarios.Cell> cells;
    private final List<ScenarioResult> findings;
    private final boolean wasCancelled;

    CompareResult(
            String project,
            String currency,
            List<Scenarios.Cell> cells,
            List<ScenarioResult> findings,
            boolean wasCancelled) {
        this.project = project;
        this.currency = currency;
        this.cells = List.copyOf(cells);
        this.findings = List.copyOf(findings);
        this.wasCancelled = wasCancelled;
    }

    /** Whether some scenario has a plan that keeps every hard rule. */
    public boolean isAnySound() {
        return findings.stream().anyMatch(ScenarioResult::isSound);
    }

    /** The plan of the cheapest scenario that keeps every hard rule. */
    public Optional<Plan> cheapest() {
        return UnbeatenScenarios.cheapest(findings).map(ScenarioResult::plan);
    }

    /** Its price, of everything that has one. */
    public OptionalDouble leastPrice() {
        return UnbeatenScenarios.cheapest(findings)
                .map(each -> OptionalDouble.of(each.scenario().price()))
                .orElse(OptionalDouble.empty());
    }

    /** Plans found, those that break hard rules among them. */
    public List<Plan> plans() {
        return findings.stream().map(ScenarioResult::plan).toList();
    }

    public boolean wasCancelled() {
        return wasCancelled;
    }

    @Override
    public List<String> text(TextStyle style) {
        return CompareText.lines(project, currency, cells, findings, style.paint());
    }
}
