package evenrise.solver.rendering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.Needs;
import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.estimate.CostKind;
import evenrise.model.estimate.PriceBuildUp;
import evenrise.model.project.AddedPercentage;
import evenrise.model.project.Catalogue;
import evenrise.model.project.PercentageBase;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.solver.browser.DrawnPages;
import evenrise.solver.document.Document;
import evenrise.solver.document.Schedule;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.zip.ZipEntry;
import java.util.zip.ZipInputStream;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The workbook computes what follows from other figures, and comes to what the evaluation says. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class WorkbookCalculatesTest {
    private static final Pattern NAME =
            Pattern.compile("<definedName([^>]*) name=\"([^\"]+)\"[^>]*>'?([^<']+)'?!\\$([A-Z]+)\\$(\\d+)");

    private static final List<AddedPercentage> PERCENTAGES = List.of(
            new AddedPercentage("Freight", 2.5, PercentageBase.MATERIAL),
            new AddedPercentage("Contingency", 7, PercentageBase.MATERIAL_AND_LABOUR),
            new AddedPercentage("Tax", 19, PercentageBase.ALL_ABOVE));

    private DrawnPages.Planned planned;
    private Document document;
    private byte[] bytes;

    @BeforeAll
    void write() {
        Layout plain = DrawnPages.of("copper-mill").layout();
        Catalogue catalogue = plain.project().catalogue().orElseThrow();
        Project priced = plain.project().withCatalogue(Optional.of(catalogue.withPercentages(PERCENTAGES)));
        planned = DrawnPages.of(Layout.of(priced, plain.plan()));
        document = planned.document();
        bytes = WorkbookFile.of(document);
    }

    private Map<String, String> written() throws IOException {
        return Recalculated.values(new ByteArrayInputStream(bytes));
    }

    /** The sheet and cell that a name stands for, of names that are known everywhere. */
    private Map<String, String> names() {
        Map<String, String> names = new HashMap<>();
        Matcher found = NAME.matcher(entry(bytes, "xl/workbook.xml"));
        while (found.find()) {
            if (!found.group(1).contains("localSheetId")) {
                names.put(found.group(2), found.group(3) + "!" + found.group(4) + found.group(5));
            }
        }
        return names;
    }

    private void agree(Map<String, String> values) {
        Map<String, String> names = names();
        assertThat(number(values, names.get("bill_sum_total")))
                .isCloseTo(
                        BillOfMaterials.of(
                                        planned.layout().project(),
                                        Optional.of(planned.layout().plan()))
                                .total()
                                .doubleValue(),
                        within(1e-6));
        for (int i = 0; i < document.schedules().size(); i++) {
            Schedule schedule = document.schedules().get(i);
            String panel = "panel_" + (i + 1) + "_";
            assertThat(shown(values, names.get(panel + "connected_va"), 0))
                    .isEqualTo(summary(schedule, "Connected").total());
            assertThat(shown(values, names.get(panel + "connected_amps"), 2) + " A")
                    .isEqualTo(summary(schedule, "Connected").amps());
            assertThat(shown(values, names.get(panel + "continuous_amps"), 2) + " A")
                    .isEqualTo(summary(schedule, "Continuous at 125 %").amps());
            assertThat(shown(values, names.get(panel + "allowed"), 2) + " A")
                    .isEqualTo(summary(schedule, "Allowed to run").amps());
            assertThat(number(values, names.get(panel + "spaces")))
                    .isEqualTo(Double.parseDouble(schedule.totals().stream()
                            .filter(fact -> fact.name().equals("Spaces"))
                            .findFirst()
                            .orElseThrow()
                            .value()));
        }
    }

    private static evenrise.solver.document.LoadSummary.Line summary(Schedule schedule, String name) {
        return schedule.summary().stream()
                .filter(line -> line.name().equals(name))
                .findFirst()
                .orElseThrow();
    }

    private static double number(Map<String, String> values, String cell) {
        return Double.parseDouble(values.get(cell));
    }

    private static String shown(Map<String, String> values, String cell, int decimals) {
        return String.format("%." + decimals + "f", number(values, cell));
    }

    @Test
    void hasTheResultsBesideTheFormulas() throws IOException {
        agree(written());
    }

    /** What a name stands for is a formula wherever another figure makes it. */
    @Test
    void computesSumsTotalsDemandSpareAndPrices() throws IOException {
        Map<String, String> names = names();
        try (ReadableWorkbook workbook = new ReadableWorkbook(new ByteArrayInputStream(bytes))) {
            Map<String, CellType> types = new HashMap<>();
            workbook.getSheets().forEach(sheet -> {
                try {
                    sheet.read()
                            .forEach(row -> row.stream()
                                    .filter(cell -> cell != null)
                                    .forEach(cell ->
                                            types.put(sheet.getName() + "!" + cell.getAddress(), cell.getType())));
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
            for (String name : List.of(
                    "bill_sum",
                    "bill_sum_total",
                    "margins_used",
                    "margins_left",
                    "balance_imbalance",
                    "groups_running",
                    "panel_1_connected_va",
                    "panel_1_demand_amps",
                    "panel_1_continuous_amps",
                    "panel_1_left",
                    "panel_1_used",
                    "panel_1_spaces")) {
                assertThat(types.get(names.get(name))).as(name).isEqualTo(CellType.FORMULA);
            }
            assertThat(types.get(names.get("panel_1_demand_factor"))).isEqualTo(CellType.NUMBER);
        }
    }

    @Nested
    @Needs("soffice")
    class WhereASpreadsheetProgramComputesItAnew {
        @ParameterizedTest
        @ValueSource(strings = {"fennel-studio", "orchard-campus"})
        void everyFormulaComesToWhatStoodBesideIt(String dataset, @TempDir Path folder)
                throws IOException, InterruptedException {
            byte[] workbook = WorkbookFile.of(DrawnPages.of(dataset).document());

            Map<String, String> anew = Recalculated.of(workbook, folder);

            Map<String, String> before = Recalculated.values(new ByteArrayInputStream(workbook));
            assertThat(before).hasSizeGreaterThan(1000);
            before.forEach((cell, value) -> {
                if (value.matches("-?[0-9.]+(E-?[0-9]+)?")) {
                    double is = Double.parseDouble(value);
                    assertThat(Double.parseDouble(anew.get(cell)))
                            .as(cell)
                            .isCloseTo(is, within(1e-9 * Math.max(1, Math.abs(is))));
                } else if (!value.isEmpty()) {
                    assertThat(anew.get(cell)).as(cell).isEqualTo(value);
                }
            });
        }

        @Test
        void anotherPriceAndAnotherCurrentMakeOtherTotals(@TempDir Path folder)
                throws IOException, InterruptedException {
            Map<String, String> names = names();
            Map<String, String> before = written();
            String price = names.get("bill_price");
            double quantity = number(before, names.get("bill_quantity"));
            String factor = names.get("panel_1_demand_factor");

            Map<String, String> anew =
                    Recalculated.of(changed(changed(bytes, price, number(before, price) + 1000), factor, 0.5), folder);

            assertThat(number(anew, names.get("bill_sum_total")))
                    .isCloseTo(
                            number(before, names.get("bill_sum_total"))
                                    + 1000 * quantity * PriceBuildUp.factor(CostKind.MATERIAL, PERCENTAGES),
                            within(0.05));
            assertThat(number(anew, names.get("panel_1_demand_amps")))
                    .isCloseTo(number(before, names.get("panel_1_connected_amps")) / 2, within(1e-6));
        }
    }

    /** The same workbook with another number in a cell, and all else as it was. */
    private static byte[] changed(byte[] workbook, String at, double number) throws IOException {
        String sheet = at.substring(0, at.indexOf('!'));
        Matcher sheets = Pattern.compile("<sheet name=\"([^\"]+)\"").matcher(entry(workbook, "xl/workbook.xml"));
        int index = 0;
        do {
            index++;
        } while (sheets.find() && !sheets.group(1).equals(sheet));
        String name = "xl/worksheets/sheet" + index + ".xml";
        String cell = at.substring(at.indexOf('!') + 1);
        return Recalculated.edited(workbook, (entry, text) -> {
            String changed = entry.equals(name)
                    ? text.replaceFirst("(<c r=\"" + cell + "\"[^>]*><v>)[^<]*", "$1" + number)
                    : text;
            assertThat(entry.equals(name)).isEqualTo(!changed.equals(text));
            return changed;
        });
    }

    private static String entry(byte[] workbook, String name) {
        try (ZipInputStream in = new ZipInputStream(new ByteArrayInputStream(workbook))) {
            for (ZipEntry entry = in.getNextEntry(); entry != null; entry = in.getNextEntry()) {
                if (entry.getName().equals(name)) {
                    return new String(in.readAllBytes(), StandardCharsets.UTF_8);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        throw new AssertionError("no entry " + name);
    }

    @Test
    void hasAScheduleForEachPanelWhoseSlotsAreNumbersInATable() throws IOException {
        try (ReadableWorkbook workbook = new ReadableWorkbook(new ByteArrayInputStream(bytes))) {
            for (Schedule schedule : document.schedules()) {
                List<Double> slots = workbook.findSheet("panel " + schedule.panel()).orElseThrow().read().stream()
                        .flatMap(row -> row.getOptionalCell(0).stream())
                        .filter(cell -> cell.getType() == CellType.NUMBER)
                        .map(cell -> cell.asNumber().doubleValue())
                        .toList();
                assertThat(slots).isSorted().hasSize((int) schedule.rows().stream()
                        .flatMap(row -> java.util.stream.Stream.of(row.left(), row.right()))
                        .filter(slot -> slot.number() > 0)
                        .count());
            }
        }
        assertThat(entry(bytes, "xl/tables/table1.xml")).contains("<autoFilter");
    }

    @Test
    void saysWhatItIsAndIsForThePaperOfItsCountry() {
        assertThat(entry(bytes, "docProps/core.xml"))
                .contains(document.imprint().project() + ", revision A")
                .contains(document.imprint().projectSha256())
                .doesNotContain("dcterms:created");
        byte[] american = WorkbookFile.of(DrawnPages.of("fennel-studio").document());
        assertThat(entry(american, "xl/worksheets/sheet3.xml")).contains("paperSize=\"1\"");
        byte[] european = WorkbookFile.of(DrawnPages.of("lumen-theatre").document());
        assertThat(entry(european, "xl/worksheets/sheet3.xml")).contains("paperSize=\"9\"");
    }
}
