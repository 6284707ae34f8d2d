package evenrise.solver.rework;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;

import evenrise.model.plan.Plan;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.nearby.NearbyPlan;
import evenrise.solver.engine.nearby.NearbySearch;
import evenrise.solver.engine.search.Planner;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;

/** Plants whose loads draw more than they were planned for. */
final class Reworked {
    private Reworked() {}

    /** Three switched loads and another, in four slots on three phases: few enough to look at every plan. */
    static Project tiny(long seed) {
        Random random = new Random(seed * 0x9E3779B97F4A7C15L + 11);
        var project = aProject()
                .name("tiny-" + seed)
                .supply(aSupply().ratedAmps(40))
                .panels(aPanel("P1")
                        .slots(6)
                        .reservedSlots(1 + random.nextInt(6))
                        .ratedAmps(15))
                .boardTypes(aBoardType("T").outputs(4).startDelaySeconds(0, 0.5).stepSeconds(0.25))
                .boards(aBoard("B1").type("T"))
                .objective(ObjectiveWeights.builder()
                        .peakInrush(1)
                        .supplyImbalance(1)
                        .panelImbalance(0.5)
                        .duration(0.1 * random.nextInt(9))
                        .boards(random.nextInt(3))
                        .build());
        for (int i = 1; i <= 3; i++) {
            double running = 4 + random.nextInt(40) / 10.0;
            project.loads(aLoad("L" + i)
                    .role(i == 1 ? Role.PROCESSING : Role.AMPLIFIER)
                    .settleSeconds(i == 1 ? 0.25 : 0)
                    .runningAmps(running)
                    .idleAmps(running / 2)
                    .inrushPeakAmps(running + random.nextInt(60))
                    .inrushHalfMillis(20 + random.nextInt(400)));
        }
        return project.loads(aLoad("L4").unswitched().runningAmps(4 + random.nextInt(30) / 10.0))
                .build();
    }

    static Plan plan(Project project, long moves) {
        PlanningRequest request = new PlanningRequest(project, Optional.empty(), new Budget.Moves(moves), 1, 1);
        return new Planner(request, progress -> {}).plan().plan();
    }

    /** The project with the currents of some loads raised by a part of themselves. */
    static Project raised(Project project, long seed, int loads, double part) {
        Random random = new Random(seed);
        Map<String, Measured.Current> currents = new LinkedHashMap<>();
        for (int i = 0; i < loads; i++) {
            var load = project.loads().get(random.nextInt(project.loads().size()));
            currents.put(
                    load.id(),
                    new Measured.Current(OptionalDouble.of(load.runningAmps() * (1 + part)), OptionalDouble.empty()));
        }
        return new Measured(currents, List.of(), List.of()).in(project);
    }

    /** Around a plan as built, by what changes cost. */
    static NearbySearch search(Project project, Plan built, long seed) {
        return new NearbySearch(
                project,
                built,
                seed,
                progress -> {},
                Optional.of(NightPrices.of(project, built).forSearch()));
    }

    static Front front(Project project, Plan built, long moves) {
        NearbySearch search = search(project, built, 1);
        search.search(new Budget.Moves(moves));
        return Front.of(
                project, built, search.plans().stream().map(NearbyPlan::plan).toList());
    }
}
