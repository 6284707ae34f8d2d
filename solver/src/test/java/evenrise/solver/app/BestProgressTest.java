package evenrise.solver.app;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.engine.Progress;
import org.junit.jupiter.api.Test;

class BestProgressTest {
    @Test
    void keepsTheBestOfSeveralSearches() {
        BestProgress best = new BestProgress();

        best.take(new Progress(1, 500, 100, 90, 1, 0));
        best.take(new Progress(2, 300, 80, 70, 1, 1));
        best.take(new Progress(3, 400, 95, 85, 1, 0));

        assertThat(best.best()).hasValue(new Progress(3, 500, 95, 85, 1, 0));
    }
}
