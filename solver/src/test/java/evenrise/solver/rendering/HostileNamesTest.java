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
import evenrise.solver.document.DocumentTable;
import evenrise.solver.document.Documents;
import evenrise.solver.document.Imprint;
import evenrise.solver.document.LabelKind;
import evenrise.solver.document.SheetLanguage;
import evenrise.solver.document.SheetWords;
import evenrise.solver.rework.AnOrderedWork;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Whatever a load is called, no document acts on it. */
@Tag("slow")
class HostileNamesTest {
    static List<String> names() {
        return List.of(
                "<script>alert(1)</script>",
                "</script><img src=x onerror=alert(1)>",
                "\"><b>bold",
                "=HYPERLINK(\"x\")",
                "+1+cmd|' /C calc'!A0",
                "\u202egnp.exe",
                "a\u0000b\u0007",
                "x".repeat(10_000),
                "\uD83D\uDE00 emoji & <tag>",
                "{{ document }} {% raw %}");
    }

    private static Document document(String name) {
        return document("L1", name);
    }

    private static Document document(String id, String name) {
        Project project =
                aProject().boards(aBoard("B1")).loads(aLoad(id).name(name)).build();
        Layout layout = Layout.of(
                project,
                aPlan().assignments(anAssignment(id).at("P1", 1).on("B1", 1)).build());
        return Documents.of(
                new Imprint(name, name, "2026", "0123456789abcdef", "test"),
                Evaluation.of(layout, () -> ProvenBounds.of(layout.project())),
                Optional.empty(),
                List.of());
    }

    /** Ids are names, too, and go other ways through the documents. */
    @ParameterizedTest
    @MethodSource("names")
    void isInertAsAnIdInEveryFormat(String id) throws IOException {
        Document document = document(id, "Load");

        String page = HtmlPage.of(document);
        assertThat(page.contains("<script>alert") || page.contains("<b>bold")).isFalse();
        String seen = page.replaceAll("<[^>]*>", ""); // what stands in tags are keys, which nobody sees
        assertThat(seen.contains("\u202e") || seen.contains("\u0007")).isFalse();
        assertThat(new PrintedSheets(document).on(PrintedSheets.Paper.A4)).isNotEmpty();
        assertThat(WorkbookFile.of(document)).isNotEmpty();
        assertThat(document.tables().all()).allSatisfy(HostileNamesTest::hasInertValues);
    }

    private static <R> void hasInertValues(DocumentTable<R> table) {
        assertThat(table.rows())
                .allSatisfy(row -> assertThat(table.columns())
                        .allSatisfy(column ->
                                assertThat(String.valueOf(column.of(row))).doesNotContain("\u202e", "\u0007")));
    }

    @Test
    void givesTheSameWorkbookEachTime() {
        assertThat(WorkbookFile.of(document("Load"))).isEqualTo(WorkbookFile.of(document("Load")));
    }

    @ParameterizedTest
    @MethodSource("names")
    void isInertInThePage(String name) {
        String page = HtmlPage.of(document(name));

        assertThat(page).doesNotContain("<script>alert", "<img src=x", "<b>bold", "<tag>");
        assertThat(page.split("</script>", -1))
                .as("as many scripts as with a harmless name")
                .hasSameSizeAs(HtmlPage.of(document("Load")).split("</script>", -1));
    }

    @ParameterizedTest
    @MethodSource("names")
    void isInertInPrint(String name) {
        assertThat(new String(
                        new PrintedSheets(document(name)).on(PrintedSheets.Paper.A4),
                        java.nio.charset.StandardCharsets.ISO_8859_1))
                .startsWith("%PDF");
    }

    /** What turns text or rings is shown as a question mark; the rest stands there letter by letter. */
    @ParameterizedTest
    @MethodSource("names")
    void isInertOnTheSheetsOfANight(String name) throws IOException {
        List<String> pages =
                WorkPrintTest.pages(WorkPrintTest.print(new AnOrderedWork(name).sheets(), PrintedSheets.Paper.A4));

        assertThat(pages)
                .hasSizeGreaterThan(2)
                .allSatisfy(page -> assertThat(page).doesNotContain("\u202e", "\u0007"));
        String shown = name.substring(0, Math.min(8, name.length())).replaceAll("[\u202e\u0000\u0007]", "?");
        if (!name.contains(" ") && name.codePoints().allMatch(sign -> sign < 128)) {
            assertThat(String.join(" ", pages)).contains(shown);
        }
    }

    @ParameterizedTest
    @MethodSource("names")
    void keepsToItsLabel(String name) throws IOException {
        LabelStock stock = LabelStock.of("a4-38.1x21.2").orElseThrow();
        LabelSheets sheets = new LabelSheets(document(name, name), SheetWords.in(SheetLanguage.EN), "plan.html");
        for (LabelKind kind : LabelKind.ALL) {
            PrintedLabels read = PrintedLabels.read(sheets.of(kind, stock).pdf(), stock);

            assertThat(read.letters())
                    .isNotEmpty()
                    .allMatch(each -> read.labelOf(each).isPresent());
        }
    }

    @ParameterizedTest
    @MethodSource("names")
    void isATextInTheWorkbook(String name) throws IOException {
        try (ReadableWorkbook workbook =
                new ReadableWorkbook(new ByteArrayInputStream(WorkbookFile.of(document(name))))) {
            workbook.getSheets().forEach(sheet -> {
                try {
                    sheet.read()
                            .forEach(row -> row.forEach(cell -> {
                                if (cell != null && cell.getType() == CellType.FORMULA) {
                                    assertThat(cell.getFormula()).doesNotContain(name.strip());
                                }
                            }));
                } catch (IOException e) {
                    throw new java.io.UncheckedIOException(e);
                }
            });
        }
    }
}
