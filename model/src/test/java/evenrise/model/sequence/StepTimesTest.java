package evenrise.model.sequence;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.BoardBuilder;
import evenrise.model.BoardTypeBuilder;
import evenrise.model.plan.BoardSetting;
import evenrise.model.project.BoardTiming;
import evenrise.model.project.OfferedTimes;
import evenrise.model.project.PassesOn;
import java.util.HashMap;
import java.util.List;
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

    /** Boards of other kinds: all of B1's outputs pass on, or each output has a time of its own of 0, 0.5, … 10 s. */
    @Nested
    class OtherKinds {
        private final BoardBuilder first = aBoard("B1");
        private final BoardBuilder second = aBoard("B2").after("B1");

        private StepTimes times(BoardTypeBuilder type, Map<String, Integer> lastUsed, Map<Integer, Double> asked) {
            return new StepTimes(
                    aProject()
                            .boardTypes(type, aBoardType("plain"))
                            .boards(first, second.type("plain"))
                            .build(),
                    Map.of("B1", new BoardSetting("B1", 2, 0.5), "B2", new BoardSetting("B2", 2, 0.5)),
                    lastUsed,
                    asked.isEmpty() ? Map.of() : Map.of("B1", asked));
        }

        private BoardTypeBuilder passingOnAfterAll() {
            return aBoardType(BoardTypeBuilder.EIGHT).with(type -> type.passesOn(PassesOn.ALL));
        }

        private BoardTypeBuilder timedByOutput() {
            return aBoardType(BoardTypeBuilder.EIGHT)
                    .with(type -> type.startDelaySeconds(List.of())
                            .stepSeconds(List.of())
                            .timing(BoardTiming.EACH)
                            .timesSeconds(OfferedTimes.builder()
                                    .from(0)
                                    .to(10)
                                    .by(0.5)
                                    .build()));
        }

        /** Output 8 would come on at 2 + 7·0.5 = 5.5 s, though output 3 is the last in use. */
        @Test
        void passOnWhenTheLastOutputWouldComeOn() {
            StepTimes times = times(passingOnAfterAll(), Map.of("B1", 3, "B2", 1), Map.of());

            assertThat(times.beginSeconds("B2")).isEqualTo(5.5);
            assertThat(times.durationSeconds()).isEqualTo(7.5);
        }

        @Test
        void passOnAtOnceWhereNoOutputIsInUse() {
            assertThat(times(passingOnAfterAll(), Map.of("B2", 1), Map.of()).beginSeconds("B2"))
                    .isZero();
        }

        @Test
        void comeOnAtTheOfferedTimeNextToTheOneThatIsAsked() {
            StepTimes times = times(timedByOutput(), Map.of("B1", 3, "B2", 1), Map.of(1, 4.2, 3, 1.3));

            assertThat(times.onSeconds("B1", 1)).isEqualTo(4);
            assertThat(times.onSeconds("B1", 3)).isEqualTo(1.5);
            assertThat(times.onSeconds("B1", 2)).isZero();
        }

        /** B1 ends at 2 + 2·0.5 = 3 s, where B2 begins; 4.6 s after the command are 1.6 s after that, next to 1.5 s. */
        @Test
        void countTheOfferedTimesFromTheirOwnBeginning() {
            StepTimes times = new StepTimes(
                    aProject()
                            .boardTypes(timedByOutput(), aBoardType("plain"))
                            .boards(aBoard("B1").type("plain"), aBoard("B2").after("B1"))
                            .build(),
                    Map.of("B1", new BoardSetting("B1", 2, 0.5), "B2", new BoardSetting("B2", 2, 0.5)),
                    Map.of("B1", 3, "B2", 1),
                    Map.of("B2", Map.of(1, 4.6)));

            assertThat(times.beginSeconds("B2")).isEqualTo(3);
            assertThat(times.onSeconds("B2", 1)).isEqualTo(4.5);
            assertThat(times.durationSeconds()).isEqualTo(4.5);
        }

        /** The latest output, not the highest: 4 s; the next board's first output 2 s later. */
        @Test
        void passOnWithTheLatestOfTheirOutputs() {
            StepTimes times = times(timedByOutput(), Map.of("B1", 3, "B2", 1), Map.of(1, 4.2, 3, 1.3));

            assertThat(times.beginSeconds("B2")).isEqualTo(4);
            assertThat(times.finishSeconds("B1")).isEqualTo(4);
            assertThat(times.durationSeconds()).isEqualTo(6);
        }
    }
}
