package evenrise.solver.rendering;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.browser.DrawnPages;
import evenrise.solver.document.Document;
import evenrise.solver.document.Fact;
import evenrise.solver.document.Schedule;
import java.io.IOException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What a permit desk looks for on the schedule of a panel: a list from common practice, no source. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class PermitDeskTest {
    private static final List<String> HEAD = List.of(
            "Voltage",
            "Mains",
            "Bus rating",
            "Fed from",
            "Feeder",
            "Interrupting rating",
            "Available fault",
            "Location",
            "Mounting",
            "Enclosure");
    private static final List<String> COLUMNS = List.of("Slot", "Load", "A/poles", "A, VA", "B, VA", "C, VA");
    private static final List<String> SUMS =
            List.of("Connected", "Demand factor", "Demand", "Continuous at", "Allowed to run", "Spaces");

    private Document document;

    @BeforeAll
    void plan() {
        document = DrawnPages.of("meridian-hall").document();
    }

    private List<String> sheetsOf(PDDocument pdf, String panel) throws IOException {
        List<String> sheets = new ArrayList<>();
        for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
            PDFTextStripper stripper = new PDFTextStripper();
            stripper.setStartPage(page);
            stripper.setEndPage(page);
            String text = stripper.getText(pdf).replaceAll("\\s+", " ");
            if (text.contains("Panel " + panel + " Voltage")) {
                sheets.add(text);
            }
        }
        return sheets;
    }

    @ParameterizedTest
    @EnumSource(PrintedSheets.Paper.class)
    void findsAllOfItOnOneSheetAPanel(PrintedSheets.Paper paper) throws IOException {
        try (PDDocument pdf = Loader.loadPDF(new PrintedSheets(document).on(paper))) {
            for (Schedule schedule : document.schedules()) {
                List<String> sheets = sheetsOf(pdf, schedule.panel());

                assertThat(sheets).as(schedule.panel()).hasSize(1);
                assertThat(sheets.get(0)).contains(HEAD).contains(COLUMNS).contains(SUMS);
                slots(schedule)
                        .filter(Schedule.Slot::isFirst)
                        .forEach(slot -> assertThat(sheets.get(0)).contains(slot.load(), slot.breaker(), slot.power()));
            }
        }
    }

    @Test
    void findsItOnThePage() {
        String page = HtmlPage.of(document);

        assertThat(page).contains(HEAD).contains(SUMS).contains("20/1", "30/2").doesNotContain("2 × 30 A");
    }

    /** Phase by phase what the rows add up to is what stands below them, to the rounding of each row. */
    @Test
    void findsSumsThatAddUp() {
        for (Schedule schedule : document.schedules()) {
            List<String> sums = schedule.summary().get(0).voltAmps();
            IntStream.range(0, schedule.phases().size()).forEach(i -> {
                String phase = schedule.phases().get(i).phase();
                double rows = schedule.rows().stream()
                        .filter(row -> row.phase().equals(phase))
                        .mapToDouble(row -> row.left().voltAmps() + row.right().voltAmps())
                        .sum();
                assertThat(sums.get(i)).as(schedule.panel()).isEqualTo(String.format("%.0f", rows));
            });
        }
    }

    @Test
    void findsNoValueThatIsMissingWithoutBeingToldSo() {
        assertThat(document.schedules())
                .allSatisfy(schedule -> assertThat(schedule.head().stream()
                                .filter(fact -> fact.value().isEmpty())
                                .map(Fact::name))
                        .containsExactly("Location", "Mounting", "Enclosure"));
    }

    private static Stream<Schedule.Slot> slots(Schedule schedule) {
        return schedule.rows().stream().flatMap(row -> Stream.of(row.left(), row.right()));
    }
}
