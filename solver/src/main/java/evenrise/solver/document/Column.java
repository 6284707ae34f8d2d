package evenrise.solver.document;

import evenrise.model.contract.Harmless;
import java.util.Locale;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.function.ToIntFunction;

/**
 * What a table shows of each of its rows.
 *
 * @param key by which templates ask for it; no heading is a key
 * @param unit empty where there is none
 * @param isNumber whether its cells are numbers, but for words where there is none
 * @param formula how a workbook computes its cell in a row: {@code [key]} is the cell of another column in that row,
 *     {@code [key:above]} all of a column's cells above, {@code [key@3]} that of row 3, counted from 0, other words names of a workbook; empty where the value is given.
 *     No text of a project stands in it
 * @param value a {@link String} or a {@link Number}; texts are inert
 */
public record Column<R>(
        String key,
        String heading,
        String unit,
        boolean isNumber,
        Function<R, Object> value,
        Function<R, String> formula) {
    /** Whose value is given. */
    public Column(String key, String heading, String unit, boolean isNumber, Function<R, Object> value) {
        this(key, heading, unit, isNumber, value, row -> "");
    }

    public static <R> Column<R> text(String key, String heading, Function<R, String> text) {
        // Names come from outside, and tables of values go to other programs as they are.
        return new Column<>(key, heading, "", false, row -> Harmless.shown(text.apply(row)));
    }

    /** A text or a number, row by row. */
    static <R> Column<R> value(String key, String heading, Function<R, Object> value) {
        return new Column<>(
                key,
                heading,
                "",
                false,
                row -> value.apply(row) instanceof String text ? Harmless.shown(text) : value.apply(row));
    }

    /** To be filled in by hand. */
    static <R> Column<R> blank(String key, String heading) {
        return text(key, heading, row -> "");
    }

    public static <R> Column<R> number(String key, String heading, String unit, ToDoubleFunction<R> number) {
        return new Column<>(key, heading, unit, true, number::applyAsDouble);
    }

    /** @param none stands where there is no number */
    static <R> Column<R> number(
            String key, String heading, String unit, Function<R, OptionalDouble> number, String none) {
        return new Column<>(key, heading, unit, true, row -> {
            OptionalDouble value = number.apply(row);
            return value.isPresent() ? (Object) value.getAsDouble() : none;
        });
    }

    static <R> Column<R> count(String key, String heading, ToIntFunction<R> count) {
        return new Column<>(key, heading, "", true, count::applyAsInt);
    }

    /** Empty where there is nothing to count. */
    static <R> Column<R> countOrNone(String key, String heading, Function<R, OptionalInt> count) {
        return new Column<>(key, heading, "", true, row -> {
            OptionalInt value = count.apply(row);
            return value.isPresent() ? (Object) value.getAsInt() : "";
        });
    }

    /** The same, computed anew in a workbook. */
    public Column<R> calculated(Function<R, String> by) {
        return new Column<>(key, heading, unit, isNumber, value, by);
    }

    /** With its unit behind a comma. */
    public String header() {
        return unit.isEmpty() ? heading : heading + ", " + unit;
    }

    /** Its key as a machine spells it: {@code off_after}. */
    public String field() {
        return key.replaceAll("([a-z0-9])([A-Z])", "$1_$2")
                .replaceAll("([A-Z])([A-Z][a-z])", "$1_$2")
                .toLowerCase(Locale.ROOT);
    }

    /** The same with its unit behind it, as fields of a project are spelt: {@code running_a}. */
    public String fieldWithUnit() {
        String symbol = unit.equals("%") ? "pct" : unit.toLowerCase(Locale.ROOT).replaceAll("[^a-z0-9]+", "_");
        return symbol.isEmpty() ? field() : field() + "_" + symbol;
    }

    /** How a workbook computes its cell in a row; empty where it is given. */
    public String formulaOf(R row) {
        return formula.apply(row);
    }

    /** Its cell in a row. */
    public Object of(R row) {
        return value.apply(row);
    }
}
