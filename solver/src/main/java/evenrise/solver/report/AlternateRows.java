package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Function;

/** Alternates side by side: figures with their difference to the first, and what they differ in. */
public final class AlternateRows {
    private static final String NONE = "not stated";

    private AlternateRows() {}

    /**
     * One figure of all alternates.
     *
     * @param label with the unit
     */
    public record Row(String label, List<Cell> cells) {}

    /**
     * @param value as it is read
     * @param difference to the first alternate, with its sign; empty where there is none to tell
     * @param note in small print; may be empty
     */
    public record Cell(String value, String difference, String note) {}

    /** Figures, in the order of their worth to a client. */
    public static List<Row> figures(List<Alternate> all) {
        Set<Optional<String>> currencies = new LinkedHashSet<>();
        all.forEach(each -> currencies.add(each.currency()));
        boolean hasOneCurrency = currencies.size() == 1;
        List<Row> rows = new ArrayList<>();
        rows.add(row(
                "Price"
                        + (hasOneCurrency
                                ? all.get(0).currency().map(it -> ", " + it).orElse("")
                                : ""),
                all,
                Alternate::price,
                2,
                each -> priceNote(each, hasOneCurrency),
                hasOneCurrency && all.stream().allMatch(each -> each.unpriced() == 0)));
        if (all.stream().anyMatch(each -> each.range().isPresent())) {
            rows.add(drawn("Half of drawn prices at most (P50)", all, 50));
            rows.add(drawn("Nine tenths at most (P90)", all, 90));
        }
        rows.add(row("Peak inrush, A", all, each -> decimal(each.peakInrushAmps()), 1, each -> "", true));
        rows.add(row("All on after, s", all, each -> decimal(each.lastOnSeconds()), 2, each -> "", true));
        rows.add(row("Panels", all, each -> whole(each.panels()), 0, each -> "", true));
        rows.add(row("Control boards", all, each -> whole(each.boards()), 0, each -> "", true));
        rows.add(row(
                "Spare slots", all, each -> whole(each.freeSlots()), 0, each -> "of " + each.slots() + " slots", true));
        rows.add(row(
                "Spare outputs",
                all,
                each -> whole(each.freeOutputs()),
                0,
                each -> "of " + each.outputs() + " outputs",
                true));
        rows.add(row("Floor space, m²", all, Alternate::floorSquareMetres, 2, each -> "", true));
        return rows;
    }

    private static Row drawn(String label, List<Alternate> all, int percent) {
        return row(
                label,
                all,
                each -> each.range().stream()
                        .flatMapToDouble(range -> range.percentile(percent).stream())
                        .mapToObj(BigDecimal::valueOf)
                        .findFirst(),
                2,
                each -> each.range()
                        .filter(range -> range.without() > 0)
                        .map(range -> range.without() + " of " + range.draws().size() + " draws do not fit")
                        .orElse(""),
                false);
    }

    /** Things of which the alternates have different numbers. */
    public static List<Row> things(List<Alternate> all) {
        Set<String> items = new LinkedHashSet<>();
        all.forEach(each -> items.addAll(each.things().keySet()));
        List<Row> rows = new ArrayList<>();
        for (String item : items) {
            List<BigDecimal> numbers = all.stream()
                    .map(each -> each.things().getOrDefault(item, BigDecimal.ZERO))
                    .toList();
            if (numbers.stream().anyMatch(number -> number.compareTo(numbers.get(0)) != 0)) {
                rows.add(row(
                        item.substring(0, 1).toUpperCase(java.util.Locale.ROOT) + item.substring(1),
                        all,
                        each -> Optional.of(each.things().getOrDefault(item, BigDecimal.ZERO)),
                        numbers.stream().allMatch(AlternateRows::isWhole) ? 0 : 1,
                        each -> "",
                        false));
            }
        }
        return rows;
    }

    /** Header first; one row a figure, one column an alternate. */
    public static List<List<String>> values(List<Alternate> all) {
        List<List<String>> rows = new ArrayList<>();
        List<String> header = new ArrayList<>(List.of("figure"));
        all.forEach(each -> header.add(each.name()));
        rows.add(header);
        List<String> headlines = new ArrayList<>(List.of("Plan"));
        all.forEach(each -> headlines.add(each.headline()));
        rows.add(headlines);
        for (List<Row> part : List.of(figures(all), things(all))) {
            for (Row row : part) {
                List<String> cells = new ArrayList<>(List.of(row.label()));
                row.cells().forEach(cell -> cells.add(cell.value()));
                rows.add(cells);
            }
        }
        return rows;
    }

    private static Row row(
            String label,
            List<Alternate> all,
            Function<Alternate, Optional<BigDecimal>> figure,
            int decimals,
            Function<Alternate, String> note,
            boolean hasDifference) {
        Optional<BigDecimal> first = figure.apply(all.get(0));
        List<Cell> cells = new ArrayList<>();
        for (Alternate each : all) {
            Optional<BigDecimal> value = figure.apply(each);
            boolean isTold = hasDifference && cells.size() > 0 && first.isPresent() && value.isPresent();
            cells.add(new Cell(
                    value.map(it -> fixed(it, decimals)).orElse(NONE),
                    isTold ? difference(value.get().subtract(first.get()), decimals) : "",
                    note.apply(each)));
        }
        return new Row(label, cells);
    }

    private static String difference(BigDecimal difference, int decimals) {
        BigDecimal rounded = difference.setScale(decimals, RoundingMode.HALF_UP);
        return rounded.signum() == 0 ? "same" : (rounded.signum() > 0 ? "+" : "−") + fixed(rounded.abs(), decimals);
    }

    private static String priceNote(Alternate each, boolean hasOneCurrency) {
        List<String> notes = new ArrayList<>();
        if (!hasOneCurrency) {
            notes.add(each.currency().orElse("no currency stated"));
        }
        if (each.unpriced() > 0) {
            notes.add("without " + each.unpriced() + (each.unpriced() == 1 ? " item that has" : " items that have")
                    + " no price");
        }
        if (!each.included().isEmpty()) {
            notes.add("with " + String.join(", ", each.included()));
        }
        return String.join("; ", notes);
    }

    private static String fixed(BigDecimal value, int decimals) {
        return value.setScale(decimals, RoundingMode.HALF_UP).toPlainString();
    }

    private static boolean isWhole(BigDecimal value) {
        return value.stripTrailingZeros().scale() <= 0;
    }

    private static Optional<BigDecimal> decimal(double value) {
        return Optional.of(new BigDecimal(Decimals.fixed(value, 9)));
    }

    private static Optional<BigDecimal> whole(int value) {
        return Optional.of(BigDecimal.valueOf(value));
    }
}
