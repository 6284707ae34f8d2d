package evenrise.solver.bounds;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.Bounds;
import evenrise.model.project.Project;
import evenrise.solver.sample.Sample;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.BooleanSupplier;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Bounds for whoever cannot wait: whenever they are stopped, what they say is proven, and no more than with time. */
class StoppedBoundsTest {
    private static final Project PROJECT = Sample.venue(1, 8);
    private static final Bounds FULL = ProvenBounds.of(PROJECT);

    @ParameterizedTest
    @ValueSource(ints = {0, 1, 2, 5, 20, 60})
    void isNeverAboveTheBoundThatHadAllItsTime(int steps) {
        Bounds stopped = ProvenBounds.of(PROJECT, after(steps));

        assertThat(stopped.objective()).isPositive().isLessThanOrEqualTo(FULL.objective());
        assertThat(stopped.peakInrushAmps()).isPositive().isLessThanOrEqualTo(FULL.peakInrushAmps());
        assertThat(stopped.durationSeconds()).isLessThanOrEqualTo(FULL.durationSeconds());
    }

    private static BooleanSupplier after(int steps) {
        AtomicInteger asked = new AtomicInteger();
        return () -> asked.incrementAndGet() > steps;
    }
}
