package evenrise.solver.exchange;

import evenrise.model.project.PriceBreak;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Collectors;

/** A row of a table of prices that is written: numbers, texts, and nothing where nothing is stated. */
record PriceRow(Map<PriceColumn, Object> cells) {
    static PriceRow of(PricedKind kind) {
        PriceRow row = new PriceRow(new EnumMap<>(PriceColumn.class));
        return row.with(PriceColumn.KIND, kind.word());
    }

    PriceRow with(PriceColumn column, Object value) {
        cells.put(column, value);
        return this;
    }

    PriceRow with(PriceColumn column, OptionalDouble value) {
        value.ifPresent(it -> cells.put(column, it));
        return this;
    }

    PriceRow with(PriceColumn column, OptionalInt value) {
        value.ifPresent(it -> cells.put(column, (double) it));
        return this;
    }

    /** A price of 0 is none. */
    PriceRow priced(double price, List<PriceBreak> breaks) {
        if (price > 0) {
            cells.put(PriceColumn.PRICE, price);
        }
        if (!breaks.isEmpty()) {
            cells.put(
                    PriceColumn.BREAKS,
                    breaks.stream()
                            .map(each -> each.from() + ": " + number(each.price()))
                            .collect(Collectors.joining("; ")));
        }
        return this;
    }

    String text(PriceColumn column) {
        Object value = cells.getOrDefault(column, "");
        return value instanceof Double number ? number(number) : value.toString();
    }

    static String number(double number) {
        return number == Math.rint(number) && Math.abs(number) < 1e15
                ? Long.toString((long) number)
                : Double.toString(number);
    }
}
