package evenrise.solver.rendering;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.Circuit;
import evenrise.model.rules.Layout;
import evenrise.solver.browser.DrawnPages;
import evenrise.solver.document.Document;
import evenrise.solver.document.DocumentTable;
import evenrise.solver.document.PanelTest;
import evenrise.solver.document.ResidualTest;
import java.io.IOException;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** What goes to site says what is to be left alone, and what is to be measured beside what is planned. */
class SiteSheetsTest {
    /** Three boards in a chain, of which the one in the middle and another switch nothing. */
    private static Document document() {
        Layout layout = Layout.of(
                aProject()
                        .boards(
                                aBoard("B1"),
                                aBoard("B2").after("B1"),
                                aBoard("B3").after("B2"),
                                aBoard("B4"))
                        .loads(
                                aLoad("one")
                                        .circuit(Circuit.builder()
                                                .residualCurrentAmps(OptionalDouble.of(0.03))
                                                .build()),
                                aLoad("two"))
                        .build(),
                aPlan().assignments(
                                anAssignment("one").at("P1", 1).on("B1", 3),
                                anAssignment("two").at("P1", 2).on("B3", 1))
                        .build());
        return DrawnPages.of(layout).document();
    }

    private static String printed(Document document) throws IOException {
        try (PDDocument pdf = Loader.loadPDF(new PrintedSheets(document).on(PrintedSheets.Paper.A4))) {
            return new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
        }
    }

    private static <R> Map<String, String> settings(DocumentTable<R> table, String board) {
        return ShownTable.of(table).byKey().stream()
                .filter(row -> row.get("board").equals(board))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void listEveryOutputAndSayWhichStayOpen() throws IOException {
        String text = printed(document());

        // Four boards of eight outputs, two of which are used.
        assertThat(text.split("unused, leave open", -1)).hasSize(30 + 1);
        assertThat(text)
                .contains("1 unused, leave open 2 unused, leave open 3 one")
                .contains("Commissioning sheet");
    }

    @Test
    void tellBoardsThatSwitchNothingAndWhatStartsAfterThemAllTheSame() throws IOException {
        Document document = document();

        assertThat(settings(document.tables().settings(), "B3"))
                .containsEntry("chain", "start signal → B1 → B2 → B3")
                .containsEntry("use", "yes");
        assertThat(settings(document.tables().settings(), "B2"))
                .containsEntry("use", "no load hangs on it, but B3 starts after it: power it and set it");
        assertThat(settings(document.tables().settings(), "B4")).containsEntry("use", "no: no load hangs on it");
        assertThat(printed(document)).contains("no load hangs on it, but B3 starts after it: power it and set it");
    }

    @Test
    void holdWholePanelsAgainstTheSumsOfTheirLoads() {
        DrawnPages.Planned planned = DrawnPages.of("fennel-studio");

        for (PanelTest test : planned.document().tables().tests().rows()) {
            test.idleAmps()
                    .forEach((phase, amps) -> assertThat(amps)
                            .as(test.panel() + " " + phase)
                            .isCloseTo(
                                    planned.layout().placements().stream()
                                            .filter(each ->
                                                    each.assignment().panel().equals(test.panel())
                                                            && each.phases().contains(phase))
                                            .mapToDouble(each -> each.load().idleAmps())
                                            .sum(),
                                    within(1e-9)));
        }
    }

    @Test
    void nameResidualCurrentDevicesWithTheLeakageThatIsRecommendedAtMost() {
        List<ResidualTest> devices =
                document().tables().residual().orElseThrow().rows();

        assertThat(devices).singleElement().satisfies(device -> {
            assertThat(device.protects()).isEqualTo("one");
            assertThat(device.ratedMilliamps()).isEqualTo(30);
            // 0.3 · 30 mA, IEC 60364-5-53 clause 531.3.2 (from memory).
            assertThat(device.leakageMilliamps()).isCloseTo(9, within(1e-9));
        });
        assertThat(DrawnPages.of("fennel-studio").document().tables().residual())
                .isEmpty();
    }
}
