package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.solver.report.PortfolioText;
import evenrise.solver.table.Cell;
import evenrise.solver.table.ReadTable;
import evenrise.solver.table.TableFileReader;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/**
 * What a portfolio has written into a folder, to be looked at again: a row a plan, and the plans themselves.
 *
 * @since 0.1.0
 */
public final class PortfolioStore {
    /** The table that marks such a folder. */
    public static final String TABLE = "portfolio.csv";

    private static final Pattern KEY = Pattern.compile("[0-9a-f]{16,128}");
    private static final List<String> HEADER = PortfolioText.values(List.of()).get(0);

    private final Path folder;
    private final List<Row> rows;

    private PortfolioStore(Path folder, List<Row> rows) {
        this.folder = folder;
        this.rows = List.copyOf(rows);
    }

    /**
     * One plan that was wanted.
     *
     * @param objective empty where no plan was found
     * @param key of the plan that was found
     * @param failure why there is none
     */
    public record Row(
            String project,
            String variant,
            int seed,
            OptionalDouble price,
            OptionalDouble objective,
            OptionalDouble gapPercent,
            OptionalDouble peakInrushAmps,
            OptionalDouble supplyImbalancePercent,
            OptionalDouble durationSeconds,
            OptionalInt hardRulesBroken,
            OptionalInt limitsBroken,
            Optional<String> key,
            Optional<String> failure) {}

    /** @throws JobFailed where the folder holds no portfolio's table, or one that somebody has changed beyond reading */
    public static PortfolioStore in(Path folder) {
        Path file = folder.resolve(TABLE);
        try {
            ReadTable table = TableFileReader.read(file).get(0);
            if (table.rows().isEmpty() || !texts(table.rows().get(0)).equals(HEADER)) {
                throw refused(file, "it is no table of a portfolio");
            }
            List<Row> rows = new ArrayList<>();
            for (ReadTable.Row row : table.rows().subList(1, table.rows().size())) {
                rows.add(row(texts(row)));
            }
            return new PortfolioStore(folder, rows);
        } catch (IOException e) {
            throw refused(file, e.getMessage());
        } catch (NumberFormatException e) {
            throw refused(file, "a number in it cannot be read");
        }
    }

    private static JobFailed refused(Path file, String why) {
        return new JobFailed(
                JobFailed.Reason.INPUT,
                "'" + Harmless.shown(file.getFileName().toString()) + "' cannot be read: " + Harmless.shown(why) + ".");
    }

    /** Without the apostrophe that keeps a spreadsheet from taking a text for a formula. */
    private static List<String> texts(ReadTable.Row row) {
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < HEADER.size(); i++) {
            Cell cell = row.cell(i);
            texts.add(cell.text().matches("'[=+@\\-].*") ? cell.text().substring(1) : cell.text());
        }
        return texts;
    }

    private static Row row(List<String> texts) {
        return new Row(
                texts.get(0),
                texts.get(1),
                Integer.parseInt(texts.get(2)),
                number(texts, "price"),
                number(texts, "objective"),
                number(texts, "gap_pct"),
                number(texts, "peak_inrush_a"),
                number(texts, "supply_imbalance_pct"),
                number(texts, "duration_s"),
                count(texts, "hard_rules_broken"),
                count(texts, "limits_broken"),
                text(texts, "answer").filter(each -> KEY.matcher(each).matches()),
                text(texts, "failure"));
    }

    private static Optional<String> text(List<String> texts, String column) {
        return Optional.of(texts.get(HEADER.indexOf(column))).filter(each -> !each.isEmpty());
    }

    private static OptionalDouble number(List<String> texts, String column) {
        return text(texts, column)
                .map(each -> OptionalDouble.of(Double.parseDouble(each)))
                .orElse(OptionalDouble.empty());
    }

    private static OptionalInt count(List<String> texts, String column) {
        return text(texts, column)
                .map(each -> OptionalInt.of(Integer.parseInt(each)))
                .orElse(OptionalInt.empty());
    }

    /** In the order of the table. */
    public List<Row> rows() {
        return rows;
    }

    /**
     * The plan of a row as it landed.
     *
     * @throws JobFailed where it is not there
     */
    public byte[] plan(String key) {
        boolean isOurs =
                rows.stream().anyMatch(row -> row.key().filter(key::equals).isPresent());
        Path file = folder.resolve(PortfolioJob.ANSWERS).resolve(key + PortfolioJob.ENDING);
        try {
            if (isOurs && Files.isRegularFile(file)) {
                return Files.readAllBytes(file);
            }
        } catch (IOException e) {
            // Told below.
        }
        throw new JobFailed(
                JobFailed.Reason.INPUT,
                "the plan is not among the answers of this portfolio any more. Run evenrise portfolio again into the"
                        + " same folder: it does only what is missing.");
    }
}
