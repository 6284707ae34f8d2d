package evenrise.model.answer;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.ARandomProject;
import evenrise.model.ARandomProject.Planted;
import evenrise.model.answer.PlanChange.Way;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class AlternativesTest {
    /** Loads asked about in {@link OfRandomProjects}; a long run asks more by -Devenrise.answers=1000. */
    private static final int ASKED = Integer.getInteger("evenrise.answers", 60);

    private static LoadAnswer answer(Project project, Plan plan, String load) {
        return new Alternatives(Layout.of(project, PlanFinisher.timed(project, plan)), Optional.empty())
                .answer(load, true);
    }

    @Nested
    class OfRandomProjects {
        /** The plan with the change made by hand, in the manner of somebody who edits the file. */
        private Plan edited(Plan plan, PlanChange change) {
            List<Assignment> assignments = new ArrayList<>();
            for (Assignment each : plan.assignments()) {
                Seat seat = change.seats().get(each.load());
                assignments.add(
                        seat == null
                                ? each
                                : Assignment.builder()
                                        .load(each.load())
                                        .panel(seat.panel())
                                        .slot(seat.slot())
                                        .phases(List.of())
                                        .board(seat.board())
                                        .output(seat.output())
                                        .onSeconds(seat.askedSeconds())
                                        .build());
            }
            List<evenrise.model.plan.BoardSetting> boards = new ArrayList<>(plan.boards());
            change.setting()
                    .ifPresent(set -> boards.replaceAll(each -> each.id().equals(set.id()) ? set : each));
            return plan.with().assignments(assignments).boards(boards).build();
        }

        @Test
        void costsAreTheDifferenceOfTwoPlansAndBreachesThoseOfTheSecond() {
            Random random = new Random(19);
            for (int asked = 0; asked < ASKED; asked++) {
                Planted planted = ARandomProject.planted(asked);
                Plan plan = PlanFinisher.timed(planted.project(), planted.plan());
                Verdict before = Referee.judge(planted.project(), plan);
                String load = plan.assignments()
                        .get(random.nextInt(plan.assignments().size()))
                        .load();

                List<Alternative> alternatives =
                        answer(planted.project(), plan, load).alternatives();

                for (Alternative each : alternatives) {
                    Verdict after = Referee.judge(
                            planted.project(), PlanFinisher.timed(planted.project(), edited(plan, each.change())));
                    assertThat(each.objectiveChange())
                            .isCloseTo(
                                    after.metrics().objective()
                                            - before.metrics().objective(),
                                    within(1e-9));
                    assertThat(each.breaks())
                            .as("seed %d, %s", asked, each.change())
                            .isEqualTo(after.violations());
                }
                assertThat(alternatives)
                        .isSortedAccordingTo((a, b) -> a.breaks().size()
                                        == b.breaks().size()
                                ? Double.compare(a.objectiveChange(), b.objectiveChange())
                                : Integer.compare(a.breaks().size(), b.breaks().size()));
            }
        }

        @Test
        void noPlaceIsMissedThatTheRefereeAllows() {
            for (int seed = 0; seed < 12; seed++) {
                Planted planted = ARandomProject.planted(seed);
                Plan plan = PlanFinisher.timed(planted.project(), planted.plan());
                Layout layout = Layout.of(planted.project(), plan);
                Assignment moved = plan.assignments().get(0);
                int sound = 0;
                for (var panel : planted.project().panels()) {
                    for (int slot = 1; slot <= panel.slots(); slot++) {
                        boolean isElsewhere = !panel.id().equals(moved.panel()) || slot != moved.slot();
                        Plan there = plan.with()
                                .assignments(plan.assignments().stream()
                                        .map(new At(moved.load(), panel.id(), slot)::in)
                                        .toList())
                                .build();
                        if (isElsewhere
                                && Referee.judge(planted.project(), PlanFinisher.timed(planted.project(), there))
                                        .violations()
                                        .isEmpty()) {
                            sound++;
                        }
                    }
                }

                int found = answer(planted.project(), layout.plan(), moved.load()).sound().stream()
                        .filter(each -> each.change().way() == Way.SLOT)
                        .mapToInt(Alternative::alike)
                        .sum();

                assertThat(found).as("seed %d", seed).isEqualTo(sound);
            }
        }

        private record At(String load, String panel, int slot) {
            Assignment in(Assignment each) {
                return each.load().equals(load)
                        ? each.with().panel(panel).slot(slot).build()
                        : each;
            }
        }
    }

    /** One panel of three slots on A, B, C; an amplifier of 10 A on A, a fan of 4 A on B. */
    @Nested
    class OfASmallHall {
        private final Project project = aProject()
                .panels(aPanel("P1").slots(6))
                .boards(aBoard("B1").in("P1"))
                .loads(
                        aLoad("amp").amplifier().runningAmps(10),
                        aLoad("fan").unswitched().runningAmps(4))
                .build();
        private final Plan plan = aPlan().board("B1", 0, 0.25)
                .assignments(
                        anAssignment("amp").at("P1", 1).on("B1", 2),
                        anAssignment("fan").at("P1", 3))
                .build();

        @Test
        void earlierOutputsAreAmongThem() {
            LoadAnswer answer = answer(project, plan, "amp");

            assertThat(answer.sound())
                    .anySatisfy(each -> {
                        assertThat(each.change().way()).isEqualTo(Way.OUTPUT);
                        assertThat(each.seat().output()).hasValue(1);
                        assertThat(each.onSeconds()).hasValue(0);
                    })
                    .anySatisfy(each -> {
                        assertThat(each.change().way()).isEqualTo(Way.SETTING);
                        assertThat(each.change().setting().orElseThrow().delaySeconds())
                                .isEqualTo(0.5);
                        assertThat(each.onSeconds()).hasValue(0.75);
                    });
        }

        @Test
        void slotsThatDifferInTheirNumberAloneAreOne() {
            List<Alternative> onC = answer(project, plan, "amp").alternatives().stream()
                    .filter(each -> each.change().way() == Way.SLOT
                            && each.phases().equals(List.of(evenrise.model.project.Phase.C)))
                    .toList();

            assertThat(onC).hasSize(1);
            assertThat(onC.get(0).alike()).isEqualTo(2);
        }

        @Test
        void aLoadThatIsNotSwitchedHasNoOtherTimes() {
            assertThat(answer(project, plan, "fan").alternatives())
                    .allSatisfy(each -> assertThat(each.change().way()).isIn(Way.SLOT, Way.SLOTS_EXCHANGED));
        }
    }

    /** A panel that is over its rating already: 30 A on A, where 20 are allowed. */
    @Test
    void anExcessThatGrowsIsBrokenAndOneThatShrinksIsNot() {
        Project project = aProject()
                .panels(aPanel("P1").slots(12).ratedAmps(25))
                .loads(
                        aLoad("a").unswitched().runningAmps(15),
                        aLoad("b").unswitched().runningAmps(15),
                        aLoad("c").unswitched().runningAmps(3))
                .build();
        Plan plan = aPlan().assignments(
                        anAssignment("a").at("P1", 1),
                        anAssignment("b").at("P1", 2),
                        anAssignment("c").at("P1", 3))
                .build();

        List<Alternative> grown = answer(project, plan, "c").alternatives().stream()
                .filter(each -> each.change().way() == Way.SLOT
                        && each.phases().equals(List.of(evenrise.model.project.Phase.A)))
                .toList();
        List<Alternative> shrunk = answer(project, plan, "a").sound().stream()
                .filter(each -> each.change().way() == Way.SLOT && each.mends() > 0)
                .toList();

        assertThat(grown)
                .isNotEmpty()
                .allSatisfy(each ->
                        assertThat(each.breaks()).extracting(BrokenRule::rule).contains("rating"));
        assertThat(shrunk).isNotEmpty();
    }
}
