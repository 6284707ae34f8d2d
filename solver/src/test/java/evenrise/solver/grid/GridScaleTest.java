package evenrise.solver.grid;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.solver.grid.GridSimulation.Case;
import evenrise.solver.grid.GridSimulation.Outcome;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Collections;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** What a thousand cores do: docs/scale.md, from what was measured on one machine. */
class GridScaleTest {
    private static final String REFRESH = "evenrise.refresh";
    private static final Path PAGE = Path.of("../docs/scale.md");

    /** Processor seconds of plans of six demos; docs/scale.md says how they were measured. */
    private static final List<Double> LENGTHS = List.of(18.7, 18.2, 20.2, 12.3, 14.4, 29.1);

    /** Of the driver's processor for a job, there and back, its file included; the same. */
    private static final double DISPATCH_SECONDS = 0.00365;

    /** A frozen worker; a killed one is noticed at once. */
    private static final double NOTICE_SECONDS = 13;

    private static final double REPLACE_SECONDS = 60;
    private static final int JOBS_A_SLOT = 20;
    private static final int SLOTS = 16;

    private static Case usual(int cores, double dispatchSeconds, double lossesAnHour) {
        int workers = Math.max(1, cores / SLOTS);
        return new Case(
                workers,
                cores / workers,
                cores * JOBS_A_SLOT,
                LENGTHS,
                dispatchSeconds,
                lossesAnHour,
                NOTICE_SECONDS,
                REPLACE_SECONDS);
    }

    @Nested
    class OneSlot {
        @Test
        void takesTheSumOfItsJobs() {
            Outcome outcome = GridSimulation.of(new Case(1, 1, 10, List.of(5.0), 0, 0, 0, 0), 1);

            // 10 jobs of 5 s, one after another.
            assertThat(outcome.seconds()).isCloseTo(50, within(1e-9));
            assertThat(outcome.efficiency()).isCloseTo(1, within(1e-9));
        }

        @Test
        void waitsForItsDriverBetweenJobs() {
            Outcome outcome = GridSimulation.of(new Case(1, 1, 10, List.of(5.0), 1, 0, 0, 0), 1);

            // Of each job, half a second to give it and half a second to land it.
            assertThat(outcome.seconds()).isCloseTo(60, within(1e-9));
            assertThat(outcome.driverBusy()).isCloseTo(10 / 60.0, within(1e-9));
        }
    }

    @Nested
    class ADriver {
        @Test
        void isTheLimitWhereItHandlesFewerJobsThanSlotsEnd() {
            // 1,000 slots end 200 jobs of 5 s each second; at 10 ms each the driver handles 100.
            Outcome outcome = GridSimulation.of(new Case(100, 10, 20_000, List.of(5.0), 0.01, 0, 0, 0), 1);

            assertThat(outcome.efficiency()).isCloseTo(0.5, within(0.02));
            assertThat(outcome.driverBusy()).isGreaterThan(0.95);
        }
    }

    @Nested
    class Losses {
        @Test
        void costWhatRanAndTheWhileUntilAnotherIsThere() {
            Outcome none = GridSimulation.of(usual(256, 0, 0), 1);
            Outcome some = GridSimulation.of(usual(256, 0, 20), 1);

            assertThat(some.losses()).isPositive();
            assertThat(some.efficiency()).isLessThan(none.efficiency());
            assertThat(some.lostWork()).isPositive();
        }

        @Test
        void parkNoJobThatIsNotLostTwice() {
            assertThat(GridSimulation.of(usual(256, 0, 0), 1).parked()).isZero();
        }
    }

    @Test
    void endsTheSameForTheSameSeed() {
        assertThat(GridSimulation.of(usual(64, DISPATCH_SECONDS, 1), 7))
                .isEqualTo(GridSimulation.of(usual(64, DISPATCH_SECONDS, 1), 7));
    }

    @Test
    void isToldAsItIsComputed() throws IOException {
        String table = table();
        String page = Files.readString(PAGE);
        String begin = "<!-- simulated -->\n";
        String end = "<!-- end of simulated -->";
        int from = page.indexOf(begin) + begin.length();
        int to = page.indexOf(end);
        if (Boolean.getBoolean(REFRESH)) {
            Files.writeString(PAGE, page.substring(0, from) + table + page.substring(to));
            return;
        }

        assertThat(page.substring(from, to)).isEqualTo(table);
    }

    private static String table() {
        StringBuilder text = new StringBuilder(
                "| cores | jobs | losses of a worker an hour | hours | efficiency | driver busy | workers lost | work lost | jobs"
                        + " parked |\n| --- | --- | --- | --- | --- | --- | --- | --- | --- |\n");
        for (int cores : new int[] {16, 128, 1024, 4096}) {
            for (double losses : new double[] {0, 0.01, 0.5}) {
                text.append(row(usual(cores, DISPATCH_SECONDS, losses)));
            }
        }
        double mean =
                LENGTHS.stream().mapToDouble(Double::doubleValue).average().orElseThrow();
        text.append(String.format(
                Locale.ROOT,
                "%nMean job %.1f s, longest %.1f s. One driver keeps at most %,.0f slots busy (mean job over its %.1f ms a job)"
                        + ".%n",
                mean,
                Collections.max(LENGTHS),
                Math.floor(mean / DISPATCH_SECONDS / 100) * 100,
                1000 * DISPATCH_SECONDS));
        return text.toString();
    }

    private static String row(Case asked) {
        Outcome outcome = GridSimulation.of(asked, 1);
        return String.format(
                Locale.ROOT,
                "| %,d | %,d | %s | %.2f | %.1f %% | %.1f %% | %d | %.2f %% | %d |%n",
                asked.workers() * asked.slots(),
                asked.jobs(),
                asked.lossesAnHour() == 0 ? "none" : Double.toString(asked.lossesAnHour()),
                outcome.seconds() / 3600,
                100 * outcome.efficiency(),
                100 * outcome.driverBusy(),
                outcome.losses(),
                100 * outcome.lostWork(),
                outcome.parked());
    }
}
