package evenrise.solver.rework;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Plan;
import evenrise.solver.report.WorkSheets;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.OptionalInt;
import java.util.Random;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class LaidOrderTest {
    private final AnOrderedWork work = new AnOrderedWork("mover");
    private final BuiltPlant plant = work.plant();
    private final WorkOrder found = work.order(NightLimits.NONE);
    private final Plan target = found.stages().get(found.stages().size() - 1).after();
    private final LaidOrder laid = new LaidOrder(plant, target, NightLimits.NONE);

    @Test
    void theProgramsOrderLaidOutByItsChangesIsThatOrder() {
        WorkOrder same = laid.of(laid.sets(found)).orElseThrow();

        assertThat(same.stages()).isEqualTo(found.stages());
        assertThat(same.cost()).isEqualTo(found.cost());
        assertThat(same.breaches()).isEmpty();
    }

    @Test
    void eachChangeIsInOneStage() {
        int changes = laid.changes().loads().size()
                + laid.changes().settingsInAll()
                + laid.changes().removals().size();

        assertThat(laid.sets(found).stream().flatMap(List::stream))
                .containsExactlyInAnyOrderElementsOf(
                        IntStream.range(0, changes).boxed().toList());
    }

    /** What is gone sits where the load goes that is moved. */
    @Test
    void anOrderThatTakesASlotBeforeItIsFreeIsRefusedAtThatStep() {
        List<Integer> mover = change("mover");
        List<Integer> gone = change("gone");
        List<List<Integer>> stages = new ArrayList<>(List.of(mover, gone));
        IntStream.range(0, laid.sets(found).stream().mapToInt(List::size).sum())
                .filter(each -> !mover.contains(each) && !gone.contains(each))
                .forEach(each -> stages.add(List.of(each)));

        WorkOrder order = laid.of(stages).orElseThrow();

        assertThat(order.breaches()).anySatisfy(breach -> {
            assertThat(breach.stage()).isEqualTo(1);
            assertThat(breach.step()).isPositive();
            assertThat(breach.message()).contains("'gone'");
        });
    }

    private List<Integer> change(String load) {
        Changes changes = laid.changes();
        int behind = changes.loads().size() + changes.settingsInAll();
        return IntStream.range(0, behind + changes.removals().size())
                .filter(each -> each < changes.loads().size()
                        ? changes.loads().get(each).load().equals(load)
                        : each >= behind
                                && changes.removals().get(each - behind).load().equals(load))
                .boxed()
                .toList();
    }

    @Test
    void whatLeavesAChangeOutOrMakesItTwiceIsNoOrder() {
        List<List<Integer>> all = laid.sets(found);

        assertThat(laid.of(all.subList(1, all.size()))).isEmpty();
        assertThat(laid.of(List.of(all.get(0), all.get(0)))).isEmpty();
        List<List<Integer>> empty = new ArrayList<>(all);
        empty.add(List.of());
        assertThat(laid.of(empty)).isEmpty();
        assertThat(laid.of(List.of(List.of(-1)))).isEmpty();
        assertThat(laid.of(List.of(List.of(1000)))).isEmpty();
    }

    /** Whatever the hand lays out can be told: sheets, steps, the way back. */
    @Test
    void anyOrderCanBeSaidAndEndsAtTheTarget() {
        Random random = new Random(7);
        int changes = laid.sets(found).stream().mapToInt(List::size).sum();
        for (int tries = 0; tries < 15; tries++) {
            List<Integer> all =
                    new ArrayList<>(IntStream.range(0, changes).boxed().toList());
            Collections.shuffle(all, random);
            List<List<Integer>> stages = new ArrayList<>();
            for (int change : all) {
                if (stages.isEmpty() || random.nextBoolean()) {
                    stages.add(new ArrayList<>());
                }
                stages.get(stages.size() - 1).add(change);
            }

            WorkOrder order = laid.of(stages).orElseThrow();

            assertThat(laid.sets(order))
                    .isEqualTo(stages.stream()
                            .map(each -> each.stream().sorted().toList())
                            .toList());
            assertThat(WorkSheets.of(plant, order, List.of(), NightLimits.NONE).sheets())
                    .hasSameSizeAs(stages);
            assertThat(order.stages().get(stages.size() - 1).after().assignments())
                    .containsExactlyInAnyOrderElementsOf(target.assignments());
        }
    }

    @Test
    void aStageThatIsLongerThanEveryNightIsRefusedAsAWhole() {
        NightLimits night = new NightLimits(Set.of(), OptionalInt.empty(), List.of(60.0));
        LaidOrder within = new LaidOrder(plant, target, night);
        List<Integer> all = within.sets(found).stream().flatMap(List::stream).toList();

        WorkOrder order = within.of(List.of(all)).orElseThrow();

        assertThat(order.breaches()).anySatisfy(breach -> {
            assertThat(breach.step()).isZero();
            assertThat(breach.message()).contains("the longest night has 60 min");
        });
    }
}
