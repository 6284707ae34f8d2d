package evenrise.solver.observation;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.observation.Recording;
import evenrise.model.observation.StartSpan;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** A start within hours at four values a second, before which other things came and went. */
class StartSpanTest {
    private static final double INTERVAL = 0.25;
    private static final int BEFORE = 20_000;
    private static final int AFTER = 10_000;
    private static final double OFFSET = 70_000;

    private final Layout layout = ObserverTest.layout(5);

    /** What flows before, with heaters that come and go, the start, and what flows after. */
    private Recording hours(Recording start) {
        Random chance = new Random(1);
        int samples = start.seconds().length;
        double[] seconds = new double[BEFORE + samples + AFTER];
        Map<Phase, double[]> amps = new EnumMap<>(Phase.class);
        for (int i = 0; i < seconds.length; i++) {
            seconds[i] = i >= BEFORE && i < BEFORE + samples
                    ? start.seconds()[i - BEFORE]
                    : start.seconds()[0] + (i - BEFORE) * INTERVAL;
        }
        for (int i = BEFORE + samples; i < seconds.length; i++) {
            seconds[i] = start.seconds()[samples - 1] + (i - BEFORE - samples + 1) * INTERVAL;
        }
        start.amps().forEach((phase, each) -> {
            double[] all = new double[seconds.length];
            for (int i = 0; i < all.length; i++) {
                double steady = each[Math.max(0, Math.min(samples - 1, i - BEFORE))];
                boolean isStart = i >= BEFORE && i < BEFORE + samples;
                double heater = !isStart && i / 700 % 3 == phase.ordinal() ? 15 : 0;
                all[i] = steady + (isStart ? 0 : heater + 0.02 * chance.nextGaussian());
            }
            amps.put(phase, all);
        });
        return new Recording(seconds, amps);
    }

    private Recording start() {
        return ObserverTest.start(layout, 5).recorded(INTERVAL, 0.02, OFFSET, 1);
    }

    @Test
    void findsTheMinutesAboutTheStart() {
        Recording found = StartSpan.of(layout, 0, Optional.empty(), hours(start()));

        double last = layout.placements().stream()
                .flatMap(each -> each.onSeconds().isPresent()
                        ? java.util.stream.Stream.of(each.onSeconds().getAsDouble())
                        : java.util.stream.Stream.empty())
                .mapToDouble(each -> each)
                .max()
                .orElseThrow();
        double[] seconds = found.seconds();
        assertThat(seconds[0]).isBetween(OFFSET - 62, OFFSET - 57);
        assertThat(seconds[seconds.length - 1]).isBetween(OFFSET + last + 55, OFFSET + last + 62);
        assertThat(found.amps().get(Phase.B)).hasSize(seconds.length);
    }

    @Test
    void leavesAShortRecordingAsItIs() {
        Recording start = start();

        assertThat(StartSpan.of(layout, 0, Optional.empty(), start)).isSameAs(start);
        assertThat(Arrays.stream(start.seconds()).count()).isLessThan(BEFORE);
    }
}
