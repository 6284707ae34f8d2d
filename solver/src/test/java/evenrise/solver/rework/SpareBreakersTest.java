package evenrise.solver.rework;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.plan.Plan;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.project.TripCurve;
import evenrise.solver.table.TableFileReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Breakers that feed nothing: used, left, or taken out where their slot is wanted. */
class SpareBreakersTest {
    private static final SpareBreaker SPARE =
            new SpareBreaker("P1", 3, 1, OptionalDouble.of(16), Optional.empty(), false);

    private static Project project(LoadBuilder... loads) {
        return aProject()
                .supply(aSupply().ratedAmps(63))
                .panels(aPanel("P1").slots(8).ratedAmps(63))
                .boards(aBoard("B1").in("P1"))
                .loads(loads)
                .build();
    }

    private static LoadBuilder lamp(String id) {
        return aLoad(id).unswitched().breakerAmps(16).runningAmps(3);
    }

    private static Plan plan(Object... loadsAndSlots) {
        var plan = aPlan().board("B1", 0, 1);
        for (int i = 0; i < loadsAndSlots.length; i += 2) {
            plan.assignments(anAssignment((String) loadsAndSlots[i]).at("P1", (Integer) loadsAndSlots[i + 1], Phase.A));
        }
        return plan.build();
    }

    private static List<String> steps(WorkOrder order) {
        return order.stages().stream()
                .flatMap(stage -> stage.steps().stream())
                .filter(step -> step.slot().isPresent())
                .map(step -> step.kind() + step.load().map(load -> " " + load).orElse("") + " "
                        + step.slot().getAsInt())
                .toList();
    }

    private static WorkOrder order(BuiltPlant plant, Plan target) {
        WorkOrder order = new OrderOfWork(plant, target, NightLimits.NONE).withAtLeast(1);
        assertThat(order.breaches()).isEmpty();
        return order;
    }

    private static List<String> broken(BuiltPlant plant, Plan target, WorkOrder order) {
        return Replay.of(plant, target, order.stages(), Set.of()).stream()
                .map(Breach::message)
                .toList();
    }

    @Nested
    class OneThatIsThere {
        private final Project project = project(lamp("old"), lamp("new"));
        private final Plan built = plan("old", 1);
        private final Plan target = plan("old", 1, "new", 3);

        private BuiltPlant plant(SpareBreaker spare) {
            return BuiltPlant.of(project, built, Optional.empty()).withSpares(List.of(spare), false);
        }

        @Test
        void feedsANewLoadOfItsRating() {
            assertThat(steps(order(plant(SPARE), target))).containsExactly("USE_SPARE new 3");
        }

        @Test
        void comesOutWhereItIsOfAnotherRating() {
            SpareBreaker other = new SpareBreaker("P1", 3, 1, OptionalDouble.of(20), Optional.empty(), false);

            assertThat(steps(order(plant(other), target))).containsExactly("REMOVE_SPARE 3", "PUT_IN new 3");
        }

        @Test
        void comesOutWhereNobodyStatesWhatItIs() {
            SpareBreaker unknown = new SpareBreaker("P1", 3, 1, OptionalDouble.empty(), Optional.empty(), false);

            assertThat(steps(order(plant(unknown), target))).containsExactly("REMOVE_SPARE 3", "PUT_IN new 3");
        }

        @Test
        void comesOutForABreakerThatIsMovedAlongWithItsConductors() {
            BuiltPlant moved = BuiltPlant.of(project, plan("old", 1, "new", 5), Optional.empty())
                    .withSpares(List.of(SPARE), false);

            assertThat(steps(order(moved, target))).containsExactly("REMOVE_SPARE 3", "RE_TERMINATE new 3");
        }

        /** Two of the panel's eight slots are wanted, and the spare has the third. */
        @Test
        void isNoPlaceToParkIn() {
            Project three = project(lamp("a"), lamp("b"));
            BuiltPlant plant =
                    BuiltPlant.of(three, plan("a", 1, "b", 2), Optional.empty()).withSpares(List.of(SPARE), false);

            assertThat(steps(order(plant, plan("a", 2, "b", 1))))
                    .noneMatch(step -> step.startsWith("PARK") && step.endsWith(" 3"));
        }

