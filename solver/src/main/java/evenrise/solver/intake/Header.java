package evenrise.solver.intake;

import evenrise.model.intake.Columns;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * Which column of a sheet means what.
 *
 * @param row of the headers, as the sheet counts
 * @param units that stand in headers, lower case, by meaning
 */
record Header(int row, Map<Meaning, Integer> columns, Map<Meaning, String> units, List<Notice> guesses) {
    /** Titles and addresses may stand above the headers. */
    private static final int LOOK_AT_ROWS = 40;

    /** A name, and something that tells the current, make a list. */
    private static final int FEWEST = 2;

    /** Empty where no row looks like headers. */
    static Optional<Header> of(Sheet sheet, Columns mapped, OptionalInt row) {
        Optional<Header> best = Optional.empty();
        for (Sheet.Row each : sheet.rows().stream().limit(LOOK_AT_ROWS).toList()) {
            if (row.isPresent() && each.number() != row.getAsInt()) {
                continue;
            }
            Header candidate = read(sheet, each, mapped);
            boolean isEnough = candidate.columns.size() >= FEWEST && candidate.columns.containsKey(Meaning.NAME);
            if (isEnough
                    && best.map(found -> found.columns.size() < candidate.columns.size())
                            .orElse(true)) {
                best = Optional.of(candidate);
            }
        }
        return best;
    }

    private static Header read(Sheet sheet, Sheet.Row row, Columns mapped) {
        Map<Meaning, Integer> columns = new EnumMap<>(Meaning.class);
        Map<Meaning, String> units = new EnumMap<>(Meaning.class);
        List<Notice> guesses = new ArrayList<>();
        for (Meaning meaning : Meaning.values()) {
            int found = column(row, meaning, mapped, columns);
            if (found >= 0) {
                String header = row.cell(found).text();
                columns.put(meaning, found);
                unit(header, meaning).ifPresent(unit -> units.put(meaning, unit));
                if (meaning.mapped(mapped).isEmpty()) {
                    guesses.add(Notice.guess(
                            sheet,
                            row.number(),
                            "column " + Sheet.letters(found) + " '" + header + "' is read as "
                                    + meaning.name().toLowerCase(Locale.ROOT).replace('_', ' ')
                                    + Optional.ofNullable(units.get(meaning))
                                            .map(unit -> " in " + unit)
                                            .orElse("")));
                }
            }
        }
        return new Header(row.number(), columns, units, guesses);
    }

    private static int column(Sheet.Row row, Meaning meaning, Columns mapped, Map<Meaning, Integer> taken) {
        Optional<String> wanted = meaning.mapped(mapped);
        int best = -1;
        int bestMatch = 0;
        for (int i = 0; i < row.cells().size(); i++) {
            String header = row.cell(i).text();
            if (taken.containsValue(i)) {
                continue;
            }
            int match = wanted.map(name -> name.strip().equalsIgnoreCase(header) ? 3 : 0)
                    .orElseGet(() -> meaning.match(header));
            if (match > bestMatch) {
                best = i;
                bestMatch = match;
            }
        }
        return best;
    }

    /** The unit in brackets, or that the header itself is. */
    private static Optional<String> unit(String header, Meaning meaning) {
        java.util.regex.Matcher brackets = java.util.regex.Pattern.compile("[(\\[]\\s*([\\p{L}%]+)\\s*[)\\]]")
                .matcher(header);
        if (brackets.find()) {
            return Optional.of(brackets.group(1).toLowerCase(Locale.ROOT));
        }
        String plain = Meaning.plain(header);
        return meaning.isAmount() && plain.matches("k?w|k?va|m?a|k?v") ? Optional.of(plain) : Optional.empty();
    }
}
