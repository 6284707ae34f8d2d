package evenrise.solver.engine.move;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.engine.start.FirstPlan;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.IndexSet;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.sample.Sample;
import java.util.Arrays;
import java.util.List;
import java.util.Objects;
import java.util.SplittableRandom;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** The search is told which groups and boards break a rule: it must be these and no others, after any change. */
class KnownPlacesTest {
    private final CompiledProject compiled = new CompiledProject(Sample.venue(3, 8));
    private final PlanSums sums = FirstPlan.build(compiled);
    private final SplittableRandom random = new SplittableRandom(1);

    private void change() {
        int load = random.nextInt(compiled.loadCount());
        sums.place(load, random.nextInt(4) == 0 ? null : compiled.places.get(random.nextInt(compiled.places.size())));
        if (compiled.switched[load]) {
            sums.wire(load, compiled.outputs.get(random.nextInt(compiled.outputs.size())));
        }
        sums.settle();
    }

    private static List<Integer> members(IndexSet set) {
        return IntStream.range(0, set.size()).map(set::get).sorted().boxed().toList();
    }

    private static List<Integer> all(int count, IntPredicate isOne) {
        return IntStream.range(0, count).filter(isOne).boxed().toList();
    }

    private boolean isTorn(int group) {
        long boards = Arrays.stream(compiled.groupMembers[group])
                .mapToObj(sums::outputOf)
                .filter(Objects::nonNull)
                .mapToInt(Output::board)
                .distinct()
                .count();
        long panels = Arrays.stream(compiled.groupMembers[group])
                .mapToObj(sums::placeOf)
                .filter(Objects::nonNull)
                .mapToInt(Place::panel)
                .distinct()
                .count();
        return (boards > 1 && !compiled.groupIsLarge[group]) || (panels > 1 && compiled.groupSamePanel[group]);
    }

    @Test
    void areTheGroupsThatAreTorn() {
        int most = 0;
        for (int i = 0; i < 2_000; i++) {
            change();

            List<Integer> told = members(sums.groups().torn());
            assertThat(told).isEqualTo(all(compiled.groupCount, this::isTorn));
            most = Math.max(most, told.size());
        }
        assertThat(most).as("groups torn at once").isGreaterThan(5);
    }

    @Test
    void areTheBoardsThatAreMuddled() {
        int most = 0;
        for (int i = 0; i < 2_000; i++) {
            change();

            List<Integer> told = members(sums.muddledBoards());
            assertThat(told)
                    .isEqualTo(all(
                            compiled.boardCount,
                            board -> sums.isInterrupted(board) || sums.groups().isMixed(board)));
            most = Math.max(most, told.size());
        }
        assertThat(most).as("boards muddled at once").isGreaterThan(5);
    }
}
