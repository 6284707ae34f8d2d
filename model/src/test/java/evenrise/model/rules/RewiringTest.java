package evenrise.model.rules;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.BoardTypeBuilder;
import evenrise.model.PlanBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.project.BoardTiming;
import evenrise.model.project.OfferedTimes;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class RewiringTest {
    private final ProjectBuilder project = aProject()
            .panels(aPanel("P1"), aPanel("P2"))
            .boards(aBoard("B1").in("P1"), aBoard("B2").in("P1"))
            .loads(aLoad("L1"), aLoad("L2"));

    private static PlanBuilder plan(String panel, int slot, String board, int output) {
        return aPlan().board("B1", 0, 1)
                .board("B2", 0, 1)
                .assignments(
                        anAssignment("L1").at(panel, slot).on(board, output),
                        anAssignment("L2").at("P1", 7).on("B1", 4));
    }

    private static Rewiring moves(ProjectBuilder project, PlanBuilder now, PlanBuilder earlier) {
        return Rewiring.of(Layout.of(project.build(), now.build()), earlier.build());
    }

    @Test
    void ofTheSamePlanAreNone() {
        assertThat(moves(project, plan("P1", 1, "B1", 1), plan("P1", 1, "B1", 1)))
                .isEqualTo(new Rewiring(0, 0, 0));
    }

    @Test
    void countABreakerInAnotherSlotOrPanel() {
        assertThat(moves(project, plan("P1", 3, "B1", 1), plan("P1", 1, "B1", 1)))
                .isEqualTo(new Rewiring(1, 0, 0));
        assertThat(moves(project, plan("P2", 1, "B1", 1), plan("P1", 1, "B1", 1)))
                .isEqualTo(new Rewiring(1, 0, 0));
    }

    @Test
    void countALeadOnAnotherOutputOrBoard() {
        assertThat(moves(project, plan("P1", 1, "B1", 2), plan("P1", 1, "B1", 1)))
                .isEqualTo(new Rewiring(0, 1, 0));
        assertThat(moves(project, plan("P1", 1, "B2", 1), plan("P1", 1, "B1", 1)))
                .isEqualTo(new Rewiring(0, 1, 0));
    }

    @Test
    void countNothingOfALoadThatIsNew() {
        PlanBuilder earlier = aPlan().board("B1", 0, 1)
                .board("B2", 0, 1)
                .assignments(anAssignment("L2").at("P1", 7).on("B1", 4));

        assertThat(moves(project, plan("P1", 1, "B1", 1), earlier)).isEqualTo(new Rewiring(0, 0, 0));
    }

    @Test
    void countEachBoardThatIsSetAnew() {
        PlanBuilder earlier = aPlan().board("B1", 0.5, 1)
                .board("B2", 0, 0.5)
                .assignments(
                        anAssignment("L1").at("P1", 1).on("B1", 1),
                        anAssignment("L2").at("P1", 7).on("B1", 4));

        assertThat(moves(project, plan("P1", 1, "B1", 1), earlier)).isEqualTo(new Rewiring(0, 0, 2));
    }

    /** Outputs with times of their own: another time by more than 0.5 ms, of an output in use in both plans. */
    @Nested
    class OfOutputsWithTimesOfTheirOwn {
        private final ProjectBuilder timed = aProject()
                .boardTypes(aBoardType(BoardTypeBuilder.EIGHT)
                        .with(type -> type.startDelaySeconds(List.of())
                                .stepSeconds(List.of())
                                .timing(BoardTiming.EACH)
                                .timesSeconds(OfferedTimes.builder()
                                        .from(0)
                                        .to(10)
                                        .by(0.5)
                                        .build())))
                .boards(aBoard("B1"))
                .loads(aLoad("L1"), aLoad("L2"), aLoad("L3"));

        private PlanBuilder at(int third, double one, double two) {
            return aPlan().assignments(
                            anAssignment("L1").at("P1", 1).on("B1", 1).onSeconds(one),
                            anAssignment("L2").at("P1", 3).on("B1", 2).onSeconds(two),
                            anAssignment("L3").at("P1", 5).on("B1", third).onSeconds(third));
        }

        @Test
        void countEachThatDiffers() {
            assertThat(moves(timed, at(3, 1, 2), at(3, 1, 2)).settings()).isZero();
            assertThat(moves(timed, at(3, 1, 2), at(3, 1.5, 2)).settings()).isEqualTo(1);
            assertThat(moves(timed, at(3, 1, 2), at(3, 1.5, 3)).settings()).isEqualTo(2);
            assertThat(moves(timed, at(3, 1, 2), at(3, 1.0004, 2)).settings()).isZero();
        }

        /** L3 is on output 3 now and was on 4: a lead, and no output in use in both. */
        @Test
        void countNothingOfAnOutputThatWasFree() {
            assertThat(moves(timed, at(3, 1, 2), at(4, 1, 2))).isEqualTo(new Rewiring(0, 1, 0));
        }
    }
}
