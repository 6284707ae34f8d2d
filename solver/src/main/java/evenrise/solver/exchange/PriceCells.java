package evenrise.solver.exchange;

import evenrise.model.contract.Harmless;
import evenrise.model.contract.Words;
import evenrise.model.project.PriceBreak;
import evenrise.solver.table.Amount;
import evenrise.solver.table.Cell;
import evenrise.solver.table.ReadTable;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Consumer;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** Cells of one row of a table of prices; what cannot be read is a problem with its place. */
final class PriceCells {
    private static final Pattern UNKNOWN = Pattern.compile(
            "\\?+|-+|n/?a|t\\.?b\\.?[acd]\\.?|p\\.?o\\.?a\\.?|on request|on application|by others|auf anfrage|sur demande|a consultar");
    private static final Pattern CURRENCY =
            Pattern.compile("(?i)^(€|\\$|£|[a-z]{3}\\b)\\s*|\\s*(€|\\$|£|\\b[a-z]{3})$");
    private static final int LONGEST = 200;

    private final ReadTable.Row row;
    private final Map<PriceColumn, Integer> columns;
    private final String place;
    private final boolean isCommaDecimal;
    private final Consumer<String> problem;

    /** @param place of the row, in words */
    PriceCells(
            ReadTable.Row row,
            Map<PriceColumn, Integer> columns,
            String place,
            boolean isCommaDecimal,
            Consumer<String> problem) {
        this.row = row;
        this.columns = columns;
        this.place = place;
        this.isCommaDecimal = isCommaDecimal;
        this.problem = problem;
    }

    String text(PriceColumn column) {
        return Harmless.cut(cell(column).text(), LONGEST);
    }

    /** The text, which must be there. */
    String needed(PriceColumn column) {
        String text = text(column);
        if (text.isEmpty()) {
            problem(column, "is empty, expected " + column.meaning());
        }
        return text;
    }

    double number(PriceColumn column, double otherwise) {
        return number(column).orElse(otherwise);
    }

    /** The number, which must be there; 1 where that is a problem, which is noted. */
    double neededNumber(PriceColumn column) {
        if (cell(column).isEmpty()) {
            problem(column, "is empty, expected a number: " + column.meaning());
        }
        return number(column).orElse(1);
    }

    int neededWhole(PriceColumn column) {
        double number = neededNumber(column);
        if (number != Math.rint(number) || Math.abs(number) > 1e6) {
            problem(column, "is no whole number");
            return 1;
        }
        return (int) number;
    }

    /** Empty where nothing is stated, or what is stated is a problem, which is noted. */
    OptionalDouble number(PriceColumn column) {
        Cell cell = cell(column);
        if (cell.isEmpty()) {
            return OptionalDouble.empty();
        }
        if (cell.kind() != Cell.Kind.TEXT && cell.kind() != Cell.Kind.NUMBER) {
            problem(column, "holds no number; maybe a formula without its value, or a date");
            return OptionalDouble.empty();
        }
        Optional<Double> number = number(cell.text(), cell.kind() == Cell.Kind.TEXT);
        if (number.isEmpty()) {
            problem(column, "is '" + text(column) + "', expected a number");
        }
        return number.stream().mapToDouble(Double::doubleValue).findFirst();
    }

    /** 0 where it is not known, which counts as no price. */
    double price() {
        return isUnknown() ? 0 : number(PriceColumn.PRICE).orElse(0);
    }

    private boolean isUnknown() {
        return UNKNOWN.matcher(text(PriceColumn.PRICE).toLowerCase(Locale.ROOT)).matches();
    }

    /** Empty where it is not known. */
    OptionalDouble maybePrice() {
        return isUnknown() ? OptionalDouble.empty() : number(PriceColumn.PRICE);
    }

    /** A workbook keeps 19 % as 0.19, which nobody may take for a fifth of a percent. */
    double percent() {
        double percent = neededNumber(PriceColumn.PERCENT);
        boolean isSaid = text(PriceColumn.PERCENT).contains("%");
        if (percent > 0 && percent < 1 && !isSaid) {
            problem(PriceColumn.PERCENT, "is " + percent + ": write 19 for 19 %, and '0.5 %' for less than one");
        }
        return percent;
    }

    boolean isYes(PriceColumn column) {
        String text = text(column).toLowerCase(Locale.ROOT);
        if (!text.isEmpty() && !text.matches("yes|no|true|false|y|n|ja|nein")) {
            problem(column, "is '" + text + "', expected yes or no");
        }
        return text.isEmpty() || text.matches("yes|true|y|ja");
    }

    /** One of the words of a kind of thing; empty where none stands there, or another, which is noted. */
    <E extends Enum<E>> Optional<E> word(PriceColumn column, E[] values) {
        String text = text(column).toLowerCase(Locale.ROOT);
        Optional<E> value =
                Stream.of(values).filter(each -> Words.word(each).equals(text)).findFirst();
        if (value.isEmpty() && !text.isEmpty()) {
            problem(
                    column,
                    "is '" + text + "', expected "
                            + String.join(
                                    ", ", Stream.of(values).map(Words::word).toList()));
        }
        return value;
    }

    /** Such as {@code 5: 880; 20: 850}. */
    List<PriceBreak> breaks() {
        List<PriceBreak> breaks = new ArrayList<>();
        String text = text(PriceColumn.BREAKS);
        for (String each : text.isBlank() ? new String[0] : text.split(";")) {
            String[] parts = each.split(":", 2);
            Optional<Double> price = parts.length == 2 ? number(parts[1].strip(), true) : Optional.empty();
            if (price.isEmpty() || !parts[0].strip().matches("[0-9]{1,6}")) {
                problem(PriceColumn.BREAKS, "is '" + text + "', expected numbers and prices such as 5: 880; 20: 850");
                return List.of();
            }
            breaks.add(PriceBreak.builder()
                    .from(Integer.parseInt(parts[0].strip()))
                    .price(price.get())
                    .build());
        }
        return breaks;
    }

    void problem(PriceColumn column, String text) {
        problem.accept(place
                + (columns.containsKey(column) ? ", column " + ReadTable.letters(columns.get(column)) : "") + ": '"
                + column.header() + "' " + text + ".");
    }

    void problem(String text) {
        problem.accept(place + ": " + text);
    }

    private Optional<Double> number(String written, boolean isText) {
        String bare = isText ? CURRENCY.matcher(written.strip()).replaceAll("") : written;
        return Amount.of(bare, isText && isCommaDecimal)
                .filter(amount -> amount.unit().isEmpty() || amount.unit().equals("%"))
                .map(Amount::value);
    }

    private Cell cell(PriceColumn column) {
        return columns.containsKey(column) ? row.cell(columns.get(column)) : Cell.EMPTY;
    }
}
