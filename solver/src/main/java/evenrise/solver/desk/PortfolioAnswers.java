package evenrise.solver.desk;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** What windows are told of portfolios. */
public final class PortfolioAnswers {
    private PortfolioAnswers() {}

    /** @param stores folders with a portfolio's table, from the project's file; empty for the folder itself */
    public record StoresView(List<String> stores) {}

    /**
     * A plan of a portfolio.
     *
     * @param key by which it is opened; empty where there is no plan
     */
    public record StoredPlanView(
            String project,
            String variant,
            int seed,
            OptionalDouble price,
            OptionalDouble objective,
            OptionalDouble gapPercent,
            OptionalDouble peakInrushAmps,
            OptionalDouble supplyImbalancePercent,
            OptionalDouble durationSeconds,
            OptionalInt hardRulesBroken,
            OptionalInt limitsBroken,
            Optional<String> key,
            Optional<String> failure) {}

    public record StoreView(String store, List<StoredPlanView> plans) {}

    /**
     * What became of a plan that was to be opened.
     *
     * @param isOpened whether it lies on the desk; else nothing was changed
     * @param words what was done, or what is asked
     * @param choice what is done once it is confirmed; empty where it was done
     */
    public record OpenedPlan(boolean isOpened, String words, String choice) {}
}
