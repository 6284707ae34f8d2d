package evenrise.solver.rendering;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.file.TitleBlockFile;
import evenrise.model.project.TitleBlock;
import evenrise.model.rules.Layout;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.browser.DrawnPages;
import evenrise.solver.document.Document;
import evenrise.solver.document.Documents;
import evenrise.solver.document.Imprint;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** A set of sheets is numbered, indexed and signed, whichever sections it has. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class SheetSetTest {
    private static final String TITLE = """
        format: evenrise-title/1
        client: Harrow Trust
        site: 12 Canal Street
        number: "2611-04"
        issued_for: permit
        drawn_by: A. Ferrand
        checked_by: T. Oyelaran
        sheet_prefix: E-
        revisions:
          - {revision: A, date: 2026-10-02, what: first issue, by: AF}
          - {revision: B, date: 2026-11-30, what: larger feeder}
        """;

    private static final EnumSet<SheetSection> CHOSEN =
            EnumSet.of(SheetSection.DRAWINGS, SheetSection.SETTINGS, SheetSection.DIRECTORY, SheetSection.EQUIPMENT);

    private Document document;
    private List<String> pages;

    @BeforeAll
    void print() throws IOException {
        Layout layout = DrawnPages.of("fennel-studio").layout();
        TitleBlock title = TitleBlockFile.read(
                        new ByteArrayInputStream(TITLE.getBytes(StandardCharsets.UTF_8)), "title.yaml")
                .value()
                .orElseThrow();
        Imprint imprint = new Imprint("Fennel", "B", "2026-11-30", "0123456789abcdef".repeat(4), "0.0.0", title);
        document = Documents.of(
                imprint, Evaluation.of(layout, () -> ProvenBounds.of(layout.project())), Optional.empty(), List.of());
        pages = pages(CHOSEN);
    }

    private List<String> pages(Set<SheetSection> chosen) throws IOException {
        List<String> all = new ArrayList<>();
        try (PDDocument pdf = Loader.loadPDF(new PrintedSheets(document, chosen).on(PrintedSheets.Paper.LETTER))) {
            for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                all.add(stripper.getText(pdf).replaceAll("\\s+", " "));
            }
        }
        return all;
    }

    /** Short sections share a page, which has the number of each. */
    private static List<String> sheets(String page) {
        return List.of(page.replaceAll("(?s).*\\bsheet (E-\\d+\\.\\d+(?:, E-\\d+\\.\\d+)*).*", "$1")
                .split(", "));
    }

    private static boolean isOf(String page, String section) {
        return sheets(page).stream().anyMatch(number -> number.startsWith(section + "."));
    }

    @Test
    void everySheetHasANumberOfItsOwn() {
        List<String> numbers =
                pages.stream().flatMap(page -> sheets(page).stream()).toList();

        assertThat(numbers).doesNotHaveDuplicates().allMatch(number -> number.matches("E-\\d+\\.\\d+"));
        assertThat(numbers.get(0)).isEqualTo("E-0.1");
    }

    /** Groups and bill fill a page neither: they stand on one, and the index leads to both there. */
    @Test
    void shortSectionsShareAPageThatHasTheNumberOfEach() throws IOException {
        List<String> shared = pages(EnumSet.of(SheetSection.SHUTDOWN, SheetSection.BILL));
        String page = shared.get(shared.size() - 1);

        assertThat(sheets(page)).containsExactly("E-14.1", "E-16.1");
        assertThat(page).containsSubsequence("Shutdown groups: what drops", "Bill of materials Not included");
        assertThat(String.join(" ", shared.subList(0, shared.size() - 1)))
                .contains("Shutdown groups E-14.1 " + shared.size(), "Bill of materials E-16.1 " + shared.size());
    }

    @Test
    void whatWouldSaveNoPageBeginsOneOfItsOwn() {
        assertThat(pages)
                .filteredOn(page -> isOf(page, "E-11"))
                .allSatisfy(page -> assertThat(sheets(page)).hasSize(1));
    }

    /** Drawings are section 11 in any set. */
    @Test
    void aSectionKeepsItsNumberWhicheverOthersArePrinted() {
        Map<String, Long> sections = new HashMap<>();
        pages.forEach(page ->
                sheets(page).forEach(number -> sections.merge(number.replaceAll("\\..*", ""), 1L, Long::sum)));

        assertThat(sections.keySet()).containsExactlyInAnyOrder("E-0", "E-11", "E-12", "E-22", "E-23");
        assertThat(pages).noneMatch(page -> page.contains("Commissioning sheet"));
    }

    @Test
    void theIndexLeadsToTheFirstPageOfEachSection() {
        String cover = String.join(
                " ", pages.stream().filter(page -> isOf(page, "E-0")).toList());
        assertThat(cover).contains("Index of sheets");

        for (String section : List.of("E-11", "E-12", "E-22", "E-23")) {
            int first = pages.indexOf(pages.stream()
                            .filter(page -> sheets(page).contains(section + ".1"))
                            .findFirst()
                            .orElseThrow())
                    + 1;
            assertThat(cover).containsPattern(section + "\\.1( to " + section + "\\.\\d+)? " + first + "\\b");
        }
    }

    @Test
    void coverAndDrawingsHaveTheTitleBlock() {
        assertThat(pages.get(0)).contains("Harrow Trust", "12 Canal Street", "2611-04", "T. Oyelaran");
        assertThat(pages)
                .filteredOn(page -> isOf(page, "E-11"))
                .isNotEmpty()
                .allSatisfy(page -> assertThat(page)
                        .contains("Harrow Trust", "12 Canal Street", "permit", "A. Ferrand", "Revision B, 2026-11-30"));
        assertThat(String.join(" ", pages)).contains("B 2026-11-30 larger feeder A 2026-10-02 first issue AF");
    }

    /** On paper no drawing takes a second page, whatever stands in its title block. */
    @Test
    void everyDrawingIsOnePage() {
        long drawn = DrawnDiagram.all(document).stream()
                .mapToLong(each -> each.sheets().size())
                .sum();

        assertThat(pages.stream().filter(page -> isOf(page, "E-11"))).hasSize((int) drawn);
    }

    @Test
    void sectionsAreCalledByTheirWords() {
        assertThat(SheetSection.of("over-time")).contains(SheetSection.OVER_TIME);
        assertThat(SheetSection.of("everything")).isEmpty();
        assertThat(SheetSection.ALL)
                .allSatisfy(each -> assertThat(SheetSection.of(each.word())).contains(each));
    }
}
