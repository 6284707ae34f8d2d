package evenrise.solver.rendering;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.solver.browser.DrawnPages;
import evenrise.solver.document.Document;
import evenrise.solver.document.LabelKind;
import evenrise.solver.document.PlannedCircuit;
import evenrise.solver.document.SheetLanguage;
import evenrise.solver.document.SheetWords;
import evenrise.solver.document.SiteLabel;
import evenrise.solver.document.SiteLabels;
import java.io.IOException;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Labels say what is connected to what, lie where the stock has them, and their codes lead to the page. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class LabelSheetsTest {
    private static final SheetWords WORDS = SheetWords.in(SheetLanguage.EN);

    private Document document;
    private LabelSheets sheets;

    @BeforeAll
    void plan() {
        document = DrawnPages.of("fennel-studio").document();
        sheets = new LabelSheets(document, WORDS, "plan.html");
    }

    private static LabelStock stock(String name) {
        return LabelStock.of(name).orElseThrow();
    }

    private List<SiteLabel> labels(LabelKind kind) {
        return new SiteLabels(document, WORDS).of(kind);
    }

    private static String text(SiteLabel label) {
        return label.lines().stream().map(SiteLabel.Line::text).collect(Collectors.joining("\n"));
    }

    @ParameterizedTest
    @CsvSource({
        "breaker,a4-38.1x21.2",
        "cable,a4-63.5x38.1",
        "lead,letter-66.7x25.4",
        "equipment,a4-99.1x67.7",
        "cable,120x80:30x12:3x5:5x5:8x3"
    })
    void everyLetterLiesOnItsLabel(String kind, String name) throws IOException {
        LabelStock stock = stock(name);
        LabelSheets.Printed printed = sheets.of(LabelKind.of(kind).orElseThrow(), stock);
        PrintedLabels read = PrintedLabels.read(printed.pdf(), stock);
        Map<Integer, Integer> letters = new TreeMap<>();

        for (PrintedLabels.Letter each : read.letters()) {
            Optional<Integer> label = read.labelOf(each);
            assertThat(label).as(each.toString()).isPresent();
            letters.merge(label.get(), 1, Integer::sum);
        }

        assertThat(printed.labels()).isPositive();
        assertThat(letters).hasSize(printed.labels());
        assertThat(read.sheets()).isEqualTo((printed.labels() + stock.onASheet() - 1) / stock.onASheet());
        assertThat(read.pageMillimetres(1)[0])
                .isCloseTo(stock.sheetWidth(), org.assertj.core.api.Assertions.within(0.1));
        assertThat(read.pageMillimetres(1)[1])
                .isCloseTo(stock.sheetHeight(), org.assertj.core.api.Assertions.within(0.1));
    }

    @ParameterizedTest
    @CsvSource({"plan.html", "https://power.example.org/meridian/plan.html"})
    void everyCodeSaysTheLinkToItsLoad(String address) throws IOException {
        LabelStock stock = stock("a4-63.5x38.1");
        List<Optional<String>> expected = labels(LabelKind.BREAKER).stream()
                .map(each -> Optional.of(address + "#" + each.anchor()))
                .toList();

        PrintedLabels read = PrintedLabels.read(
                new LabelSheets(document, WORDS, address)
                        .of(LabelKind.BREAKER, stock)
                        .pdf(),
                stock);
        List<Optional<String>> codes = new ArrayList<>();
        for (int sheet = 0; sheet < read.sheets(); sheet++) {
            codes.addAll(read.codes(sheet));
        }

        assertThat(codes.subList(0, expected.size())).isEqualTo(expected);
        assertThat(codes.subList(expected.size(), codes.size())).allMatch(Optional::isEmpty);
    }

    /** What stands behind # is the page's own word for the load; that the page follows it is for the browser's tests. */
    @Test
    void theLoadThatACodeNamesStandsOnThePage() {
        String page = HtmlPage.of(document);

        assertThat(labels(LabelKind.BREAKER)).hasSameSizeAs(document.loads()).allSatisfy(label -> {
            assertThat(label.anchor()).startsWith("load=");
            assertThat(page).contains("\"" + label.anchor().substring(5) + "\"");
        });
    }

    @Test
    void aLabelThatIsTooSmallForACodeGoesWithout() {
        LabelSheets.Printed printed = new LabelSheets(document, WORDS, "https://example.org/" + "x".repeat(200))
                .of(LabelKind.BREAKER, stock("a4-38.1x21.2"));

        assertThat(printed.withoutCode()).isEqualTo(printed.labels());
    }

    @Test
    void everyCableHasALabelForEachEnd() {
        List<String> cables =
                labels(LabelKind.CABLE).stream().map(LabelSheetsTest::text).toList();

        for (PlannedCircuit each : document.tables().labels().rows()) {
            List<String> both = cables.stream()
                    .filter(text -> text.startsWith(each.load() + "\n"))
                    .toList();
            assertThat(both)
                    .hasSize(2)
                    .allSatisfy(text -> assertThat(text)
                            .contains("from " + each.panel() + " slot " + each.slots() + " to " + each.load())
                            .contains(each.breaker() + ", phase " + each.phases()));
            assertThat(both.get(0)).contains("this end: " + each.place());
            assertThat(both.get(1)).contains("this end: " + each.load());
        }
    }

    @Test
    void everyFeederSaysItsCableAtBothEnds() {
        List<String> cables =
                labels(LabelKind.CABLE).stream().map(LabelSheetsTest::text).toList();

        assertThat(cables.stream().filter(text -> text.startsWith("Feeder ")))
                .hasSize(2 * document.schedules().size());
        // Its first panel: 2 AWG, 16 m.
        assertThat(cables.subList(0, 2))
                .allSatisfy(text -> assertThat(text).contains("2 AWG, protective conductor 8 AWG, copper, 16 m"));
    }

    @Test
    void everyControlLeadHasALabelForEachEndWithWhatAnEmergencyDoes() {
        List<String> leads =
                labels(LabelKind.LEAD).stream().map(LabelSheetsTest::text).toList();
        Set<String> dropped = document.loads().stream()
                .filter(each -> each.drops())
                .map(each -> each.id())
                .collect(Collectors.toSet());

        assertThat(leads).hasSize(2 * document.tables().landing().rows().size());
        for (int i = 0; i < leads.size(); i += 2) {
            PlannedCircuit each = document.tables().landing().rows().get(i / 2);
            String output =
                    each.board().orElseThrow() + " output " + each.output().getAsInt();
            assertThat(leads.get(i)).contains("this end: " + output, each.panel() + " slot " + each.slots());
            assertThat(leads.get(i + 1)).contains("this end: " + each.place(), "switches " + each.load());
            assertThat(leads.subList(i, i + 2))
                    .allMatch(text ->
                            text.contains(dropped.contains(each.load()) ? "emergency: drops" : "emergency: holds"));
        }
    }

    @Test
    void noTwoBreakersHaveTheSameLabel() {
        List<String> texts =
                labels(LabelKind.BREAKER).stream().map(LabelSheetsTest::text).toList();

        assertThat(new HashSet<>(texts)).hasSameSizeAs(texts);
    }

    @Test
    void equipmentLabelsThatWouldNotSayAllOfItAreCounted() {
        assertThat(sheets.of(LabelKind.EQUIPMENT, stock("a4-99.1x67.7")).cut()).isZero();
        LabelSheets.Printed small = sheets.of(LabelKind.EQUIPMENT, stock("100x100:20x9:2x2:0x0:0x0"));

        assertThat(small.cut()).isEqualTo(small.labels());
    }

    @Test
    void theSameLabelsAreTheSameFile() {
        assertThat(sheets.of(LabelKind.BREAKER, stock("a4-70x37")).pdf())
                .isEqualTo(sheets.of(LabelKind.BREAKER, stock("a4-70x37")).pdf());
    }
}
