package evenrise.solver.app;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.BoundSource;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PhaseShares;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.SharperBounds;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ProofsTest {
    private final PlanningRequest request =
            new PlanningRequest(aProject().build(), Optional.empty(), new Budget.Moves(1), 1, 1);
    private final List<String> notes = new ArrayList<>();
    private final List<Double> bounds = new ArrayList<>();

    @Test
    void standAtTheUsualBoundsWithoutThePartThatProvesMoreAndSaySoOnce() {
        Proofs proofs = new Proofs(request, notes::add, Optional.empty());

        work(proofs);

        assertThat(notes).singleElement().asString().contains("nothing is proven beyond the usual bounds");
        assertThat(bounds).hasSize(1);
        assertThat(proofs.bounds()).isPresent();
    }

    /** Eight flashes of 10 A on one phase in four instants: each alone says 10, the mean of the instants 20. */
    @Test
    void tellWhatTakesLittleWorkBeforeTheRest() {
        LoadBuilder[] loads = IntStream.range(0, 8)
                .mapToObj(i -> aLoad("L" + i)
                        .runningAmps(1)
                        .idleAmps(0)
                        .inrushPeakAmps(10)
                        .inrushHalfMillis(0.001))
                .toArray(LoadBuilder[]::new);
        ProjectBuilder project = aProject()
                .supply(aSupply().singlePhase())
                .boardTypes(aBoardType("one")
                        .outputs(1)
                        .startDelaySeconds(0, 1, 2, 3)
                        .stepSeconds(1))
                .loads(loads);
        for (int i = 0; i < loads.length; i++) {
            project.boards(aBoard("B" + i).type("one"));
        }
        PlanningRequest timely = new PlanningRequest(project.build(), Optional.empty(), new Budget.Moves(1), 1, 1);

        work(new Proofs(timely, notes::add, Optional.of(new Part(false))), timely);

        assertThat(bounds).hasSize(2).isSorted();
        assertThat(bounds.get(1)).isGreaterThan(bounds.get(0) + 9);
    }

    @Test
    void giveWhatThePartProves() {
        Part part = new Part(true);
        Proofs proofs = new Proofs(request, notes::add, Optional.of(part));

        work(proofs);

        assertThat(notes).isEmpty();
        assertThat(proofs.bounds()).contains(part.sharper);
        assertThat(bounds).hasSize(2);
    }

    @Test
    void keepTheUsualBoundsWhereThePartFailsAtOnce() {
        Part part = new Part(true);
        part.failure = new NoClassDefFoundError("a solver");
        Proofs proofs = new Proofs(request, notes::add, Optional.of(part));

        work(proofs);

        assertThat(notes).singleElement().asString().contains("ended early");
        assertThat(proofs.bounds()).contains(ProvenBounds.of(request.project()));
        assertThat(part.sharper).isNull();
    }

    @Test
    void passOnWhoHadBestSitWhere() {
        Part part = new Part(true);

        assertThat(new Proofs(request, notes::add, Optional.of(part)).shares()).isSameAs(part.shares);
    }

    /** The failure is said once, and the part is not asked again. */
    @Test
    void leaveASearchWithoutGuidanceWhereThePartFails() {
        Part part = new Part(true);
        part.failure = new NoClassDefFoundError("a solver");
        Proofs proofs = new Proofs(request, notes::add, Optional.of(part));

        assertThat(proofs.shares()).isSameAs(PhaseShares.NONE);
        work(proofs);

        assertThat(notes).singleElement().asString().contains("ended early");
        assertThat(proofs.bounds()).contains(ProvenBounds.of(request.project()));
        assertThat(part.sharper).isNull();
    }

    @Test
    void leaveProjectsToShortArgumentsThatDoNotSuitThePart() {
        Proofs proofs = new Proofs(request, notes::add, Optional.of(new Part(false)));

        work(proofs);

        assertThat(notes).isEmpty();
        assertThat(bounds).hasSize(1);
    }

    @Test
    void findThePartOnTheClassPath() {
        new Proofs(request, notes::add);

        assertThat(notes).isEmpty();
    }

    @Test
    void stopThePart() {
        Part part = new Part(true);
        Proofs proofs = new Proofs(request, notes::add, Optional.of(part));

        proofs.stop();

        assertThat(part.isStopped).isTrue();
    }

    private void work(Proofs proofs) {
        work(proofs, request);
    }

    private void work(Proofs proofs, PlanningRequest asked) {
        proofs.work(asked.project(), asked.budget(), 1, new BoundSource.Incumbent() {
            @Override
            public void bound(double objectiveAmps) {
                bounds.add(objectiveAmps);
            }

            @Override
            public void plan(Plan plan) {
                throw new AssertionError("nobody finds a plan here");
            }

            @Override
            public Optional<Plan> best() {
                return Optional.empty();
            }
        });
    }

    /** Says that no plan peaks below one ampere more than is known. */
    private static final class Part implements SharperBounds {
        private final boolean suits;
        private Bounds sharper;
        private Error failure;
        private final PhaseShares shares = new PhaseShares(Map.of("a load", new double[] {0, 1}));
        private boolean isStopped;

        Part(boolean suits) {
            this.suits = suits;
        }

        @Override
        public boolean suit(Project project) {
            return suits;
        }

        @Override
        public Work on(PlanningRequest request, Consumer<String> note) {
            return new Work() {
                @Override
                public PhaseShares shares() {
                    if (failure != null) {
                        throw failure;
                    }
                    return shares;
                }

                @Override
                public void begin(Bounds known, BoundSource.Incumbent incumbent) {
                    if (failure != null) {
                        throw failure;
                    }
                }

                @Override
                public void sharpen(Bounds known, Consumer<Bounds> better, BoundSource.Incumbent incumbent) {
                    sharper = known.withPeakInrushAmps(known.peakInrushAmps() + 1);
                    better.accept(sharper);
                    incumbent.bound(sharper.objective());
                }

                @Override
                public void stop() {
                    isStopped = true;
                }
            };
        }
    }
}
