package evenrise.solver.engine.move;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.engine.start.FirstPlan;
import evenrise.solver.engine.state.IndexSet;
import evenrise.solver.engine.state.Output;
import evenrise.solver.engine.state.Place;
import evenrise.solver.engine.state.Plant;
import evenrise.solver.engine.state.Situation;
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
    private final Plant plant = new Plant(Sample.venue(3, 8));
    private final Situation situation = FirstPlan.build(plant);
    private final SplittableRandom random = new SplittableRandom(1);

    private void change() {
        int load = random.nextInt(plant.loadCount());
        situation.place(load, random.nextInt(4) == 0 ? null : plant.places.get(random.nextInt(plant.places.size())));
        if (plant.switched[load]) {
            situation.wire(load, plant.outputs.get(random.nextInt(plant.outputs.size())));
        }
        situation.settle();
    }

    private static List<Integer> members(IndexSet set) {
        return IntStream.range(0, set.size()).map(set::get).sorted().boxed().toList();
    }

    private static List<Integer> all(int count, IntPredicate isOne) {
        return IntStream.range(0, count).filter(isOne).boxed().toList();
    }

    private boolean isTorn(int group) {
        long boards = Arrays.stream(plant.groupMembers[group])
                .mapToObj(situation::outputOf)
                .filter(Objects::nonNull)
                .mapToInt(Output::board)
                .distinct()
                .count();
        long panels = Arrays.stream(plant.groupMembers[group])
                .mapToObj(situation::placeOf)
                .filter(Objects::nonNull)
                .mapToInt(Place::panel)
                .distinct()
                .count();
        return (boards > 1 && !plant.groupIsLarge[group]) || (panels > 1 && plant.groupSamePanel[group]);
    }

    @Test
    void areTheGroupsThatAreTorn() {
        int most = 0;
        for (int i = 0; i < 2_000; i++) {
            change();

            List<Integer> told = members(situation.groups().torn());
            assertThat(told).isEqualTo(all(plant.groupCount, this::isTorn));
            most = Math.max(most, told.size());
        }
        assertThat(most).as("groups torn at once").isGreaterThan(5);
    }

    @Test
    void areTheBoardsThatAreMuddled() {
        int most = 0;
        for (int i = 0; i < 2_000; i++) {
            change();

            List<Integer> told = members(situation.muddledBoards());
            assertThat(told)
                    .isEqualTo(all(
                            plant.boardCount,
                            board -> situation.isInterrupted(board)
                                    || situation.groups().isMixed(board)));
            most = Math.max(most, told.size());
        }
        assertThat(most).as("boards muddled at once").isGreaterThan(5);
    }
}
