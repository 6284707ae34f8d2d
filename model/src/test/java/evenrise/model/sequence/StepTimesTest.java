package evenrise.model.sequence;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.BoardBuilder;
import evenrise.model.plan.BoardSetting;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Every board here has a start delay of 2 s and a step of 0.5 s. */
class StepTimesTest {
    private static StepTimes times(Map<String, Integer> lastUsed, BoardBuilder... boards) {
        Map<String, BoardSetting> settings = new HashMap<>();
        for (BoardBuilder board : boards) {
            String id = board.build().id();
            settings.put(id, new BoardSetting(id, 2, 0.5));
        }
        return new StepTimes(aProject().boards(boards).build(), settings, lastUsed);
    }

    @Nested
    class OneBoard {
        @Test
        void comesOnAStepApartAfterItsStartDelay() {
            StepTimes times = times(Map.of("B1", 8), aBoard("B1"));

            assertThat(times.beginSeconds("B1")).isZero();
            assertThat(times.onSeconds("B1", 1)).isEqualTo(2);
            assertThat(times.onSeconds("B1", 2)).isEqualTo(2.5);
            assertThat(times.onSeconds("B1", 8)).isEqualTo(5.5);
        }

        @Test
        void endsWithItsLastUsedOutputAndNotWithTheBoard() {
            assertThat(times(Map.of("B1", 3), aBoard("B1")).durationSeconds()).isEqualTo(3);
        }

        @Test
        void takesNoTimeWithoutAUsedOutput() {
            StepTimes times = times(Map.of(), aBoard("B1"));

            assertThat(times.durationSeconds()).isZero();
            assertThat(times.finishSeconds("B1")).isZero();
        }

        @Test
        void goesOffInTheMirrorImage() {
            StepTimes times = times(Map.of("B1", 3), aBoard("B1"));

            assertThat(times.offSeconds(3)).isZero();
            assertThat(times.offSeconds(2)).isEqualTo(1);
        }
    }

    @Nested
    class Chain {
        @Test
        void beginsWithTheLastUsedOutputOfTheBoardBefore() {
            StepTimes times =
                    times(Map.of("B1", 3, "B2", 1), aBoard("B1"), aBoard("B2").after("B1"));

            assertThat(times.beginSeconds("B2")).isEqualTo(3);
            assertThat(times.onSeconds("B2", 1)).isEqualTo(5);
        }

        @Test
        void passesThroughABoardWithoutAUsedOutput() {
            StepTimes times = times(
                    Map.of("B1", 3, "B3", 1),
                    aBoard("B1"),
                    aBoard("B2").after("B1"),
                    aBoard("B3").after("B2"));

            assertThat(times.beginSeconds("B3")).isEqualTo(3);
        }

        @Test
        void doesNotDependOnTheOrderOfTheFile() {
            StepTimes times = times(
                    Map.of("B1", 3, "B2", 1, "B3", 1),
                    aBoard("B3").after("B2"),
                    aBoard("B2").after("B1"),
                    aBoard("B1"));

            assertThat(times.onSeconds("B3", 1)).isEqualTo(7);
        }

        @Test
        void letsSeveralBoardsFollowOne() {
            StepTimes times = times(
                    Map.of("B1", 1, "B2", 2, "B3", 3),
                    aBoard("B1"),
                    aBoard("B2").after("B1"),
                    aBoard("B3").after("B1"));

            assertThat(times.beginSeconds("B2"))
                    .isEqualTo(times.beginSeconds("B3"))
                    .isEqualTo(2);
            assertThat(times.durationSeconds()).isEqualTo(2 + 2 + 1);
        }

        @Test
        void mayBeVeryLong() {
            BoardBuilder[] boards = IntStream.range(0, 20_000)
                    .mapToObj(i -> i == 0 ? aBoard("B0") : aBoard("B" + i).after("B" + (i - 1)))
                    .toArray(BoardBuilder[]::new);
            Map<String, Integer> lastUsed = Map.of("B0", 1, "B19999", 1);

            assertThat(times(lastUsed, boards).durationSeconds()).isEqualTo(4);
        }
    }
}
