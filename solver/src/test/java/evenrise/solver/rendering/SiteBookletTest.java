package evenrise.solver.rendering;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Cautions;
import evenrise.model.rules.Layout;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.browser.DrawnPages;
import evenrise.solver.document.Document;
import evenrise.solver.document.Documents;
import evenrise.solver.document.Imprint;
import evenrise.solver.document.LabelKind;
import evenrise.solver.document.PlannedCircuit;
import evenrise.solver.document.SheetLanguage;
import evenrise.solver.document.SheetWords;
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
import java.util.Set;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

/** Site sheets in another language say the same figures, and nothing of them is left in English. */
class SiteBookletTest {
    /** Spelt alike in a language that sheets are translated into. */
    private static final Set<String> ALIKE = Set.of("phase", "bus");

    /** Ids and names that are no words of any language. */
    private static Document document() {
        Layout layout = Layout.of(
                aProject()
                        .boards(aBoard("B1"), aBoard("B2").after("B1"), aBoard("B3"))
                        .loads(aLoad("L1").name("Xqz"), aLoad("L2").name("Yqz"))
                        .build(),
                aPlan().assignments(
                                anAssignment("L1").at("P1", 1).on("B1", 1),
                                anAssignment("L2").at("P1", 2).on("B2", 2))
                        .build());
        return Documents.of(
                new Imprint("Qzx", "A", "2026-01-02", "0123456789abcdef", "0.0.0"),
                Evaluation.of(layout, () -> ProvenBounds.of(layout.project())),
                Optional.empty(),
                List.of());
    }

    private static String text(Document document, SheetLanguage language) throws IOException {
        try (PDDocument pdf = Loader.loadPDF(new SiteBooklet(document, SheetWords.in(language)).print())) {
            return new PDFTextStripper().getText(pdf).replaceAll("\\s+", " ");
        }
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
        String text = text(document(), language);
        for (String caution : Cautions.ALL) {
            // They stand beside the translation on purpose.
            assertThat(text).contains(caution);
            text = text.replace(caution, "");
        }

        hasNoEnglish(text);
        for (LabelKind kind : LabelKind.ALL) {
            for (SiteLabel label : new SiteLabels(document(), SheetWords.in(language)).of(kind)) {
                hasNoEnglish(label.lines()
                        .toString()
                        .replaceAll("Line\\[text=|isStrong|mayBeCut|\\((WARNING|above)[^)]*\\)", ""));
            }
        }
    }

    @ParameterizedTest
    @CsvSource({"EN,fennel-studio", "DE,fennel-studio", "FR,tin-shed", "DE,lantern-yard"})
    void everyLeadAndSettingHasTheFiguresOfThePlan(SheetLanguage language, String demo) throws IOException {
        Document document = DrawnPages.of(demo).document();
        SheetWords words = SheetWords.in(language);
        String text = text(document, language);
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
        Document document = document();
        long open = document.tables().settings().rows().stream()
                .mapToLong(each -> each.freeOutputs().size())
                .sum();

        assertThat(Pattern.compile("unbenutzt, offen lassen")
                        .matcher(text(document, SheetLanguage.DE))
                        .results())
                .hasSize((int) open);
    }

    @Test
    void saysThatItIsNoCertifiedTranslationAndWhereTheRestIs() throws IOException {
        assertThat(text(document(), SheetLanguage.DE)).contains("nicht beglaubigt", "auf Englisch");
        assertThat(text(document(), SheetLanguage.FR)).contains("non certifié", "en anglais");
    }

    @Test
    void aBoardWithoutALoadIsTold() throws IOException {
        assertThat(text(document(), SheetLanguage.DE)).contains("Nicht in Gebrauch: Kein Verbraucher hängt daran.");
    }
}
