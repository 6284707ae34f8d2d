package evenrise.solver.app;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicInteger;
import org.junit.jupiter.api.Test;

class TimeLimitTest {
    @Test
    void endsWhatRunsAndWhatComesLaterOnceSomebodyCancels() {
        CancelSwitch cancel = new CancelSwitch();
        AtomicInteger stopped = new AtomicInteger();
        try (TimeLimit limit = new TimeLimit(Optional.empty(), cancel)) {
            limit.whenOver(stopped::incrementAndGet);
            assertThat(limit.isOver()).isFalse();

            cancel.cancel();
            limit.whenOver(stopped::incrementAndGet);

            assertThat(limit.isOver()).isTrue();
            assertThat(stopped).hasValue(2);
        }
    }

    @Test
    void endsWhatRunsWhenTheTimeIsOver() throws InterruptedException {
        CountDownLatch stopped = new CountDownLatch(1);
        try (TimeLimit limit = new TimeLimit(Optional.of(Duration.ofMillis(1)), Cancellation.NEVER)) {
            limit.whenOver(stopped::countDown);

            assertThat(stopped.await(1, TimeUnit.MINUTES)).isTrue();
            assertThat(limit.isOver()).isTrue();
        }
    }
}
