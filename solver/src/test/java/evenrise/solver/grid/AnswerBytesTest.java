package evenrise.solver.grid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;

class AnswerBytesTest {
    @Test
    void bringsAnOutput() {
        byte[] bytes = AnswerBytes.of(new GridAnswer.Done(new byte[] {1, 2, 3}));

        assertThat(AnswerBytes.read(bytes).orElseThrow())
                .isInstanceOfSatisfying(
                        GridAnswer.Done.class, done -> assertThat(done.output()).containsExactly(1, 2, 3));
    }

    @Test
    void bringsAFailureWithItsWordsHoweverLong() {
        GridAnswer failed = new GridAnswer.Failed(GridAnswer.Cause.THROWN, "ü".repeat(100_000));

        assertThat(AnswerBytes.read(AnswerBytes.of(failed))).contains(failed);
    }

    @Test
    void tellsAWorkerThatWasStopped() {
        assertThat(AnswerBytes.read(AnswerBytes.ofStopped())).isEmpty();
    }

    @Test
    void refusesOtherBytes() {
        assertThatThrownBy(() -> AnswerBytes.read(new byte[0])).hasMessage("no answer");
        assertThatThrownBy(() -> AnswerBytes.read(new byte[] {9})).hasMessage("no answer");
    }
}
