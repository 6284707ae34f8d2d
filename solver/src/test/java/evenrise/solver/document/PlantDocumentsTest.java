package evenrise.solver.document;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Overlap;
import evenrise.model.project.Project;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import evenrise.solver.browser.DrawnPages;
import evenrise.solver.rendering.HtmlPage;
import evenrise.solver.rendering.PrintedSheets;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** Documents of a plant with transformers, sources, systems, scenes and other kinds of board. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PlantDocumentsTest {
    private static final long MOVES = 1000;

    private DrawnPages.Planned planned;
    private Document document;

    @BeforeAll
    void plan() {
        planned = DrawnPages.of(Plants.read(Plants.twoHalls()), MOVES);
        document = planned.document();
    }

    @ParameterizedTest
    @EnumSource(Overlap.class)
    void drawEveryNodeUpToItsPeak(Overlap overlap) {
        Project project = Plants.read(Plants.twoHalls()).withOverlap(overlap);
        Layout layout = Layout.of(project, planned.layout().plan());

        List<NodeCurves> curves = DrawnPages.of(layout).document().nodes();

        for (Point point : layout.distribution().points()) {
            double peak = layout.worstPeak(point.index()).amps();
            List<NodeCurves> own = curves.stream()
                    .filter(each -> each.node().equals(point.id()))
                    .toList();
            // Every curve runs through the peak that is stated for it, and the highest is the referee's.
            own.forEach(curve -> curve.phases()
                    .forEach(phase -> assertThat(phase.amps().stream()
                                    .mapToDouble(Double::doubleValue)
                                    .max()
                                    .orElseThrow())
                            .isCloseTo(phase.peakAmps(), within(1e-9))));
            assertThat(own.stream()
                            .mapToDouble(each -> Math.max(each.peakAmps(), each.usedAmps()))
                            .max()
                            .orElseThrow())
                    .isCloseTo(peak, within(1e-9));
        }
    }

    @Test
    void tellTheDistributionTopDown() {
        Map<String, DistributionRow> rows = document.tables().distribution().orElseThrow().rows().stream()
                .collect(Collectors.toMap(row -> row.node().node(), Function.identity()));

        assertThat(document.tables().distribution().orElseThrow().rows().stream()
                        .map(row -> row.node().node()))
                .containsExactly("supply", "T-1", "P1", "S-1", "P2", "GEN", "P3");
        assertThat(rows.get("T-1").kind()).isEqualTo("transformer");
        assertThat(rows.get("T-1").transformer()).isEqualTo("75 kVA, delta-wye, 4.5 %, K-13");
        assertThat(rows.get("S-1").system()).isEqualTo("split-phase, 120 V to neutral, 60 Hz");
        assertThat(rows.get("P2").fedFrom()).isEqualTo("S-1");
        assertThat(rows.get("GEN").kind()).isEqualTo("source");
        // P2 at full use: 8 A lamp, 2 A core, 7 A amplifiers at 120 V, one pole each: 17·120/1000.
        assertThat(rows.get("P2").fullUseKva()).isCloseTo(2.04, within(1e-9));
        assertThat(rows.get("S-1").fullUseKva()).isCloseTo(2.04, within(1e-9));
    }

    /** Off: the system's length, less when it came on, and what it asks for beyond. */
    @Test
    void giveEveryLoadTheTimesOfItsOwnSystem() {
        Map<String, PlannedCircuit> circuits = document.tables().circuits().rows().stream()
                .collect(Collectors.toMap(PlannedCircuit::load, Function.identity()));
        double south = List.of("lamp", "core", "amp-4").stream()
                .mapToDouble(id -> circuits.get(id).onSeconds().orElseThrow())
                .max()
                .orElseThrow();

        PlannedCircuit lamp = circuits.get("lamp");
        assertThat(lamp.offSeconds().orElseThrow())
                .isCloseTo(south - lamp.onSeconds().orElseThrow() + 60, within(1e-9));
        for (Placement each : planned.layout().placements()) {
            assertThat(circuits.get(each.id()).onSeconds()).isEqualTo(each.onSeconds());
        }
        assertThat(circuits.get("amp-1").contactor()).isEqualTo("contactor, with amp-2");
        assertThat(circuits.get("amp-2").contactor()).isEqualTo("behind the contactor of amp-1");
        assertThat(circuits.get("amp-2").onSeconds())
                .isEqualTo(circuits.get("amp-1").onSeconds());
    }

    /** What an output is set to counts from its board's start, on from the command. */
    @Test
    void setOutputsWithTimesOfTheirOwnFromTheirBoardsStart() {
        assertThat(document.tables().landing().rows())
                .filteredOn(each -> each.setSeconds().isPresent())
                .isNotEmpty()
                .allSatisfy(each -> assertThat(each.setSeconds().orElseThrow()
                                + planned.layout()
                                        .times()
                                        .beginSeconds(each.board().orElseThrow()))
                        .isCloseTo(each.onSeconds().orElseThrow(), within(1e-9)));
    }

    @Test
    void haveNoneOfItForAPlainHouse() {
        DocumentTables plain = DrawnPages.of("willow-chapel").document().tables();

        assertThat(plain.distribution()).isEmpty();
        assertThat(plain.systems()).isEmpty();
        assertThat(plain.starts()).isEmpty();
        assertThat(plain.scenes()).isEmpty();
    }

    @Test
    void arePrintedAndShownOnThePage() throws IOException {
        String printed;
        try (PDDocument pdf = Loader.loadPDF(new PrintedSheets(document).on(PrintedSheets.Paper.A4))) {
            printed = new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
        }

        assertThat(printed)
                .contains(
                        "Distribution: what feeds what",
                        "Sequence of system north",
                        "Sequence of system south",
                        "Transformer T-1",
                        "Source GEN",
                        "Fed from T-1",
                        "Each output has a time of its own",
                        "contactor, with amp-2",
                        "one desk runs both",
                        "full use, no scene");
        assertThat(HtmlPage.of(document))
                .contains(
                        "id=\"distribution\"",
                        "id=\"systems\"",
                        "id=\"starts\"",
                        "id=\"scenes\"",
                        "<select id=\"system\">");
    }
}
