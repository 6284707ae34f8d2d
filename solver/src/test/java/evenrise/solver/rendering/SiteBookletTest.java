package evenrise.solver.rendering;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Cautions;
import evenrise.model.project.Circuit;
import evenrise.model.project.Equipment;
import evenrise.model.project.Motor;
import evenrise.model.rules.Layout;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.browser.DrawnPages;
import evenrise.solver.document.Document;
import evenrise.solver.document.Documents;
import evenrise.solver.document.Fact;
import evenrise.solver.document.Imprint;
import evenrise.solver.document.LabelKind;
import evenrise.solver.document.LoadSummary;
import evenrise.solver.document.PlannedCircuit;
import evenrise.solver.document.Schedule;
import evenrise.solver.document.SheetLanguage;
import evenrise.solver.document.SheetWords;
import evenrise.solver.document.SiteDocument;
import evenrise.solver.document.SiteLabel;
import evenrise.solver.document.SiteLabels;
import evenrise.solver.report.BoardUse;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.interactive.documentnavigation.outline.PDOutlineItem;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Site sheets in another language say the same figures, and nothing of them is left in English. */
class SiteBookletTest {
    /** Spelt alike in a language that sheets are translated into. */
    private static final Set<String> ALIKE = Set.of("phase", "bus");

    /** A document in a language, with the set that is printed of it. */
    private record Printed(SiteDocument site, List<String> pages) {
        static Printed of(Layout layout, SheetLanguage language) throws IOException {
            Evaluation evaluation = Evaluation.of(layout, () -> ProvenBounds.of(layout.project()));
            Document document = Documents.of(
                    new Imprint(layout.project().name(), "A", "2026-01-02", "0123456789abcdef".repeat(4), "0.0.0"),
                    evaluation,
                    Optional.empty(),
                    List.of());
            SiteDocument site = SiteDocument.of(document, evaluation, SheetWords.in(language));
            List<String> pages = new ArrayList<>();
            try (PDDocument pdf = Loader.loadPDF(new SiteBooklet(site, SheetSection.ALL)
                    .on(List.of(PrintedSheets.Paper.A4))
                    .get(PrintedSheets.Paper.A4))) {
                for (int page = 1; page <= pdf.getNumberOfPages(); page++) {
                    PDFTextStripper stripper = new PDFTextStripper();
                    stripper.setStartPage(page);
                    stripper.setEndPage(page);
                    pages.add(stripper.getText(pdf).replaceAll("\\s+", " "));
                }
            }
            return new Printed(site, pages);
        }

        String text() {
            return String.join(" ", pages);
        }
    }

    /** Ids and names that are no words of any language; a spare, a motor and residual-current devices are in it. */
    private static Layout layout() {
        return Layout.of(
                aProject()
                        .name("Qzx")
                        .boards(aBoard("B1"), aBoard("B2").after("B1"), aBoard("B3"))
                        .loads(
                                aLoad("L1")
                                        .name("Xqz")
                                        .circuit(Circuit.builder()
                                                .residualCurrentAmps(OptionalDouble.of(0.03))
                                                .build()),
                                aLoad("L2")
                                        .name("Yqz")
                                        .equipment(Equipment.builder()
                                                .motor(Motor.builder().build())
                                                .build()))
                        .build(),
                aPlan().assignments(
                                anAssignment("L1").at("P1", 1).on("B1", 1),
                                anAssignment("L2").at("P1", 2).on("B2", 2))
                        .build());
    }

    private static List<String> glossary() throws IOException {
        List<String> words = new ArrayList<>();
        for (String line : Files.readAllLines(Path.of("../docs/glossary.md"))) {
            String[] cells = line.split("\\|");
            if (cells.length > 4 && !cells[1].strip().matches("word|-*")) {
                words.addAll(List.of(cells[1].strip().split(", ")));
            }
        }
        return words;
    }

    private static void hasNoEnglish(String text) throws IOException {
        assertThat(glossary()).hasSizeGreaterThan(30);
        for (String word : glossary()) {
            if (!ALIKE.contains(word)) {
                assertThat(text.toLowerCase(Locale.ROOT)).doesNotContainPattern("\\b" + Pattern.quote(word) + "s?\\b");
            }
        }
    }

