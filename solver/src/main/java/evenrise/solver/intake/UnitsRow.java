package evenrise.solver.intake;

import evenrise.solver.table.HeaderWords;
import evenrise.solver.table.ReadTable;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/** Some lists have the units of their columns in a row of their own below the headers. */
final class UnitsRow {
    private static final Pattern UNIT = Pattern.compile(
            "[(\\[]?(k?w|k?va|m?a|k?v|watts?|amps?|volts?|hp|hz|pcs|ea|each|kg|lbs?|s|mm|-|cos ?φ|ph)[)\\]]?");

    private UnitsRow() {}

    /** The row below the headers where it holds nothing but units, of which one at least is that of a draw. */
    static Optional<ReadTable.Row> below(ReadTable sheet, ReadTable.Row header) {
        return sheet.rows().stream()
                .filter(row -> row.number() > header.number())
                .findFirst()
                .filter(UnitsRow::isUnits);
    }

    private static boolean isUnits(ReadTable.Row row) {
        List<String> texts = row.cells().stream()
                .map(cell -> HeaderWords.folded(cell.text()).strip())
                .filter(text -> !text.isEmpty())
                .toList();
        return texts.stream().allMatch(text -> UNIT.matcher(text).matches())
                && texts.stream()
                        .anyMatch(text -> new HeaderUnit(bare(text)).measured().isPresent());
    }

    /** Adds what it says of columns whose headers state no unit. */
    static void addTo(Map<Meaning, String> units, Map<Meaning, Integer> columns, ReadTable.Row row) {
        columns.forEach((meaning, column) -> {
            String unit = bare(HeaderWords.folded(row.cell(column).text()).strip());
            if (meaning.isAmount() && unit.matches("k?w|k?va|m?a|k?v|hp|s")) {
                units.putIfAbsent(meaning, unit);
            }
        });
    }

    private static String bare(String text) {
        return text.replaceAll("[()\\[\\]]", "");
    }
}
