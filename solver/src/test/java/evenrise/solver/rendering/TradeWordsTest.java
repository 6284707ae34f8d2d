package evenrise.solver.rendering;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.browser.DrawnPages;
import evenrise.solver.document.Document;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Documents speak as the trade does, not as the program is built. */
class TradeWordsTest {
    /** Words of ours that no electrician uses of a plant, and what once stood for others. */
    private static final List<Pattern> BANNED = List.of(
            Pattern.compile("\\bNodes?\\b"),
            Pattern.compile("\\b(each|further|the) nodes?\\b"),
            Pattern.compile("\\b[Cc]ommands?\\b"),
            Pattern.compile("At \\[?supply\\b"),
            Pattern.compile("Type twenty"),
            Pattern.compile("Deep dip"));

    private static void hasNone(String text) {
        for (Pattern word : BANNED) {
            assertThat(text).doesNotContainPattern(word);
        }
    }

    private static String printed(Document document) throws IOException {
        try (PDDocument pdf = Loader.loadPDF(new PrintedSheets(document).on(PrintedSheets.Paper.A4))) {
            return new PDFTextStripper().getText(pdf);
        }
    }

    /** What somebody reads: no script, no style, no data of the script. */
    private static String shown(Document document) {
        return HtmlPage.of(document)
                .replaceAll("(?s)<style>.*?</style>", "")
                .replaceAll("(?s)<script\\b[^>]*>.*?</script>", "")
                .replaceAll("<[^>]+>", " ");
    }

    @ParameterizedTest
    @ValueSource(strings = {"fennel-studio", "tin-shed"})
    void pageSheetsAndTablesHaveNoneOfOurOwnWords(String demo) throws IOException {
        Document document = DrawnPages.of(demo).document();

        hasNone(shown(document));
        hasNone(printed(document));
        document.tables().all().forEach(table -> hasNone(table.title() + table.note() + table.values()));
    }

    @Test
    void theGlossaryHasEveryWordThatHeadsASheetOfTheTrade() throws IOException {
        String glossary = Files.readString(Path.of("../docs/glossary.md"));

        for (String word : List.of(
                "breaker",
                "panel",
                "slot",
                "board",
                "output",
                "start signal",
                "stop signal",
                "start delay",
                "step",
                "envelope",
                "peak",
                "running current",
                "idle current",
                "inrush",
                "neutral",
                "imbalance",
                "margin",
                "dip",
                "shutdown group",
                "contactor",
                "landing list",
                "spare",
                "space",
                "bus",
                "settling")) {
            assertThat(glossary).contains("| " + word + " |");
        }
    }
}
