package evenrise.solver.exchange;

import evenrise.model.contract.Harmless;
import evenrise.model.file.FieldColumn;
import evenrise.solver.table.Cell;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/**
 * How a value is spelt in a cell, and what a cell says. Lists stand with commas between, an entry that holds one in
 * quotes; a list that is stated and empty is {@code []}. An empty cell states nothing.
 */
final class CellSpelling {
    private static final String EMPTY_LIST = "[]";
    private static final int LONGEST = 32_000;

    private CellSpelling() {}

    /** A Double, a Boolean or a text; an empty text where nothing is stated. */
    static Object cell(Optional<Object> value) {
        Object stated = value.orElse("");
        if (value.isEmpty() || stated instanceof Double || stated instanceof Boolean) {
            return stated;
        }
        if (stated instanceof List<?> list) {
            return list.isEmpty()
                    ? EMPTY_LIST
                    : shown(list.stream().map(CellSpelling::entry).collect(Collectors.joining(", ")));
        }
        return shown(stated.toString());
    }

    /** The same as a text. */
    static String text(Optional<Object> value) {
        Object cell = cell(value);
        return cell instanceof Double number ? number(number) : cell.toString();
    }

    /** Whether a cell says what the value is, whatever a spreadsheet has done to its ends. */
    static boolean says(Cell cell, Optional<Object> value, boolean isCommaDecimal) {
        Object wanted = cell(value);
        if (holdsNoValue(cell)) {
            return false;
        }
        if (wanted instanceof Double number) {
            return number(cell, isCommaDecimal).filter(number::equals).isPresent();
        }
        if (wanted instanceof Boolean truth) {
            return cell.text().equalsIgnoreCase(truth.toString());
        }
        return inert(cell.text()).equals(inert(Cell.text(wanted.toString()).text()));
    }

    /**
     * What the cell states in a column; empty where it states nothing.
     *
     * @param had what was stated there before; what somebody noted stays of its kind
     * @throws IllegalArgumentException with what is expected where it cannot be read so
     */
    static Optional<Object> value(Cell cell, FieldColumn column, Optional<Object> had, boolean isCommaDecimal) {
        if (holdsNoValue(cell)) {
            throw new IllegalArgumentException(
                    cell.kind() == Cell.Kind.DATE ? "no date" : "a value, and no formula without one");
        }
        if (cell.isEmpty()) {
            return Optional.empty();
        }
        String text = inert(cell.text());
        return Optional.of(
                switch (column.kind()) {
                    case NUMBER -> number(cell, isCommaDecimal).orElseThrow(() -> expected(column));
                    case TRUTH -> truth(text).orElseThrow(() -> expected(column));
                    case TEXTS -> entries(text);
                    case NUMBERS ->
                        entries(text).stream()
                                .map(each -> number(each).orElseThrow(() -> expected(column)))
                                .toList();
                    case FREE -> noted(cell, text, had);
                    case TEXT -> text;
                });
    }

    private static boolean holdsNoValue(Cell cell) {
        return cell.kind() == Cell.Kind.ERROR || cell.kind() == Cell.Kind.FORMULA || cell.kind() == Cell.Kind.DATE;
    }

    private static Object noted(Cell cell, String text, Optional<Object> had) {
        boolean mayBeNumber = cell.kind() == Cell.Kind.NUMBER
                || had.filter(Double.class::isInstance).isPresent();
        Optional<Object> number = mayBeNumber
                ? number(text)
                        .filter(each ->
                                cell.kind() == Cell.Kind.NUMBER || number(each).equals(text))
                        .map(Object.class::cast)
                : Optional.empty();
        Optional<Object> truth = had.filter(Boolean.class::isInstance).isPresent()
                ? truth(text).map(Object.class::cast)
                : Optional.empty();
        return number.or(() -> truth).orElse(text);
    }

    private static IllegalArgumentException expected(FieldColumn column) {
        return new IllegalArgumentException(column.expected());
    }

    private static Optional<Boolean> truth(String text) {
        return switch (text.toLowerCase(Locale.ROOT)) {
            case "true", "yes" -> Optional.of(true);
            case "false", "no" -> Optional.of(false);
            default -> Optional.empty();
        };
    }

    private static Optional<Double> number(Cell cell, boolean isCommaDecimal) {
        String text = inert(cell.text());
        return number(isCommaDecimal && cell.kind() == Cell.Kind.TEXT ? text.replace(',', '.') : text);
    }

    private static Optional<Double> number(String text) {
        return text.matches("[-+]?([0-9]+\\.?[0-9]*|\\.[0-9]+)([eE][-+]?[0-9]+)?")
                ? Optional.of(Double.valueOf(text))
                : Optional.empty();
    }

    private static String number(double number) {
        return number == Math.rint(number) && Math.abs(number) < 1e15
                ? Long.toString((long) number)
                : Double.toString(number);
    }

    /** Signs that are not seen could act on a screen; a line may end within a cell. */
    private static String shown(String text) {
        return Harmless.cut(text.lines().map(Harmless::shown).collect(Collectors.joining("\n")), LONGEST);
    }

    /** Without the apostrophe that keeps a spreadsheet from taking a text for a formula. */
    private static String inert(String text) {
        return text.matches("(?s)'[=+@\\t\\r-].*") ? text.substring(1) : text;
    }

    private static String entry(Object value) {
        if (value instanceof Double number) {
            return number(number);
        }
        String text = value.toString();
        boolean isPlain = !text.isEmpty()
                && text.equals(text.strip())
                && !text.contains(",")
                && !text.contains("\"")
                && !text.equals(EMPTY_LIST);
        return isPlain ? text : '"' + text.replace("\"", "\"\"") + '"';
    }

    private static List<String> entries(String text) {
        List<String> entries = new ArrayList<>();
        if (text.equals(EMPTY_LIST)) {
            return entries;
        }
        StringBuilder entry = new StringBuilder();
        boolean isQuoted = false;
        boolean wasQuoted = false;
        for (int i = 0; i <= text.length(); i++) {
            char sign = i < text.length() ? text.charAt(i) : ',';
            if (isQuoted && i < text.length()) {
                boolean isDoubled = sign == '"' && i + 1 < text.length() && text.charAt(i + 1) == '"';
                i += isDoubled ? 1 : 0;
                isQuoted = sign != '"' || isDoubled;
                if (isQuoted) {
                    entry.append(sign);
                }
            } else if (sign == ',') {
                String plain = wasQuoted ? entry.toString() : entry.toString().strip();
                if (wasQuoted || !plain.isEmpty()) {
                    entries.add(plain);
                }
                entry.setLength(0);
                wasQuoted = false;
            } else if (sign == '"' && entry.toString().isBlank()) {
                entry.setLength(0);
                isQuoted = true;
                wasQuoted = true;
            } else if (!wasQuoted) {
                entry.append(sign);
            }
        }
        return entries;
    }
}
