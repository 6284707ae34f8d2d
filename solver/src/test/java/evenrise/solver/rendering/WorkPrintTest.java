package evenrise.solver.rendering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.Cautions;
import evenrise.solver.document.Imprint;
import evenrise.solver.report.MeteredLine;
import evenrise.solver.report.WorkSheet;
import evenrise.solver.report.WorkSheets;
import evenrise.solver.rework.AnOrderedWork;
import java.io.IOException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;

/** The sheets of a night on paper. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class WorkPrintTest {
    private static final AnOrderedWork WORK = new AnOrderedWork("mover");

    private WorkSheets sheets;
    private byte[] letter;
    private List<String> pages;

    static byte[] print(WorkSheets sheets, PrintedSheets.Paper paper) {
        Imprint imprint = new Imprint("Lantern", "B", "2026-11-30", "0123456789abcdef".repeat(4), "0.0.0");
        return new WorkPrint(imprint, sheets).on(List.of(paper)).get(paper);
    }

    static List<String> pages(byte[] printed) throws IOException {
        List<String> pages = new ArrayList<>();
        try (PDDocument pdf = Loader.loadPDF(printed)) {
            for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
                PDFTextStripper stripper = new PDFTextStripper();
                stripper.setSortByPosition(false);
                stripper.setStartPage(page);
                stripper.setEndPage(page);
                pages.add(stripper.getText(pdf).replaceAll("\\s+", " "));
            }
        }
        return pages;
    }

    @BeforeAll
    void print() throws IOException {
        sheets = WORK.sheets(10_000.0);
        letter = print(sheets, PrintedSheets.Paper.LETTER);
        pages = pages(letter);
    }

    /** The smaller paper: what fits there fits on the other. */
    @Test
    void haveACoverAndAPageAStage() {
        assertThat(pages).hasSize(1 + sheets.sheets().size());
        for (WorkSheet each : sheets.sheets()) {
            assertThat(pages.get(each.number()))
                    .contains(
                            "Stage " + each.number() + " of " + each.stages() + ", page 1 of 1",
                            "sheet EW" + each.number() + ".1");
        }
    }

    @Test
    void haveEachStepWithItsClockAndTheWayBackOnThePageOfItsStage() {
        for (WorkSheet each : sheets.sheets()) {
            String page = pages.get(each.number());
            for (WorkSheet.Line step : each.steps()) {
                long minutes = Math.round(each.nightMinutes() + step.atMinute().orElseThrow());
                assertThat(page)
                        .contains(step.number() + " " + minutes / 60 + ":" + (minutes % 60 < 10 ? "0" : "")
                                + minutes % 60 + " " + step.text());
                step.back().ifPresent(how -> assertThat(page).contains(how));
            }
            assertThat(page).contains(each.wayBack(), each.lockOut());
        }
    }

    @Test
    void haveCurrentsAtIdleAndFullUseOnThePageOfItsStage() {
        for (WorkSheet each : sheets.sheets()) {
            for (MeteredLine line : each.currents()) {
                assertThat(pages.get(each.number()))
                        .contains(line.where() + " " + line.line() + " " + line.idleAmperes() + " " + line.fullAmperes()
                                + " " + line.allowed());
            }
        }
    }

    @Test
    void tellWhatIsOutAndWhoIsTold() {
        assertThat(pages.get(0))
                .contains("Who is out", "group stalls", "Told at", "Nights")
                .contains("night 1 at 0:00");
        assertThat(sheets.sheets().stream().filter(each -> each.told().contains("group stalls")))
                .isNotEmpty()
                .allSatisfy(each ->
                        assertThat(pages.get(each.number())).contains("Out meanwhile: ", "group stalls", "Done by"));
    }

    @Test
    void haveTheCautionsOnEveryPage() {
        assertThat(pages)
                .allSatisfy(page -> assertThat(Cautions.ALL)
                        .allSatisfy(
                                caution -> assertThat(page.replace("- ", "-")).contains(caution)))
                .allSatisfy(page -> assertThat(page).contains("nothing is broken on the way"));
        assertThat(pages.subList(1, pages.size()))
                .allSatisfy(page -> assertThat(page).contains("the lift hangs"));
    }

    @Test
    void drawThePanelsThatChange() {
        String all = String.join(" ", pages.subList(1, pages.size()));

        assertThat(all)
                .contains("△ 5", "(from slot 3", "mover to slot 5", "(new breaker)", "left as a spare", "cap and tag")
                .contains("△ B1/3 (was B1/4)");
    }

    @Test
    void areTheSameEachTime() {
        assertThat(print(WORK.sheets(10_000.0), PrintedSheets.Paper.LETTER)).isEqualTo(letter);
    }

    /** Five loads in two isolated panels: more steps than a page takes. */
    @Test
    void sayWhereAStageGoesOn() throws IOException {
        WorkSheets large = AnOrderedWork.isolated().sheets();
        WorkSheet longest = large.sheets().stream()
                .max(Comparator.comparing(each -> each.steps().size()))
                .orElseThrow();
        String sheet = "EW" + longest.number() + ".";

        List<String> printed = pages(print(large, PrintedSheets.Paper.A4));
        List<String> ofIt = printed.subList(1, printed.size()).stream()
                .filter(page -> page.contains("sheet " + sheet))
                .toList();

        assertThat(ofIt).hasSizeGreaterThan(1);
        assertThat(printed.get(0)).contains(sheet + "1 to " + sheet + ofIt.size());
        for (int page = 1; page <= ofIt.size(); page++) {
            assertThat(ofIt.get(page - 1))
                    .contains(
                            "Stage " + longest.number() + " of " + longest.stages() + ", page " + page + " of "
                                    + ofIt.size(),
                            "sheet " + sheet + page + " ");
        }
        String all = String.join(" ", ofIt);
        assertThat(longest.steps()).allSatisfy(step -> assertThat(all).contains(step.text()));
    }

    @Test
    void areACoverWhereNothingIsToBeDone() throws IOException {
        WorkSheets none = WORK.nothing();

        assertThat(pages(print(none, PrintedSheets.Paper.A4)).get(0)).contains("Nothing is to be done.");
    }

    @Test
    void warnOnEveryPageWhereSomethingIsBroken() throws IOException {
        WorkSheets broken = WORK.sheets(1.0);

        assertThat(pages(print(broken, PrintedSheets.Paper.A4)))
                .allSatisfy(page -> assertThat(page).contains("BROKEN ON THE WAY", "NO NIGHT LEFT"));
    }

    /** A4 is 210 by 297 mm, Letter 8.5 by 11 in; a point is 1/72 in. */
    @Test
    void areOnThePaperThatIsAskedFor() throws IOException {
        Map<PrintedSheets.Paper, Double> widths = Map.of(
                PrintedSheets.Paper.A4, 210 / 25.4 * 72,
                PrintedSheets.Paper.LETTER, 8.5 * 72);
        Map<PrintedSheets.Paper, byte[]> both = Map.of(
                PrintedSheets.Paper.A4, print(sheets, PrintedSheets.Paper.A4), PrintedSheets.Paper.LETTER, letter);
        for (Map.Entry<PrintedSheets.Paper, Double> each : widths.entrySet()) {
            try (PDDocument pdf = Loader.loadPDF(both.get(each.getKey()))) {
                assertThat((double) pdf.getPage(1).getMediaBox().getWidth()).isCloseTo(each.getValue(), within(0.5));
            }
        }
    }
}
