package evenrise.solver.app;

import evenrise.model.contract.Phrase;
import evenrise.model.file.FileSet;
import evenrise.solver.portfolio.Lot;
import evenrise.solver.portfolio.Outcome;
import evenrise.solver.rendering.PortfolioPage;
import evenrise.solver.rendering.PortfolioWorkbook;
import evenrise.solver.report.PortfolioText;
import evenrise.solver.table.Csv;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;

/** Results of a portfolio: table, workbook, page, and of each project and variant the best plan with what it is a plan of. */
final class PortfolioFolder {
    private final Path folder;

    PortfolioFolder(Path folder) {
        this.folder = folder;
    }

    /** @param answer bytes of a plan by its task's key */
    void write(PortfolioResult result, List<PlannedVariant> variants, Function<String, byte[]> answer) {
        Map<String, byte[]> files = new LinkedHashMap<>();
        List<List<String>> values = PortfolioText.values(result.outcomes());
        List<Lot> lots = result.lots();
        files.put("portfolio.csv", utf8(Csv.of(values, result.priceRemarks())));
        files.put("portfolio.xlsx", PortfolioWorkbook.of(lots, values, result.facts(), result.priceRemarks()));
        files.put("portfolio.html", utf8(PortfolioPage.of(lots, result.facts(), result.priceRemarks())));
        for (Lot lot : lots) {
            Optional<String> key = lot.best().flatMap(Outcome::key);
            if (key.isPresent()) {
                String name = lot.project() + "." + lot.variant();
                files.put(name + ".plan.json", answer.apply(key.get()));
                variants.stream()
                        .filter(each -> each.project().equals(lot.project())
                                && each.variant().name().equals(lot.variant())
                                && !each.variant().changes().isEmpty())
                        .flatMap(each -> each.bytes().stream())
                        .forEach(bytes -> files.put(name + ".project.json", bytes));
            }
        }
        FileSet set = new FileSet(folder);
        files.forEach(set::add);
        Outputs.write(() -> {
            List<String> foreign = set.foreign(files.keySet());
            if (!foreign.isEmpty()) {
                throw new JobFailed(
                        JobFailed.Reason.OUTPUT,
                        "would overwrite what another program wrote or somebody has changed: "
                                + Phrase.quoted(foreign, 12) + ". Move it away, or name another folder; plans that were"
                                + " found stay in 'answers'.");
            }
            set.write();
        });
    }

    private static byte[] utf8(String text) {
        return text.getBytes(StandardCharsets.UTF_8);
    }
}
