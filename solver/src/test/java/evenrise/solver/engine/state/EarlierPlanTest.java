package evenrise.solver.engine.state;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.BoardSetting;
import evenrise.model.project.BoardTiming;
import evenrise.model.project.OfferedTimes;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * Earlier: L1 in P1 slot 1 on B1 output 1; L2 in P1 slot 2 on EACH output 1 at 4 s; L3 in P9, which is gone, on B9, which
 * is gone, too; N, unswitched, in P2 slot 1; X, which is gone. L4 and the board NEW are new. B1 was set to 1 s and 0.5 s.
 */
class EarlierPlanTest {
    private static final int L1 = 0;
    private static final int L2 = 1;
    private static final int L3 = 2;
    private static final int L4 = 3;
    private static final int N = 4;
    private static final int B1 = 0;
    private static final int EACH = 1;
    private static final int NEW = 2;

    private final CompiledProject compiled = new CompiledProject(aProject()
            .panels(aPanel("P1"), aPanel("P2"))
            .boardTypes(
                    aBoardType(),
                    aBoardType("each")
                            .with(it -> it.timing(BoardTiming.EACH)
                                    .startDelaySeconds(List.of())
                                    .stepSeconds(List.of())
                                    .timesSeconds(Optional.of(OfferedTimes.builder()
                                            .listed(List.of(0.0, 4.0, 8.0))
                                            .build()))))
            .boards(aBoard("B1"), aBoard("EACH").type("each"), aBoard("NEW"))
            .loads(
                    aLoad("L1"),
                    aLoad("L2"),
                    aLoad("L3"),
                    aLoad("L4"),
                    aLoad("N").unswitched())
            .build());
    private final EarlierPlan earlier = new EarlierPlan(
            compiled,
            aPlan().assignments(
                            anAssignment("L1").at("P1", 1).on("B1", 1).onSeconds(1),
                            anAssignment("L2").at("P1", 2).on("EACH", 1).onSeconds(4),
                            anAssignment("L3").at("P9", 1).on("B9", 1).onSeconds(1),
                            anAssignment("N").at("P2", 1),
                            anAssignment("X").at("P2", 3).on("EACH", 3).onSeconds(8))
                    .build()
                    .withBoards(new ArrayList<>(List.of(new BoardSetting("B1", 1, 0.5), BoardSetting.ofEach("EACH")))));

    private Place place(int panel, int slot) {
        return compiled.placeAt[panel][slot][1];
    }

    @Nested
    class ABreaker {
        @Test
        void movesToAnotherSlotOrPanel() {
            assertThat(earlier.isMoved(L1, place(0, 1))).isFalse();
            assertThat(earlier.isMoved(L1, place(0, 3))).isTrue();
            assertThat(earlier.isMoved(L1, place(1, 1))).isTrue();
            assertThat(earlier.isMoved(N, place(1, 1))).isFalse();
        }

        @Test
        void movesWhereverItsPanelIsGone() {
            assertThat(earlier.isMoved(L3, place(0, 1))).isTrue();
        }

        @Test
        void ofANewLoadNeverMoves() {
            assertThat(earlier.isMoved(L4, place(0, 1))).isFalse();
        }
    }

    @Nested
    class ALead {
        @Test
        void movesToAnotherOutputOrBoard() {
            assertThat(earlier.isRewired(L1, compiled.output(B1, 0))).isFalse();
            assertThat(earlier.isRewired(L1, compiled.output(B1, 1))).isTrue();
            assertThat(earlier.isRewired(L1, compiled.output(EACH, 0))).isTrue();
            assertThat(earlier.isRewired(L1, null)).isTrue();
        }

        @Test
        void movesWhereverItsBoardIsGone() {
            assertThat(earlier.isRewired(L3, compiled.output(B1, 0))).isTrue();
        }

        @Test
        void ofANewOrAnUnswitchedLoadNeverMoves() {
            assertThat(earlier.isRewired(L4, compiled.output(B1, 0))).isFalse();
            assertThat(earlier.isRewired(N, null)).isFalse();
        }
    }

    @Nested
    class ASetting {
        private boolean isSetAnew(int board, double delay, double step) {
            return earlier.isSetAnew(board, Setting.of(0, delay), Setting.of(0, step));
        }

        @Test
        void isAnewWithAnotherDelayOrStep() {
            assertThat(isSetAnew(B1, 1, 0.5)).isFalse();
            assertThat(isSetAnew(B1, 2, 0.5)).isTrue();
            assertThat(isSetAnew(B1, 1, 0.25)).isTrue();
        }

        @Test
        void isNothingOnABoardWhoseOutputsHaveTimesOfTheirOwn() {
            assertThat(isSetAnew(EACH, 3, 3)).isFalse();
        }

        @Test
        void ofANewBoardIsNeverAnew() {
            assertThat(isSetAnew(NEW, 2, 0.25)).isFalse();
        }

        /** By more than half a millisecond, whoever is on that output now; output 3 was that of a load that is gone. */
        @Test
        void isTheTimeOfAnOutputInUseThenAndNow() {
            assertThat(earlier.isRetimed(compiled.output(EACH, 0), 4_000_500)).isFalse();
            assertThat(earlier.isRetimed(compiled.output(EACH, 0), 4_000_501)).isTrue();
            assertThat(earlier.isRetimed(compiled.output(EACH, 1), 0))
                    .as("not in use then")
                    .isFalse();
            assertThat(earlier.isRetimed(compiled.output(EACH, 2), 4_000_000)).isTrue();
            assertThat(earlier.isRetimed(compiled.output(B1, 0), 0))
                    .as("no time of its own")
                    .isFalse();
        }
    }
}
