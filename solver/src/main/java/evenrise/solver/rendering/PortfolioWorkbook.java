package evenrise.solver.rendering;

import evenrise.model.plan.Cautions;
import evenrise.solver.portfolio.Lot;
import evenrise.solver.portfolio.Outcome;
import evenrise.solver.table.SteadyZip;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;

/** Many plans as a workbook: a row a plan, and a row for each project and variant. */
public final class PortfolioWorkbook {
    private static final String HEADER = "E6ECEF";
    private static final int WIDTH = 16;

    /** Whatever looks like a number there. */
    private static final Set<String> WORDS = Set.of("project", "variant", "answer", "failure");

    private PortfolioWorkbook() {}

    /** @param values of the plans, header first */
    public static byte[] of(List<Lot> lots, List<List<String>> values, String facts, List<String> priceRemarks) {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        try (Workbook workbook = new Workbook(bytes, "evenrise", null)) {
            Worksheet cover = workbook.newWorksheet("cover");
            cover.value(0, 0, "Portfolio");
            cover.style(0, 0).bold().fontSize(14).set();
            cover.value(1, 0, Cells.text(facts));
            for (int i = 0; i < Cautions.ALL.size(); i++) {
                cover.value(3 + i, 0, Cautions.ALL.get(i));
            }
            for (int i = 0; i < priceRemarks.size(); i++) {
                cover.value(4 + Cautions.ALL.size() + i, 0, Cells.text(priceRemarks.get(i)));
            }
            cover.width(0, 120);
            lots(workbook.newWorksheet("lots"), lots);
            plans(workbook.newWorksheet("plans"), values);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return SteadyZip.ofWorkbook(bytes.toByteArray());
    }

    private static void lots(Worksheet sheet, List<Lot> lots) {
        List<String> headers = List.of(
                "project",
                "variant",
                "plans",
                "sound",
                "best objective",
                "median objective",
                "worst objective",
                "peak inrush of the best, A",
                "imbalance of the best, %",
                "last switch-on of the best, s",
                "price");
        header(sheet, headers);
        for (int row = 0; row < lots.size(); row++) {
            Lot lot = lots.get(row);
            int at = row + 1;
            sheet.value(at, 0, Cells.text(lot.project()));
            sheet.value(at, 1, Cells.text(lot.variant()));
            sheet.value(at, 2, lot.outcomes().size());
            sheet.value(at, 3, lot.sound());
            lot.best().ifPresent(each -> sheet.value(at, 4, each.objective()));
            lot.median().ifPresent(each -> sheet.value(at, 5, each.objective()));
            lot.worst().ifPresent(each -> sheet.value(at, 6, each.objective()));
            Optional<Outcome.Found> best = lot.best().flatMap(Outcome::found);
            best.ifPresent(each -> {
                sheet.value(at, 7, each.metrics().peakInrushAmps());
                sheet.value(at, 8, each.metrics().supplyImbalancePercent());
                sheet.value(at, 9, each.metrics().durationSeconds());
            });
            lot.outcomes().get(0).price().ifPresent(price -> sheet.value(at, 10, price));
        }
        if (!lots.isEmpty()) {
            sheet.range(1, 4, lots.size(), headers.size() - 1)
                    .style()
                    .format("0.00")
                    .set();
            sheet.setAutoFilter(0, 0, lots.size(), headers.size() - 1);
        }
    }

    private static void plans(Worksheet sheet, List<List<String>> values) {
        List<String> headers = values.get(0);
        header(sheet, headers);
        for (int row = 1; row < values.size(); row++) {
            for (int i = 0; i < headers.size(); i++) {
                String value = values.get(row).get(i);
                if (WORDS.contains(headers.get(i))) {
                    sheet.value(row, i, Cells.text(value));
                } else if (!value.isEmpty()) {
                    sheet.value(row, i, Double.parseDouble(value));
                }
            }
        }
        if (values.size() > 1) {
            sheet.setAutoFilter(0, 0, values.size() - 1, headers.size() - 1);
        }
    }

    private static void header(Worksheet sheet, List<String> headers) {
        for (int i = 0; i < headers.size(); i++) {
            sheet.value(0, i, headers.get(i));
            sheet.style(0, i)
                    .bold()
                    .wrapText(true)
                    .verticalAlignment("top")
                    .fillColor(HEADER)
                    .set();
            sheet.width(i, WIDTH);
        }
        sheet.freezePane(0, 1);
        sheet.repeatRows(0);
        sheet.pageOrientation("landscape");
        sheet.setFitToPage(true);
        sheet.fitToWidth((short) 1);
        sheet.fitToHeight((short) 0);
    }
}
