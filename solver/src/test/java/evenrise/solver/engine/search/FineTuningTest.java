package evenrise.solver.engine.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.fine.FineHeat;
import evenrise.solver.engine.fine.FineSearch;
import evenrise.solver.engine.state.APhaseShare;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanMapper;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.sample.Sample;
import evenrise.solver.sample.VenueSize;
import java.util.BitSet;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Small changes are judged by what the search judges by, and break no rule. */
class FineTuningTest {
    private static final int CHANGES = 4_000;

    /** After thousands of changes, at each stage of an annealing, hot and cold. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void comeToTheEnergyOfTheSearchAndKeepEveryRule(long seed) {
        Project project = venue(seed);
        CompiledProject compiled =
                new CompiledProject(project, false, Optional.empty(), APhaseShare.drawn(project, seed));
        PlanSums sums = clean(compiled, seed);
        FineSearch fine = new FineSearch(compiled);
        Energy energy = new Energy(compiled);
        SplittableRandom random = new SplittableRandom(seed);

        long changed = 0;
        for (double progress : new double[] {0, 0.3, 0.6, 1}) {
            energy.enterStage(progress);
            energy.temperature(new Cooling(compiled).temperature(progress), new Cooling(compiled).temperature(0));
            fine.take(sums);
            fine.run(CHANGES, energy.heat(), random);
            PlanSums after = plan(fine, compiled);

            assertThat(after.hardCharge()).isZero();
            double unaltered = energy.mixAmps() * after.unlikeness();
            assertThat(fine.energy() + unaltered).isCloseTo(energy.of(after), within(1e-6));
            changed += changes(sums, after);
            sums = after;
        }
        assertThat(changed).isPositive();
    }

    @Test
    void lowerTheEnergyOfAPlanWhenTheyAreCold() {
        CompiledProject compiled = new CompiledProject(venue(4));
        FineSearch fine = new FineSearch(compiled);
        Energy energy = new Energy(compiled);
        double hot = new Cooling(compiled).temperature(0);
        energy.temperature(hot, hot);
        fine.take(clean(compiled, 4));
        fine.run(CHANGES, energy.heat(), new SplittableRandom(3));
        PlanSums melted = plan(fine, compiled);
        energy.enterStage(1);
        energy.temperature(1e-6, 1);
        double before = energy.of(melted);

        fine.take(melted);
        fine.run(CHANGES, energy.heat(), new SplittableRandom(4));

        assertThat(energy.of(plan(fine, compiled))).isLessThan(before);
    }

    /** A limit just above the peak, which hot changes would soon pass. */
    @Test
    void neverPassTheSupplysLimitOnInrush() {
        Project project = venue(5);
        PlanSums free = clean(new CompiledProject(project), 5);
        double limit = free.peakInrushAmps() + 1;
        CompiledProject compiled =
                new CompiledProject(project.withSupply(project.supply().withInrushLimitAmps(OptionalDouble.of(limit))));
        PlanSums sums = PlanSums.of(compiled, free.snapshot());
        assertThat(sums.hardCharge()).isZero();
        FineSearch fine = new FineSearch(compiled);
        Energy energy = new Energy(compiled);
        energy.temperature(new Cooling(compiled).temperature(0), new Cooling(compiled).temperature(0));

        fine.take(sums);
        fine.run(CHANGES, energy.heat(), new SplittableRandom(5));

        PlanSums after = plan(fine, compiled);
        assertThat(after.peakInrushAmps()).isLessThanOrEqualTo(limit);
        assertThat(changes(sums, after)).isPositive();
    }

    @Test
    void touchOnlyTheBoardsAndPanelsThatTheyAreTold() {
        CompiledProject compiled = new CompiledProject(venue(6));
        PlanSums sums = clean(compiled, 6);
        FineSearch fine = new FineSearch(compiled);
        BitSet one = new BitSet();
        one.set(1);

        fine.take(sums);
        fine.only(one, one);
        fine.run(CHANGES, new FineHeat(10, 5, 0, 0, 0), new SplittableRandom(6));

        PlanSums after = plan(fine, compiled);
        assertThat(changes(sums, after)).isPositive();
        for (int load = 0; load < compiled.loadCount(); load++) {
            if (after.placeOf(load) != sums.placeOf(load)) {
                assertThat(after.placeOf(load).panel()).isEqualTo(1);
            }
            if (after.instantOf(load) != sums.instantOf(load)) {
                assertThat(after.outputOf(load).board()).isEqualTo(1);
            }
        }
    }

    /** The engine compares after every move and every undo, and fails on the first difference. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {7, 8})
    void leaveTheScoreWhatANaiveEvaluatorSays(long seed) {
        CompiledProject compiled = new CompiledProject(venue(seed));
        WorkingPlan start = WorkingPlan.of(compiled, clean(compiled, seed).snapshot());

        WorkingPlan found = Search.build(AssertedSearch.asserting(2_000, seed), new Annealing(compiled, true, seed))
                .solve(start);

        assertThat(found.score()).isEqualTo(new NaiveScoreCalculator().calculateScore(found));
    }

    @Test
    void areNotForProjectsWithLimitsAtPanels() {
        Project project = venue(9);
        assertThat(FineSearch.suits(new CompiledProject(project))).isTrue();
        Project limited = project.withPanels(project.panels().stream()
                .map(panel -> panel.withInrushLimitAmps(OptionalDouble.of(10_000)))
                .toList());

        assertThat(FineSearch.suits(new CompiledProject(limited))).isFalse();
    }

    private static Project venue(long seed) {
        return Sample.venue(seed, new VenueSize(3, 60, PhaseSystem.THREE_PHASE)).project();
    }

    private static PlanSums clean(CompiledProject compiled, long seed) {
        PlanningRequest request =
                new PlanningRequest(compiled.project, Optional.empty(), new Budget.Moves(20_000), seed, 1);
        PlanSums sums = new PlanMapper(compiled)
                .toSums(new Planner(request, progress -> {}).plan().plan());
        assertThat(sums.hardCharge()).isZero();
        return sums;
    }

    private static PlanSums plan(FineSearch fine, CompiledProject compiled) {
        PlanSums sums = new PlanSums(compiled);
        for (int load = 0; load < compiled.loadCount(); load++) {
            sums.place(load, fine.placeOf(load));
            sums.wire(load, fine.outputOf(load));
        }
        for (int board = 0; board < compiled.boardCount; board++) {
            sums.set(board, fine.startDelay(board), fine.step(board));
        }
        sums.settle();
        return sums;
    }

    private static long changes(PlanSums one, PlanSums other) {
        long changes = 0;
        for (int load = 0; load < one.compiled.loadCount(); load++) {
            changes += one.placeOf(load) != other.placeOf(load) || one.instantOf(load) != other.instantOf(load) ? 1 : 0;
        }
        return changes;
    }
}
