package evenrise.solver.observation;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.observation.ExpectedStart;
import evenrise.model.observation.Observation;
import evenrise.model.observation.ObservedStart;
import evenrise.model.observation.ObservedStart.Finding;
import evenrise.model.rules.Layout;
import evenrise.solver.observation.PlantedFault.Planted;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * What is said of faults that are planted anywhere, told or not, beside how sure it is said to be. The figure in docs is
 * drawn anew by -Devenrise.refresh=true, with as many plants as -Devenrise.observed says.
 */
@Tag("random")
class CalibrationTest {
    private static final int PLANTS = Integer.getInteger("evenrise.observed", 1);
    private static final int FIRST = Integer.getInteger("evenrise.observed.first", 1001);

    private static final Path FIGURE = Path.of("..", "docs", "figures", "calibration.svg");

    /** A sample of statements as sure as they say lies outside in one of a thousand. */
    private static final double RARE = 0.001;

    static List<Reliability.Statement> statements(long seed) {
        Layout layout = ObserverTest.layout(seed, 1 + (int) (seed % 3));
        List<ExpectedStart> all = ObserverTest.observed(layout, ObserverTest.start(layout, seed)).starts().stream()
                .map(ObservedStart::expected)
                .toList();
        List<ExpectedStart> single =
                all.stream().filter(each -> each.loads().size() == 1).toList();
        List<Reliability.Statement> statements = new ArrayList<>();
        for (PlantedFault kind : PlantedFault.values()) {
            SimulatedStart start = ObserverTest.start(layout, seed);
            Optional<Planted> planted = kind.plant(start, single, all, new Random(seed));
            planted.ifPresent(fault -> {
                Observation seen = ObserverTest.observed(layout, start);
                seen.starts().stream()
                        .filter(each -> each.likeliest() != Finding.AS_PLANNED)
                        .forEach(each ->
                                statements.add(new Reliability.Statement(each.confidence(), isTrue(each, fault))));
            });
        }
        return statements;
    }

    private static boolean isTrue(ObservedStart said, Planted fault) {
        return said.expected().loads().stream().anyMatch(load -> fault.truth(load) == said.likeliest());
    }

    @Test
    void isAsSureAsItIsRight() throws IOException {
        List<Reliability.Statement> statements = new ArrayList<>();
        for (long seed = FIRST; seed < FIRST + PLANTS; seed++) {
            statements.addAll(statements(seed));
        }

        List<Reliability.Bin> bins = Reliability.bins(statements);

        bins.forEach(System.out::println);
        if (Boolean.getBoolean("evenrise.refresh")) {
            Files.writeString(FIGURE, ReliabilityFigure.of(bins, RARE, PLANTS));
        }
        assertThat(statements).isNotEmpty();
        assertThat(bins)
                .allSatisfy(bin ->
                        assertThat(bin.isCalibrated(RARE)).as(bin.toString()).isTrue());
    }
}
