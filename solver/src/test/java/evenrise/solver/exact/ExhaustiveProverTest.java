package evenrise.solver.exact;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.check.ProjectChecks;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.solver.engine.BoundSource;
import evenrise.solver.engine.Budget;
import evenrise.solver.exhaustive.ExhaustiveProver;
import evenrise.solver.sample.Sample;
import evenrise.solver.sample.VenueSize;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Proofs by looking at all that could be better, beside the referee's word on every plan there is. */
class ExhaustiveProverTest {
    private static final long ENOUGH = 20_000_000;

    /** Twice what the prover does not tell apart. */
    private static final double MARGIN_AMPS = 4e-4;

    /** What one proof said. */
    private static class Said implements BoundSource.Incumbent {
        private final Project project;
        private double bound;
        private boolean isWhole;
        private Plan best;
        private double bestAmps = Double.POSITIVE_INFINITY;

        Said(Project project) {
            this.project = project;
        }

        @Override
        public void bound(double objectiveAmps) {
            bound = Math.max(bound, objectiveAmps);
        }

        @Override
        public void plan(Plan plan) {
            assertThat(Referee.judge(project, plan).violations()).isEmpty();
            double amps = Referee.judge(project, plan).metrics().objective();
            if (amps < bestAmps) {
                bestAmps = amps;
                best = plan;
            }
        }

        @Override
        public Optional<Plan> best() {
            return Optional.ofNullable(best);
        }
    }

    private static Said prove(Project project, long steps) {
        Said said = new Said(project);
        said.isWhole = prover(project, steps, said).prove(0);
        return said;
    }

    private static ExhaustiveProver prover(Project project, long steps, Said said) {
        return new ExhaustiveProver(project, steps, () -> false, new SlotProgram(project)::of, said);
    }

    private static Project venue(long seed, int loads) {
        return Sample.venue(seed, new VenueSize(1, loads, PhaseSystem.THREE_PHASE))
                .project();
    }

    @Nested
    class OfTinyProjects {
        @Test
        void whatItProvesIsTheLeastOfAllPlans() {
            int proven = 0;
            int without = 0;
            for (long seed = 1; seed <= Integer.getInteger("evenrise.tiny", 24); seed++) {
                Project project = TinyRules.of(seed);
                if (!ProjectChecks.errors(project).isEmpty()) {
                    continue;
                }
                double least = EveryPlan.leastObjective(project);

                Said said = prove(project, ENOUGH);

                assertThat(said.bestAmps).as("best plan, seed %d", seed).isGreaterThanOrEqualTo(least - 1e-9);
                if (Double.isFinite(least)) {
                    assertThat(said.isWhole).as("seed %d", seed).isTrue();
                    assertThat(said.bound).as("bound, seed %d", seed).isBetween(least - MARGIN_AMPS, least);
                    assertThat(said.bestAmps).as("best plan, seed %d", seed).isLessThan(least + MARGIN_AMPS);
                    proven++;
                } else {
                    assertThat(said.bound)
                            .as("bound without a plan, seed %d", seed)
                            .isLessThan(1_000);
                    without++;
                }
            }
            assertThat(proven).isGreaterThan(10);
            assertThat(without).as("projects without a plan").isPositive();
        }

        /** Whoever proves how good a plan is keeps to that plan, whatever turns up. */
        @Test
        void provesTheLeastBesideAPlanThatIsKeptThoughBetterOnesTurnUp() {
            Project project = TinyProject.of(1);
            Said least = prove(project, ENOUGH);
            Plan poor = leisurely(project, least.best);
            Said said = new Said(project) {
                @Override
                public Optional<Plan> best() {
                    return Optional.of(poor);
                }
            };

            assertThat(prover(project, ENOUGH, said).prove(0)).isTrue();

            assertThat(Referee.judge(project, poor).metrics().objective()).isGreaterThan(least.bestAmps + 0.01);
            assertThat(said.bound).isBetween(least.bestAmps - MARGIN_AMPS, least.bestAmps);
        }

        /** The same plan with the longest delays and steps. */
        private static Plan leisurely(Project project, Plan plan) {
            Plan slow = plan.with()
                    .boards(plan.boards().stream()
                            .map(board -> new BoardSetting(board.id(), 0.5, 0.5))
                            .toList())
                    .build();
            return PlanFinisher.timed(project, slow);
        }

        @Test
        void thePeakIsNoneThatAPlanStaysBelow() {
            for (long seed = 1; seed <= 20; seed++) {
                Project project = TinyProject.of(seed);
                Said said = prove(project, ENOUGH);

                double peakAmps = prover(project, ENOUGH, said).peakAmps();

                assertThat(peakAmps)
                        .as("seed %d", seed)
                        .isPositive()
                        .isLessThanOrEqualTo(
                                Referee.judge(project, said.best).metrics().peakInrushAmps());
            }
        }
    }

    @Nested
    class OfDrawnVenues {
        @Test
        void theSameStepsProveTheSame() {
            Project project = venue(5, 16);

            Said once = prove(project, 300_000);
            Said again = prove(project, 300_000);

            assertThat(once.bound).isPositive().isEqualTo(again.bound);
            assertThat(once.best).isEqualTo(again.best);
        }

        @Test
        void fewStepsProveLessThanMany() {
            Project project = venue(5, 16);

            Said few = prove(project, 2_000);
            Said many = prove(project, ENOUGH);

            assertThat(few.isWhole).isFalse();
            assertThat(many.isWhole).isTrue();
            assertThat(few.bound).isLessThan(many.bound);
        }
    }

    @Nested
    class LeavesAlone {
        @Test
        void severalPanels() {
            assertThat(ExhaustiveProver.suits(Sample.venue(1, 2))).isFalse();
        }

        @Test
        void boardsWhoseOutputsMayComeOnTogether() {
            Project project = TinyProject.of(1);
            Project together =
                    project.withBoardTypes(List.of(project.boardTypes().get(0).withStepSeconds(List.of(0.0, 0.5))));

            assertThat(ExhaustiveProver.suits(together)).isFalse();
        }

        @Test
        void aPeakThatCostsNothing() {
            Project project = TinyProject.of(1);
            Project free = project.withObjective(project.objective().withPeakInrush(0));

            assertThat(ExhaustiveProver.suits(project)).isTrue();
            assertThat(ExhaustiveProver.suits(free)).isFalse();
        }
    }

    @Nested
    class Effort {
        @Test
        void countedMovesAreStepsWithoutAClock() {
            ExhaustiveEffort effort = new ExhaustiveEffort(new Budget.Moves(100_000));

            assertThat(effort.mostSteps()).isEqualTo(20_000_000);
            assertThat(effort.isUp()).isFalse();
        }

        @Test
        void aTimeThatIsOverIsUp() {
            ExhaustiveEffort effort = new ExhaustiveEffort(new Budget.Time(Duration.ZERO));

            assertThat(effort.isUp()).isTrue();
        }
    }
}
