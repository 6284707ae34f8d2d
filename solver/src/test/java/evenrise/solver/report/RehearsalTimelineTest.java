package evenrise.solver.report;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.event.Display;
import evenrise.model.event.EntryKind;
import evenrise.model.event.PhaseReading;
import evenrise.model.event.Trace;
import evenrise.model.event.TraceEntry;
import evenrise.model.event.Use;
import evenrise.model.project.Phase;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class RehearsalTimelineTest {
    private static TraceEntry step(double at, int loadsOn, Display shown) {
        return new TraceEntry(at, EntryKind.CLOSES, Optional.of("L"), "", loadsOn, shown, false);
    }

    private static PhaseReading reading(double at, String node, double amps) {
        return new PhaseReading(at, node, Phase.A, amps, amps);
    }

    /** Ten seconds: coming up at 0 s, half on at 2 s, all on at 5 s, down at 10 s. */
    private static List<String> lines() {
        return RehearsalTimeline.lines(
                new Trace(
                        Trace.FORMAT,
                        "hall",
                        "day",
                        Use.FULL,
                        10,
                        Display.DOWN,
                        false,
                        List.of(),
                        List.of(),
                        List.of(
                                step(0, 0, Display.COMING_UP),
                                step(2, 9, Display.COMING_UP),
                                step(5, 18, Display.UP),
                                step(10, 0, Display.DOWN)),
                        List.of(),
                        List.of(
                                reading(0, "supply", 0),
                                reading(2, "supply", 50),
                                reading(2, "P1", 500),
                                reading(5, "supply", 90),
                                reading(5.05, "supply", 89)),
                        List.of(),
                        List.of()),
                18,
                Paint.NONE);
    }

    @Test
    void takesTheFinestRoundColumnThatFits() {
        // 10 s over 80 columns: 0.2 s each, 51 columns, a label every ten of them
        assertThat(lines().get(0)).contains("one column 0.2 s");
        assertThat(lines().get(1)).isEqualTo("  seconds   0         2         4         6         8");
    }

    @Test
    void showsTheLastStateOfEachColumn() {
        assertThat(lines().get(3)).isEqualTo("  shown     " + "/".repeat(25) + "=".repeat(25) + "_");
        assertThat(lines().get(4))
                .isEqualTo("  loads on  " + "0".repeat(10) + "5".repeat(15) + "9".repeat(25) + "0  9 = 18");
    }

    @Test
    void showsTheHighestCurrentOfTheSupplyInEachColumn() {
        // 50 of 90 A are five ninths; panels do not count
        assertThat(lines().get(5))
                .isEqualTo(
                        "  peak      0" + ".".repeat(9) + "5" + ".".repeat(14) + "9" + ".".repeat(25) + "  9 = 90.0 A");
    }
}
