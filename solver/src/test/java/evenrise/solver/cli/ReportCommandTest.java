package evenrise.solver.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Plan;
import evenrise.model.project.Load;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Planner;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The documents of one plan say what the plan file says, in every format. */
class ReportCommandTest {
    private static final String HALL = "../datasets/meridian-hall/project.json";
    private static final String MILL = "../datasets/copper-mill/project.json";
    private static final String STUDIO = "../datasets/fennel-studio/project.json";

    /** All that one run wrote, in every format, for whoever only reads it. */
    @TempDir
    private static Path once;

    private static final Map<String, List<String>> PAGES = new ConcurrentHashMap<>();

    private static Plan found;
    private static Plan studio;
    private static Path planned;
    private static Path written;

    /** Not where the class begins: the search's threads would wait for that to end. */
    @BeforeAll
    static void search() {
        found = found(HALL, 20_000);
        studio = found(STUDIO, 1000);
        planned = once.resolve("hall.plan.json");
        written = once.resolve("documents");
        assertThat(new Shell(found)
                        .run("plan", HALL, "--moves", "20000", "-o", planned.toString())
                        .err())
                .doesNotContain("bug");
        assertThat(report(planned, written).code()).isEqualTo(ExitCode.DONE);
    }

    /** The text of each page, taken out once. */
    private static List<String> pages(String name) {
        return PAGES.computeIfAbsent(name, any -> {
            try (PDDocument pdf = Loader.loadPDF(written.resolve(name).toFile())) {
                List<String> pages = new ArrayList<>();
                for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
                    PDFTextStripper one = new PDFTextStripper();
                    one.setStartPage(page);
                    one.setEndPage(page);
                    pages.add(one.getText(pdf));
                }
                return pages;
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }

    private static Plan found(String project, long moves) {
        return new Planner(
                        new PlanningRequest(
                                ProjectFile.read(Path.of(project)).value().orElseThrow(),
                                Optional.empty(),
                                new Budget.Moves(moves),
                                1,
                                1),
                        any -> {})
                .plan()
                .plan();
    }

    @TempDir
    private Path folder;

    private Path plan;
    private Path documents;

    @BeforeEach
    void takeThePlan() throws IOException {
        plan = Files.copy(planned, folder.resolve("hall.plan.json"));
        documents = folder.resolve("documents");
    }

    private Shell.Result report(String... more) {
        return report(plan, documents, more);
    }

    private static Shell.Result report(Path plan, Path documents, String... more) {
        String[] arguments = new String[more.length + 9];
        List.of("report", HALL, plan.toString(), "-o", documents.toString(), "--date", "2026-01-02", "--revision", "C7")
                .toArray(arguments);
        System.arraycopy(more, 0, arguments, 9, more.length);
        return new Shell(found).run(arguments);
    }

    @Test
    void theDemoBreaksNothingThatIsChecked() {
        Shell.Result result = report("--format", "csv");

        assertThat(result.code()).isEqualTo(ExitCode.DONE);
        assertThat(result.out())
                .startsWith("Assessment\n  Every hard rule kept; ")
                .contains("none broken");
    }

    @Test
    void overwritesWhatItWroteBeforeAndNothingElse() throws IOException {
        report("--format", "csv");
        report("--format", "csv,xlsx");
        Files.writeString(documents.resolve("landing.csv"), "corrected by hand");

        Shell.Result refused = report("--format", "csv");

        assertThat(refused.code()).isEqualTo(ExitCode.NOT_WRITTEN);
        assertThat(refused.err()).contains("landing.csv", "--force");
        assertThat(documents.resolve("landing.csv")).hasContent("corrected by hand");
        assertThat(report("--format", "csv", "--force").err()).isEmpty();
        assertThat(documents.resolve("landing.csv")).content().contains("Load");
        assertThat(documents.resolve("plan.xlsx"))
                .as("of another revision than what was written last")
                .doesNotExist();
    }

    @Test
    void writesLabelsAndSiteSheetsInAnotherLanguageWhereTheyAreAskedFor() {
        Path small = folder.resolve("studio.plan.json");
        new Shell(studio).run("plan", STUDIO, "--moves", "1000", "-o", small.toString());

        Shell.Result result = new Shell(studio)
                .run(
                        "report",
                        STUDIO,
                        small.toString(),
                        "-o",
                        documents.toString(),
                        "--format",
                        "csv",
                        "--labels",
                        "a4-63.5x38.1",
                        "--labels",
                        "lead=a4-70x37",
                        "--language",
                        "de");

        assertThat(result.out())
                .contains("labels-breaker.pdf, labels-cable.pdf, labels-lead.pdf, site-de-a4.pdf, site-de-letter.pdf")
                .doesNotContain("labels-equipment");
    }

    @Test
    void refusesLabelsThatFitNowhereAndLanguagesThatItDoesNotSpeak() {
        assertThat(report("--format", "csv", "--labels", "210x297:70x37:4x8:0x0:0x0")
                        .err())
                .contains("--labels is '210x297:70x37:4x8:0x0:0x0'", "a4-63.5x38.1");
        assertThat(report("--format", "csv", "--labels", "door=a4-70x37").err()).contains("breaker, cable, lead");
        assertThat(report("--format", "csv", "--labels", "equipment=100x100:20x9:2x2:0x0:0x0")
                        .err())
                .contains("equipment labels warn");
        assertThat(report("--format", "csv", "--label-link", "x#y").err()).contains("--label-link is 'x#y'");
        assertThat(report("--format", "csv", "--language", "la").err())
                .contains("--language is 'la', expected of en, de, fr.");
        assertThat(documents).doesNotExist();
    }

    @Test
    void theBillIsTheSameWhoeverWritesIt() {
        Path bill = folder.resolve("bill.csv");
        new Shell(found).run("bill", HALL, "--csv", bill.toString());

        report("--format", "csv");

        assertThat(bill).hasSameBinaryContentAs(documents.resolve("bill.csv"));
    }

    @Test
    void theBillHasThePricesOfASharedCatalogueWhereOneIsNamed() throws IOException {
        Path prices = folder.resolve("prices.csv");
        new Shell(found).run("catalogue", MILL, "-o", prices.toString());
        Path bill = folder.resolve("bill.csv");
        new Shell(found).run("bill", HALL, "--catalogue", prices.toString(), "--csv", bill.toString());

        report("--format", "csv", "--catalogue", prices.toString());

        assertThat(bill).hasSameBinaryContentAs(documents.resolve("bill.csv"));
        new Shell(found).run("bill", HALL, "--csv", bill.toString());
        assertThat(Files.readAllBytes(bill)).isNotEqualTo(Files.readAllBytes(documents.resolve("bill.csv")));
    }

    private Plan plan() {
        return PlanFile.read(plan).value().orElseThrow();
    }

    @Test
    void workbookHoldsThePlansFigures() throws IOException {
        Map<String, Row> landing = new HashMap<>();
        try (InputStream in = Files.newInputStream(written.resolve("plan.xlsx"));
                ReadableWorkbook workbook = new ReadableWorkbook(in)) {
            workbook.findSheet("landing").orElseThrow().read().stream()
                    .skip(1)
                    .forEach(row -> landing.put(row.getCellText(2), row));
        }
        List<Assignment> switched = plan().assignments().stream()
                .filter(each -> each.onSeconds().isPresent())
                .toList();
        assertThat(landing).hasSameSizeAs(switched);
        for (Assignment each : switched) {
            Row row = landing.get(each.load());
            assertThat(row.getCellText(0)).isEqualTo(each.board().orElseThrow());
            assertThat(row.getCellAsNumber(1).orElseThrow().intValue())
                    .isEqualTo(each.output().orElseThrow());
            assertThat(row.getCellAsNumber(6).orElseThrow().doubleValue())
                    .isCloseTo(each.onSeconds().orElseThrow(), within(1e-9));
            assertThat(row.getCellAsNumber(7).orElseThrow().doubleValue())
                    .isCloseTo(each.offSeconds().orElseThrow(), within(1e-9));
        }
    }

    @Test
    void workbookHasTheWholeHashInOneCellAndNumbersWithoutNoise() throws IOException {
        try (InputStream in = Files.newInputStream(written.resolve("plan.xlsx"));
                ReadableWorkbook workbook = new ReadableWorkbook(in)) {
            assertThat(workbook.findSheet("cover").orElseThrow().read())
                    .anySatisfy(row -> assertThat(row.getCellText(1)).matches("[0-9a-f]{64}"));
            assertThat(workbook.findSheet("balance").orElseThrow().read().stream()
                            .skip(1)
                            .flatMap(row -> row.getCellAsNumber(1).stream()))
                    .isNotEmpty()
                    .allSatisfy(number ->
                            assertThat(number.stripTrailingZeros().precision()).isLessThanOrEqualTo(12));
        }
    }

    @Test
    void printedSheetsHoldThePlansFiguresAndTheirImprint() {
        for (String name : List.of("plan-a4.pdf", "plan-letter.pdf")) {
            assertThat(String.join(" ", pages(name)).replaceAll("\\s+", " "))
                    .contains(String.format(
                            java.util.Locale.ROOT,
                            "%.1f A",
                            plan().metrics().orElseThrow().peakInrushAmps()))
                    .contains("lock out before touching", "Commissioning sheet", "Labels for the breakers");
            assertThat(pages(name))
                    .allSatisfy(page -> assertThat(page)
                            .contains(
                                    "revision C7, 2026-01-02",
                                    "project file "
                                            + plan().madeBy()
                                                    .orElseThrow()
                                                    .projectSha256()
                                                    .substring(0, 12)));
        }
    }

    @Test
    void printedLandingListHoldsEveryLeadsOutputAndTimes() {
        List<String> lines =
                pages("plan-a4.pdf").stream().flatMap(String::lines).toList();
        for (Assignment each : plan().assignments()) {
            if (each.onSeconds().isPresent()) {
                String start = each.output().orElseThrow() + " " + each.load() + " ";
                String end = String.format(
                        java.util.Locale.ROOT,
                        " %.2f %.2f",
                        each.onSeconds().orElseThrow(),
                        each.offSeconds().orElseThrow());
                assertThat(lines).anyMatch(line -> line.startsWith(start) && line.endsWith(end));
            }
        }
    }

    @Test
    void aTableThatGoesOnRepeatsItsHeadersAndEveryPageNamesItsSection() {
        List<String> pages = pages("plan-letter.pdf");

        assertThat(pages.subList(1, pages.size()))
                .allSatisfy(
                        page -> assertThat(page)
                                .containsPattern(
                                        "Sequence|diagram|Margins|Phases, peaks|too little for their peak|Panel |Boards: |Shutdown"
                                                + " groups|Electrical (findings|checks)|Equipment labels|Circuit directory|Bill of materials|Commissioning sheet|Labels for"));
        assertThat(pages.stream().filter(page -> page.contains("Board, output")))
                .hasSizeGreaterThan(1);
    }

    @Test
    void tablesOfValuesHoldThePlansTimes() throws IOException {
        List<String> lines = Files.readAllLines(written.resolve("circuits.csv"));
        for (Assignment each : plan().assignments()) {
            assertThat(lines)
                    .anyMatch(line -> line.contains("," + each.load() + ",")
                            && (each.onSeconds().isEmpty()
                                    ? line.contains(",always on,")
                                    : line.endsWith("," + each.onSeconds().orElseThrow() + "," + each.slot())));
        }
    }

    @Test
    void everySheetOfTheWorkbookSaysWhatItIsOf() throws IOException {
        try (java.util.zip.ZipFile zip =
                new java.util.zip.ZipFile(written.resolve("plan.xlsx").toFile())) {
            List<String> sheets = zip.stream()
                    .map(each -> each.getName())
                    .filter(name -> name.startsWith("xl/worksheets/sheet"))
                    .toList();
            assertThat(sheets).hasSizeGreaterThan(10);
            for (String name : sheets) {
                String xml = new String(
                        zip.getInputStream(zip.getEntry(name)).readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
                assertThat(xml)
                        .contains("revision C7", "project file ", "<cols>")
                        .contains("fitToPage=\"true\"", "fitToWidth=\"1\" fitToHeight=\"0\"", "landscape");
            }
            assertThat(new String(
                            zip.getInputStream(zip.getEntry("xl/worksheets/sheet2.xml"))
                                    .readAllBytes(),
                            java.nio.charset.StandardCharsets.UTF_8))
                    .contains("state=\"frozen\"", "<tableParts");
            assertThat(new String(
                            zip.getInputStream(zip.getEntry("xl/workbook.xml")).readAllBytes(),
                            java.nio.charset.StandardCharsets.UTF_8))
                    .contains("'landing'!$1:$1");
        }
    }

    /** A plan that somebody has changed by hand is told what is broken, in every format. */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "\"panel\": \"[^\"]+\"|\"panel\": \"nowhere\"",
                "\"slot\": \\d+|\"slot\": 99",
                "\"output\": \\d+|\"output\": 99",
                "\"board\": \"[^\"]+\"|\"board\": \"nowhere\"",
                "\"load\": \"[^\"]+\"|\"load\": \"nobody\""
            })
    void whatPointsNowhereIsReportedAndNotAFailure(String was, String is) throws IOException {
        Path small = folder.resolve("studio.plan.json");
        new Shell(studio).run("plan", STUDIO, "--moves", "1000", "-o", small.toString());
        String changed = Files.readString(small).replaceFirst(was, is);
        assertThat(changed).contains(is);
        Files.writeString(small, changed);

        Shell.Result result = new Shell(studio).run("report", STUDIO, small.toString(), "-o", documents.toString());

        assertThat(result.code()).as(result.all()).isEqualTo(4);
        assertThat(documents.resolve("plan-a4.pdf")).isNotEmptyFile();
        assertThat(documents.resolve("plan-letter.pdf")).isNotEmptyFile();
        assertThat(documents.resolve("plan.html")).content().contains("do not build from this plan");
    }

    @Test
    void commissioningHasIdleAndRunningCurrentAndABlankForEachPole() throws IOException {
        Load hoist = ProjectFile.read(Path.of(HALL)).value().orElseThrow().loads().stream()
                .filter(load -> load.poles() == 3 && load.switched())
                .findFirst()
                .orElseThrow();
        Assignment placed = plan().assignments().stream()
                .filter(each -> each.load().equals(hoist.id()))
                .findFirst()
                .orElseThrow();
        String control =
                placed.board().orElseThrow() + " output " + placed.output().orElseThrow();
        assertThat(Files.readString(written.resolve("commissioning.csv")))
                .contains("\"Planned idle, A\",\"Planned running, A\"")
                .contains(
                        "," + hoist.name() + "," + control + "," + hoist.idleAmps() + "," + hoist.runningAmps() + ",");
        String blanks = placed.phases().stream().map(Enum::name).collect(java.util.stream.Collectors.joining("\\s+"));
        assertThat(String.join("\n", pages("plan-a4.pdf")))
                .containsPattern(
                        "%1$.2f\\s+%3$s\\s+%2$.2f\\s+%3$s".formatted(hoist.idleAmps(), hoist.runningAmps(), blanks));
    }

    @Test
    void pageIsWholeAndHoldsThePlansFigures() throws IOException {
        String page = Files.readString(written.resolve("plan.html"));
        assertThat(page).doesNotContainPattern("(src|href)=\"(https?:)?//").doesNotContain("@import");
        for (Assignment each : plan().assignments()) {
            assertThat(page).contains("data-load=\"" + each.load() + "\"");
        }
        assertThat(page).contains("Revision C7 · 2026-01-02");
    }

    @Test
    void tablesOfValuesAreWritten() throws IOException {
        Shell.Result result = report("--format", "csv", "--trials", "200", "--against", plan.toString());

        assertThat(result.out()).contains("circuits.csv", "percentiles.csv", "differences.csv");
        assertThat(Files.readAllLines(documents.resolve("circuits.csv"))).hasSize(121 + Cautions.ALL.size());
        assertThat(Files.readAllLines(documents.resolve("differences.csv"))).hasSize(2 + Cautions.ALL.size());
    }

    @Test
    void tablesOfValuesMayHaveKeysAndAByteOrderMark() throws IOException {
        report("--format", "csv", "--csv-keys", "--csv-mark", "--force");

        String circuits = Files.readString(documents.resolve("circuits.csv"));
        assertThat(circuits).startsWith("\uFEFFpanel,slots,phases,load,name,poles,breaker_a,running_a,");
        assertThat(circuits).contains(Cautions.comments().get(0));
        assertThat(documents.resolve("handover-components.csv")).exists();
    }

    @Test
    void theSameDateGivesTheSameDocuments() throws IOException {
        report("--format", "html,csv");
        byte[] first = Files.readAllBytes(documents.resolve("plan.html"));
        report("--format", "html,csv");

        assertThat(Files.readAllBytes(documents.resolve("plan.html"))).isEqualTo(first);
    }

    @Test
    void refusesAFormatThatItDoesNotKnow() {
        assertThat(report("--format", "docx").code()).isEqualTo(ExitCode.USAGE);
    }

    @Test
    void planWritesThemToo() {
        Path others = folder.resolve("others");

        new Shell(studio).run("plan", STUDIO, "--moves", "1000", "-o", plan.toString(), "--report", others.toString());

        assertThat(others.resolve("plan.html")).isRegularFile();
        assertThat(others.resolve("plan-letter.pdf")).isRegularFile();
    }
}
