package evenrise.solver.document;

import evenrise.model.contract.Harmless;
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
 * @param value a {@link String}, {@link Double} or {@link Integer}; texts are inert
 */
public record Column<R>(String key, String heading, String unit, boolean isNumber, Function<R, Object> value) {
    public static <R> Column<R> text(String key, String heading, Function<R, String> text) {
        // Names come from outside, and tables of values go to other programs as they are.
        return new Column<>(key, heading, "", false, row -> Harmless.shown(text.apply(row)));
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

    /** With its unit behind a comma. */
    public String header() {
        return unit.isEmpty() ? heading : heading + ", " + unit;
    }

    /** Its cell in a row. */
    public Object of(R row) {
        return value.apply(row);
    }
}
