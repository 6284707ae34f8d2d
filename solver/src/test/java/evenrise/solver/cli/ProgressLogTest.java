package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.engine.Progress;
import java.io.PrintWriter;
import java.io.StringWriter;
import org.junit.jupiter.api.Test;

class ProgressLogTest {
    private final StringWriter text = new StringWriter();
    private final BestProgress best = new BestProgress();

    @Test
    void writesEverMoreSeldom() {
        ProgressLog log = new ProgressLog(new PrintWriter(text));
        best.take(new Progress(0, 10, 100, 90, 1, 0));

        for (int fifth = 0; fifth < 5 * 600; fifth++) {
            log.show(fifth / 5.0, best);
        }

        // Gaps of 1, 1.6, 2.6, … s up to a minute each: some nine until a minute, then one a minute.
        assertThat(text.toString().lines().count()).isBetween(15L, 22L);
    }

    @Test
    void isSilentUntilThereIsAPlan() {
        new ProgressLog(new PrintWriter(text)).show(3, best);

        assertThat(text.toString()).isEmpty();
    }

    @Test
    void keepsTheBestOfSeveralSearches() {
        best.take(new Progress(1, 500, 100, 90, 1, 0));
        best.take(new Progress(2, 300, 80, 70, 1, 1));
        best.take(new Progress(3, 400, 95, 85, 1, 0));

        assertThat(best.best()).hasValue(new Progress(3, 500, 95, 85, 1, 0));
    }
}