        @Test
        void isMissedByTheReplayWhereNobodyTakesItOut() {
            WorkOrder blind = order(BuiltPlant.of(project, built, Optional.empty()), target);

            assertThat(broken(plant(SPARE), target, blind))
                    .contains("load 'new' goes to slot 3 of panel 'P1', where a spare breaker is.");
        }

        @Test
        void isMissedByTheReplayWhereItIsNotThere() {
            WorkOrder using = order(plant(SPARE), target);

            assertThat(broken(BuiltPlant.of(project, built, Optional.empty()), target, using))
                    .contains("in slot 3 of panel 'P1' is no spare breaker that suits load 'new'.");
        }

        @Test
        void costsAMinuteOfARemovalWhereItIsInTheWay() {
            SpareBreaker other = new SpareBreaker("P1", 3, 1, OptionalDouble.of(20), Optional.empty(), false);

            double used = Front.to(plant(SPARE), target).cureOnly().minutes();
            double inTheWay = Front.to(plant(other), target).cureOnly().minutes();

            assertThat(inTheWay - used).isEqualTo(MoveKind.REMOVAL.usualMinutes());
        }
    }

    @Nested
    class OneOfGearThatIsGone {
        private final Project was = project(lamp("kept"), lamp("gone"));
        private final Plan built = plan("kept", 1, "gone", 3);

        private BuiltPlant plant(Project now, boolean leaves) {
            return BuiltPlant.of(now, built, Optional.of(was)).withSpares(List.of(), leaves);
        }

        @Test
        void staysWhereThatIsAskedForAndNobodyNeedsItsSlot() {
            Project now = project(lamp("kept"));
            BuiltPlant plant = plant(now, true);

            WorkOrder order = order(plant, plan("kept", 1));

            assertThat(steps(order)).containsExactly("LEAVE_SPARE gone 3");
            assertThat(SpareBreakers.after(plant, List.of(), order.stages().get(0)))
                    .containsExactly(SPARE);
        }

        @Test
        void comesOutWhereItIsNotAskedFor() {
            assertThat(steps(order(plant(project(lamp("kept")), false), plan("kept", 1))))
                    .containsExactly("REMOVE gone 3");
        }

        @Test
        void feedsWhatIsAddedInItsPlace() {
            Project now = project(lamp("kept"), lamp("added"));

            assertThat(steps(order(plant(now, true), plan("kept", 1, "added", 3))))
                    .containsExactly("LEAVE_SPARE gone 3", "USE_SPARE added 3");
        }

        @Test
        void comesOutWhereItsSlotIsWantedForAnotherRating() {
            Project now = project(lamp("kept"), lamp("added").breakerAmps(32));

            assertThat(steps(order(plant(now, true), plan("kept", 1, "added", 3))))
                    .containsExactly("REMOVE gone 3", "PUT_IN added 3");
        }
    }

    @Nested
    class OfASchedule {
        @TempDir
        private Path folder;

        private SpareRows read(String csv) throws IOException {
            Path file = Files.writeString(folder.resolve("panels.csv"), csv);
            return SpareRows.read(TableFileReader.read(file), project(lamp("a")));
        }

        @Test
        void areRowsWithABreakerAndNoLoad() throws IOException {
            SpareRows rows = read("panel,slot,load,breaker\nP1,1,a,16\nP1,3,spare,C16\nP1,5,,\n");

            assertThat(rows.problems()).isEmpty();
            assertThat(rows.spares())
                    .containsExactly(
                            new SpareBreaker("P1", 3, 1, OptionalDouble.of(16), Optional.of(TripCurve.C), false));
        }

        @Test
        void areRefusedWhereTheyHaveNoPlace() throws IOException {
            assertThat(read("panel,slot,load,breaker\nP9,3,spare,16\n").problems())
                    .singleElement()
                    .asString()
                    .contains("'P9 3'", "has no place");
        }
    }
}
