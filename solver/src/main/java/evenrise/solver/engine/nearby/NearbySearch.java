package evenrise.solver.engine.nearby;

import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.Progress;
import evenrise.solver.engine.search.SteeredPlanner;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanMapper;
import evenrise.solver.engine.state.PlanSnapshot;
import evenrise.solver.engine.state.PlanSums;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;

/**
 * Searches around a plan as built: for every number of moves (breakers re-terminated, control leads re-landed) the best
 * plan that so few can reach. Searches side by side anneal under a price per move that falls and rises again, and keep
 * whatever they meet that no plan of fewer moves equals.
 */
public final class NearbySearch {
    private final CompiledProject compiled;
    private final PlanMapper mapper;
    private final PlanSnapshot built;
    private final NearbyArchive archive;
    private final SteeredPlanner planner;
    private final long seed;
    private final Optional<ChangePrices> prices;
    private volatile List<NearbySteering> running = List.of();
    private long tried;

    /** One search, of which nobody is told. */
    public NearbySearch(Project project, Plan built, long seed) {
        this(project, built, seed, progress -> {});
    }

    /** @param built the plan as built, broken or not */
    public NearbySearch(Project project, Plan built, long seed, Consumer<Progress> listener) {
        this(project, built, seed, listener, Optional.empty());
    }

    /** @param prices of changes by kind; without them every move counts the same */
    public NearbySearch(
            Project project, Plan built, long seed, Consumer<Progress> listener, Optional<ChangePrices> prices) {
        this.prices = prices;
        boolean countsMoves = project.objective().move() > 0;
        this.compiled = new CompiledProject(project, false, Optional.of(built).filter(any -> countsMoves));
        this.mapper = new PlanMapper(compiled);
        this.seed = seed;
        PlanSums sums = mapper.toSums(built);
        this.built = sums.snapshot();
        this.archive = new NearbyArchive(compiled);
        this.planner = new SteeredPlanner(compiled, this.built, listener);
        archive.offer(sums, positions());
    }

    private BuiltPositions positions() {
        return new BuiltPositions(PlanSums.of(compiled, built), prices);
    }

    /** Takes a plan from elsewhere into account. */
    public void offer(Plan plan) {
        BuiltPositions positions = positions();
        PlanSums sums = mapper.toSums(plan);
        positions.refreshAll(sums);
        archive.offer(sums, positions);
    }

    /** One search in the calling thread's stead. */
    public void search(Budget budget) {
        search(budget, 1);
    }

    /**
     * Cures what is broken, again and again from the start; goes down the ladder of prices and up again; undoes changes.
     *
     * @param searches side by side, each with a thread, and with the moves of the budget where it counts them
     */
    public void search(Budget budget, int searches) {
        List<NearbySteering> steerings = new ArrayList<>();
        for (int i = 0; i < searches; i++) {
            NearbyArchive own = new NearbyArchive(compiled);
            own.offerAll(archive);
            steerings.add(new NearbySteering(compiled, built, own, prices, seed + 1_000_003L * i));
        }
        running = List.copyOf(steerings);
        tried += planner.search(steerings, budget, seed);
        steerings.forEach(each -> archive.offerAll(each.archive()));
    }

    /** Ends the search soon; what was found stays. */
    public void stop() {
        planner.stop();
    }

    /** Every plan that no plan of fewer moves equals, by rising moves; the first is the plan as built. */
    public List<NearbyPlan> plans() {
        return archive.plans();
    }

    /** The same while the search goes on; any thread may ask. */
    public List<NearbyPlan> plansSoFar() {
        NearbyArchive all = new NearbyArchive(compiled);
        all.offerAll(archive);
        running.forEach(each -> all.offerAll(each.archive()));
        return all.plans();
    }

    /** Changes tried so far. */
    public long tried() {
        return tried;
    }
}