    @ParameterizedTest
    @EnumSource(
            value = SheetLanguage.class,
            names = {"DE", "FR"})
    void noEnglishWordOfTheGlossaryIsLeft(SheetLanguage language) throws IOException {
        Printed printed = Printed.of(layout(), language);
        String text = printed.text();
        for (String caution : Cautions.ALL) {
            // They stand beside the translation on purpose.
            assertThat(text).contains(caution);
            text = text.replace(caution, "");
        }

        hasNoEnglish(text);
        for (LabelKind kind : LabelKind.ALL) {
            for (SiteLabel label : new SiteLabels(printed.site().document(), SheetWords.in(language)).of(kind)) {
                hasNoEnglish(label.lines()
                        .toString()
                        .replaceAll("Line\\[text=|isStrong|mayBeCut|\\((WARNING|above)[^)]*\\)", ""));
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"EN,fennel-studio", "DE,fennel-studio", "FR,tin-shed", "DE,lantern-yard"})
    void everyLeadAndSettingHasTheFiguresOfThePlan(SheetLanguage language, String demo) throws IOException {
        Printed printed = Printed.of(DrawnPages.of(demo).layout(), language);
        Document document = printed.site().document();
        SheetWords words = SheetWords.in(language);
        String text = printed.text();
        List<List<String>> landing = Cells.of(document.tables().landing());
        List<List<String>> settings = Cells.of(document.tables().settings());

        for (int i = 0; i < landing.size(); i++) {
            PlannedCircuit lead = document.tables().landing().rows().get(i);
            List<String> cells = landing.get(i);
            assertThat(text)
                    .contains(lead.panel() + " " + lead.slots() + " " + words.number(lead.breaker()) + " "
                            + words.number(cells.get(6)) + " " + words.number(cells.get(7)));
        }
        for (int i = 0; i < settings.size(); i++) {
            BoardUse board = document.tables().settings().rows().get(i);
            String set = board.startDelaySeconds().isPresent()
                    ? words.number(settings.get(i).get(4)) + " "
                            + words.number(settings.get(i).get(5))
                    : words.say("settings.each-output");
            assertThat(text).contains(set + " " + words.say("settings.used-of", board.outputsUsed(), board.outputs()));
        }
    }

    @Test
    void everyOutputThatStaysOpenIsTold() throws IOException {
        Printed printed = Printed.of(layout(), SheetLanguage.DE);
        long open = printed.site().document().tables().settings().rows().stream()
                .mapToLong(each -> each.freeOutputs().size())
                .sum();

        assertThat(Pattern.compile("unbenutzt, offen lassen")
                        .matcher(printed.text())
                        .results())
                .hasSize((int) open);
    }

    @Test
    void saysThatItIsNoCertifiedTranslationAndWhereTheRestIs() throws IOException {
        assertThat(Printed.of(layout(), SheetLanguage.DE).text()).contains("nicht beglaubigt", "englischen Blättern");
        assertThat(Printed.of(layout(), SheetLanguage.FR).text()).contains("non certifié", "en anglais");
    }

    @Test
    void aBoardWithoutALoadIsTold() throws IOException {
        assertThat(Printed.of(layout(), SheetLanguage.DE).text())
                .contains("Nicht in Gebrauch: Kein Verbraucher hängt daran.");
    }

    /** As the English schedule has them, but for the decimal comma. */
    @ParameterizedTest
    @CsvSource({"DE,lantern-yard", "FR,fennel-studio"})
    void everySlotAndSumHasTheFiguresOfTheEnglishSchedule(SheetLanguage language, String demo) throws IOException {
        Printed printed = Printed.of(DrawnPages.of(demo).layout(), language);
        List<Schedule> english = printed.site().document().schedules();
        SheetWords words = SheetWords.in(language);

        for (int i = 0; i < english.size(); i++) {
            Schedule said = printed.site().schedules().get(i);
            String sheet = printed.pages().stream()
                    .filter(page -> page.contains(words.say("schedule.summary"))
                            && page.contains(words.say("panel.title", said.panel()) + " "))
                    .findFirst()
                    .orElseThrow();
            for (Schedule.Slot slot : slots(english.get(i))) {
                assertThat(sheet).contains(slot.load(), words.number(slot.breaker()), slot.power());
                if (slot.onSeconds().isPresent()) {
                    assertThat(sheet).contains(words.number(slot.on()));
                }
            }
            for (int line = 0; line < said.summary().size(); line++) {
                LoadSummary.Line was = english.get(i).summary().get(line);
                assertThat(said.summary().get(line).voltAmps()).isEqualTo(was.voltAmps());
                assertThat(said.summary().get(line).amps()).isEqualTo(words.number(was.amps()));
                assertThat(sheet).contains(words.number(was.amps()));
            }
            assertThat(said.totals().stream().map(Fact::value))
                    .isEqualTo(english.get(i).totals().stream()
                            .map(fact -> words.number(fact.value()))
                            .toList());
        }
    }

    @ParameterizedTest
    @CsvSource({"DE,tin-shed", "FR,lantern-yard"})
    void everyBreakerIsOnTheDirectoryAndAmongTheTestsWithItsPlannedFigures(SheetLanguage language, String demo)
            throws IOException {
        Printed printed = Printed.of(DrawnPages.of(demo).layout(), language);
        SheetWords words = SheetWords.in(language);
        String tests = after(printed, words.say("test.title"), words.say("directory.title"));
        String directory = after(printed, words.say("directory.title"), "\u0000");
        List<List<String>> cells = Cells.of(printed.site().document().tables().commissioning());

        for (int i = 0; i < cells.size(); i++) {
            PlannedCircuit circuit =
                    printed.site().document().tables().commissioning().rows().get(i);
            assertThat(tests).contains(circuit.slots() + " " + circuit.load());
            assertThat(tests)
                    .contains(
                            words.number(cells.get(i).get(6)),
                            words.number(cells.get(i).get(7)));
            assertThat(directory).contains(circuit.load(), words.number(circuit.breaker()));
        }
    }

    /** Pages from the one that begins with a title to the one before another. */
    private static String after(Printed printed, String title, String end) {
        List<String> pages = printed.pages();
        int from = 1;
        while (!pages.get(from).contains(title + " ")) {
            from++;
        }
        int to = from + 1;
        while (to < pages.size() && !pages.get(to).contains(end + " ")) {
            to++;
        }
        return String.join(" ", pages.subList(from, to));
    }

    private static List<Schedule.Slot> slots(Schedule schedule) {
        return schedule.rows().stream()
                .flatMap(row -> Stream.of(row.left(), row.right()))
                .filter(Schedule.Slot::isFirst)
                .toList();
    }

    /** So that a German sheet is found beside the English one. */
    @Test
    void everySheetHasTheNumberOfItsSectionInTheEnglishSet() throws IOException {
        Printed printed = Printed.of(layout(), SheetLanguage.DE);
        List<String> numbers = printed.pages().stream()
                .flatMap(page -> Stream.of(page.replaceAll(".*\\bBlatt (E[\\w.]+(?:, E[\\w.]+)*).*", "$1")
                        .split(", ")))
                .toList();

        assertThat(numbers).doesNotHaveDuplicates().allMatch(number -> number.matches("EDE\\d+\\.\\d+"));
        assertThat(numbers)
                .contains("EDE0.1")
                .contains("EDE" + SheetSection.SCHEDULES.number() + ".1")
                .contains("EDE" + SheetSection.DIRECTORY.number() + ".1");
        assertThat(printed.pages().get(0))
                .contains("Blattverzeichnis")
                .contains("Stromkreisverzeichnis EDE" + SheetSection.DIRECTORY.number() + ".1 ");
    }

    @Test
    void anOutlineLeadsToEachSectionAndPanel() throws IOException {
        Evaluation evaluation = Evaluation.of(layout(), () -> ProvenBounds.of(layout().project()));
        SiteDocument site = SiteDocument.of(
                Printed.of(layout(), SheetLanguage.FR).site().document(), evaluation, SheetWords.in(SheetLanguage.FR));
        try (PDDocument pdf = Loader.loadPDF(new SiteBooklet(site, List.of(SheetSection.SCHEDULES, SheetSection.BILL))
                .on(List.of(PrintedSheets.Paper.LETTER))
                .get(PrintedSheets.Paper.LETTER))) {
            PDOutlineItem section =
                    pdf.getDocumentCatalog().getDocumentOutline().getFirstChild();

            assertThat(section.getTitle()).isEqualTo("Tableaux : plans de répartition");
            assertThat(section.getNextSibling()).isNull();
            assertThat(section.getFirstChild().getTitle()).isEqualTo("Tableau P1");
            assertThat(pdf.getDocumentCatalog().getLanguage()).isEqualTo("fr");
            // 8.5 inches.
            assertThat(pdf.getPage(0).getMediaBox().getWidth()).isCloseTo(8.5f * 72, within(0.1f));
        }
    }
}
