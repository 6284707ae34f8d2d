package evenrise.model.simulation;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.Needs;
import evenrise.model.rules.Docs;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Our envelopes and dips beside what ngspice, an independent simulator of circuits, computes of rectifiers and saturating
 * transformers that are switched one after another on one source.
 */
@Needs("ngspice")
@Tag("slow")
class SimulatorTest {
    /** Set to write tables and figures anew instead of comparing them. */
    private static final String REFRESH = "evenrise.refresh";

    private static final String BEGIN = "<!-- simulations: generated, do not edit -->\n";
    private static final String END = "<!-- end of simulations -->\n";

    /** Sampling and solver tolerance of the simulation. */
    private static final double NUMERIC_RATIO = 0.01;

    /** Of the bound's peak: by so much a tail may exceed the envelope. */
    private static final double TAIL_PERCENT = 1;

    /** The bound's peak is at most so many times the simulated one, and its dip so many times the simulated dip. */
    private static final double PEAK_FACTOR = 2;

    private static final double DIP_FACTOR = 3.5;

    @TempDir
    static Path folder;

    private static final Map<Device, Device.Datasheet> DATASHEETS = new EnumMap<>(Device.class);
    private static final Map<String, Comparison> COMPARISONS = new java.util.LinkedHashMap<>();

    @BeforeAll
    static void simulate() throws IOException, InterruptedException {
        for (Device device : Device.values()) {
            DATASHEETS.put(device, device.datasheet(folder));
        }
        for (Scene scene : Scene.all()) {
            Path own = Files.createDirectories(folder.resolve(scene.name()));
            COMPARISONS.put(
                    scene.name(), new Comparison(scene, Wave.of(scene.circuit(), Scene.LAST_SECONDS, own), DATASHEETS));
        }
    }

    static List<String> scenes() {
        return Scene.all().stream().map(Scene::name).toList();
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void envelopeIsAnUpperBoundAtEveryInstant(String name) {
        assertThat(COMPARISONS.get(name).greatestExcessPercent()).isLessThan(TAIL_PERCENT);
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void peakOfTheBoundIsWithinAFactorOfTheSimulatedOne(String name) {
        Comparison comparison = COMPARISONS.get(name);

        assertThat(comparison.boundPeakAmps())
                .isBetween(
                        comparison.simulatedPeakAmps() * (1 - NUMERIC_RATIO),
                        comparison.simulatedPeakAmps() * PEAK_FACTOR);
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void peakBehindTheSourceIsNearerToTheSimulatedOneThanTheBound(String name) {
        Comparison comparison = COMPARISONS.get(name);

        double bound = Math.abs(comparison.boundPeakAmps() - comparison.simulatedPeakAmps());
        double realistic = Math.abs(comparison.realisticPeakAmps() - comparison.simulatedPeakAmps());
        assertThat(realistic).isLessThanOrEqualTo(bound);
    }

    @ParameterizedTest
    @MethodSource("scenes")
    void dipIsAnUpperBoundWithinAFactor(String name) {
        Comparison comparison = COMPARISONS.get(name);

        assertThat(comparison.boundDipPercent())
                .isBetween(comparison.simulatedDipPercent(), comparison.simulatedDipPercent() * DIP_FACTOR);
    }

    /** An RC circuit alone has a closed form: √2·V/R less the bridge's drops, where the source is stiff. */
    @Test
    void simulatedRectifierPeaksAsItsClosedFormSays() {
        double expected = (Circuit.CREST_VOLTS - 1.4) / 6;

        assertThat(DATASHEETS.get(Device.AMPLIFIER).peakAmps()).isCloseTo(expected, within(0.02 * expected));
    }

    @Test
    void pageShowsWhatTheSimulatorGives() throws IOException {
        Path path = Docs.page("validation.md");
        String page = Files.readString(path);
        int begin = page.indexOf(BEGIN);
        int end = page.indexOf(END);
        if (Boolean.getBoolean(REFRESH)) {
            String table = BEGIN + table() + END;
            String fresh = begin < 0
                    ? page + "\n" + table
                    : page.substring(0, begin) + table + page.substring(end + END.length());
            Files.writeString(path, fresh);
            Path figures = Files.createDirectories(Docs.page("figures"));
            for (Comparison each : COMPARISONS.values()) {
                Files.writeString(figures.resolve("simulation-" + each.scene().name() + ".svg"), Plot.svg(each));
            }
            return;
        }

        assertThat(begin).as("the page has no table of simulations").isNotNegative();
        for (Comparison each : COMPARISONS.values()) {
            holds(page.substring(begin, end), each);
            assertThat(Docs.page("figures").resolve("simulation-" + each.scene().name() + ".svg"))
                    .exists();
        }
    }

    /** Another version of the simulator may differ in the last digits: a row holds within two per cent. */
    private static void holds(String table, Comparison each) {
        String row = table.lines()
                .filter(line -> line.startsWith("| " + each.scene().inWords() + " |"))
                .findFirst()
                .orElseThrow(
                        () -> new AssertionError("no row for " + each.scene().inWords()));
        String[] cells = row.split("\\|");
        double[] ours = figures(each);
        for (int i = 0; i < ours.length; i++) {
            double printed = Double.parseDouble(cells[2 + i].strip());
            assertThat(ours[i]).as(row).isCloseTo(printed, within(Math.max(0.3, 0.02 * Math.abs(printed))));
        }
    }

    private static double[] figures(Comparison each) {
        return new double[] {
            each.simulatedPeakAmps(),
            each.realisticPeakAmps(),
            each.boundPeakAmps(),
            each.greatestExcessPercent(),
            each.simulatedDipPercent(),
            each.boundDipPercent()
        };
    }

    private static String table() {
        StringBuilder text = new StringBuilder();
        text.append(
                "| loads and source (230 V, 50 Hz) | simulated peak, A | behind the source, A | upper bound at nominal"
                        + " voltage, A | most above the envelope, % of its peak | simulated dip, % | bound of the dip, %"
                        + " |\n");
        text.append("| --- | --- | --- | --- | --- | --- | --- |\n");
        for (Comparison each : COMPARISONS.values()) {
            text.append("| ").append(each.scene().inWords());
            for (double figure : figures(each)) {
                text.append(String.format(Locale.ROOT, " | %.2f", figure));
            }
            text.append(" |\n");
        }
        text.append('\n');
        COMPARISONS
                .values()
                .forEach(each -> text.append(String.format(
                        Locale.ROOT,
                        "![%s: simulated current under the dashed bound](figures/simulation-%s.svg)%n%n",
                        each.scene().inWords(),
                        each.scene().name())));
        return text.toString().replace("\r", "");
    }
}
