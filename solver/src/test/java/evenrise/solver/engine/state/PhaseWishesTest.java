package evenrise.solver.engine.state;

import static evenrise.model.Fixtures.aSupply;
import static evenrise.solver.bounds.Flashes.flash;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Project;
import evenrise.solver.bounds.Flashes;
import evenrise.solver.engine.PhaseShares;
import evenrise.solver.sample.Sample;
import evenrise.solver.sample.VenueSize;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class PhaseWishesTest {
    private static final int A = 0b001;
    private static final int B = 0b010;

    /** Of two amplifiers the one with three times the other's excess matters three times as much, and 1 in the mean. */
    @Test
    void aLoadMattersByWhatItDrawsAmongItsLike() {
        Project project = Flashes.project(
                aSupply(),
                flash("desk", 1, 10, 20, 0).processing(),
                flash("small", 1, 10, 0, 50).amplifier(),
                flash("great", 1, 10, 0, 150).amplifier());
        CompiledProject compiled =
                guided(project, new PhaseShares(Map.of("small", onA(), "great", onA(), "desk", onA())));

        assertThat(off(compiled, "small", B)).isCloseTo(0.5, within(1e-3));
        assertThat(off(compiled, "great", B)).isCloseTo(1.5, within(1e-3));
        assertThat(off(compiled, "desk", B)).isCloseTo(1, within(1e-3));
        assertThat(off(compiled, "great", A)).isZero();
    }

    @Test
    void aLoadThatIsNotNamedWishesNothing() {
        CompiledProject compiled = new CompiledProject(
                Flashes.project(aSupply(), flash("one", 1, 10, 0, 50).amplifier()));

        assertThat(off(compiled, "one", A)).isZero();
        assertThat(off(compiled, "one", B)).isZero();
    }

    @Test
    void theSumFollowsEveryChangeOfPlaceAndItsUndoing() {
        Project project = Sample.venue(3, VenueSize.ofPanels(3)).project();
        CompiledProject compiled = guided(project, APhaseShare.drawn(project, 3));
        PlanSums sums = new PlanSums(compiled);
        SplittableRandom random = new SplittableRandom(3);
        for (int i = 0; i < 2_000; i++) {
            int load = random.nextInt(compiled.loadCount());
            List<Place> places = compiled.places.stream()
                    .filter(place -> compiled.mayTake(load, place))
                    .toList();
            boolean leaves = random.nextInt(10) == 0;
            sums.place(load, leaves ? null : places.get(random.nextInt(places.size())));
            sums.settle();
        }

        assertThat(sums.offWishes()).isPositive();
        assertThat(sums.offWishes())
                .isEqualTo(PlanSums.of(compiled, sums.snapshot()).offWishes());
    }

    private static CompiledProject guided(Project project, PhaseShares shares) {
        return new CompiledProject(project, false, Optional.empty(), shares);
    }

    private static double[] onA() {
        double[] share = new double[8];
        share[A] = 1;
        return share;
    }

    private static double off(CompiledProject compiled, String id, int mask) {
        for (int load = 0; load < compiled.loadCount(); load++) {
            if (compiled.loads[load].id().equals(id)) {
                return PhaseWishes.parts(compiled.wishes.offUnits(load, mask));
            }
        }
        throw new AssertionError(id);
    }
}
