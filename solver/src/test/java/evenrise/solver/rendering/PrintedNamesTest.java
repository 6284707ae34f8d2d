package evenrise.solver.rendering;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.document.Document;
import evenrise.solver.document.Documents;
import evenrise.solver.document.Imprint;
import java.io.IOException;
import java.text.Normalizer;
import java.util.List;
import java.util.Optional;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Names of any alphabet are printed as they are, or with a box for each sign that no font here has. */
class PrintedNamesTest {
    private static Document document(String name) {
        Project project =
                aProject().boards(aBoard("B1")).loads(aLoad("L1").name(name)).build();
        Layout layout = Layout.of(
                project,
                aPlan().assignments(anAssignment("L1").at("P1", 1).on("B1", 1)).build());
        return Documents.of(
                new Imprint("Hall", "C7", "2026-01-02", "0123456789abcdef", "test"),
                Evaluation.of(layout, () -> ProvenBounds.of(layout.project())),
                Optional.empty(),
                List.of());
    }

    private static PDDocument print(String name) throws IOException {
        return Loader.loadPDF(new PrintedSheets(document(name)).on(PrintedSheets.Paper.A4));
    }

    /** Letters that are drawn joined are told as those that they are made of. */
    private static String text(PDDocument pdf) throws IOException {
        return Normalizer.normalize(new PDFTextStripper().getText(pdf), Normalizer.Form.NFKC)
                .replaceAll("\\s+", " ");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Ενισχυτής σκηνής",
                "Усилитель сцены",
                "Wzmacniacz główny źródło",
                "Förstärkare für Bühne, ç ñ ő ş",
                "מגבר במה",
                "مكبر المسرح"
            })
    void areReadBackAsTheyAre(String name) throws IOException {
        try (PDDocument pdf = print(name)) {
            assertThat(text(pdf)).contains(name);
        }
    }

    @Test
    void aSignThatNoFontHasIsABoxAndTheCoverSaysSo() throws IOException {
        String oldPersian = new String(Character.toChars(0x103A0));

        try (PDDocument pdf = print("left" + oldPersian + "right")) {
            assertThat(text(pdf))
                    .contains("left" + PrintFonts.REPLACEMENT + "right", "1 sign of names has no font here");
        }
    }

    /** Which of both depends on the machine's fonts. */
    @Test
    void chineseIsPrintedOrReplacedSignBySign() throws IOException {
        try (PDDocument pdf = print("舞台 A")) {
            String box = PrintFonts.REPLACEMENT;
            assertThat(text(pdf)).containsAnyOf("舞台 A", box + box + " A", "舞" + box + " A", box + "台 A");
        }
    }

    @Test
    void sheetsSayTheirTitleAndLanguageAndAreFoundByTheirOutline() throws IOException {
        try (PDDocument pdf = print("Stage")) {
            assertThat(pdf.getDocumentInformation().getTitle()).isEqualTo("Hall, revision C7");
            assertThat(pdf.getDocumentCatalog().getLanguage()).isEqualTo("en");
            assertThat(pdf.getDocumentCatalog().getDocumentOutline().children())
                    .extracting(PDOutlineItem::getTitle)
                    .contains("Sequence", "Panel schedules", "Commissioning sheet", "Labels for the breakers");
        }
    }

    @Test
    void theSameDocumentGivesTheSameSheets() {
        assertThat(new PrintedSheets(document("Stage")).on(PrintedSheets.Paper.A4))
                .isEqualTo(new PrintedSheets(document("Stage")).on(PrintedSheets.Paper.A4));
    }

    @Test
    void sheetsDrawnTogetherAreThoseDrawnApart() {
        List<PrintedSheets.Paper> papers = List.of(PrintedSheets.Paper.A4, PrintedSheets.Paper.LETTER);

        assertThat(new PrintedSheets(document("מגבר במה")).on(papers))
                .allSatisfy((paper, sheets) ->
                        assertThat(sheets).isEqualTo(new PrintedSheets(document("מגבר במה")).on(paper)));
    }
}
