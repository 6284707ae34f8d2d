package evenrise.solver.commissioning;

import evenrise.model.contract.Harmless;
import evenrise.solver.table.Amount;
import evenrise.solver.table.Cell;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** What people write into cells: amounts, days, pass or fail, right or wrong. What cannot be read becomes a problem. */
final class FilledCells {
    /** Day 0 of a workbook. */
    private static final LocalDate WORKBOOK_EPOCH = LocalDate.of(1899, 12, 30);

    /** Nothing is read on site before or after; a day outside is a slip, or a number that is none (common practice, no source). */
    private static final LocalDate EARLIEST = LocalDate.of(2000, 1, 1);

    private static final LocalDate LATEST = LocalDate.of(2099, 12, 31);

    private static final Pattern POINTED = Pattern.compile("(\\d{1,2})\\.\\s*(\\d{1,2})\\.\\s*(\\d{4})");
    private static final Pattern ISO = Pattern.compile("(\\d{4})-(\\d{1,2})-(\\d{1,2})");
    private static final Pattern SLASHED = Pattern.compile("(\\d{1,2})/(\\d{1,2})/(\\d{4})");
    private static final int MONTHS = 12;

    private static final Set<String> YES = Set.of(
            "pass",
            "passed",
            "p",
            "ok",
            "yes",
            "y",
            "right",
            "correct",
            "good",
            "true",
            "1",
            "✓",
            "cw",
            "abc",
            "clockwise",
            "l1l2l3",
            "l1 l2 l3",
            "a b c",
            "a-b-c",
            "l1-l2-l3");
    private static final Set<String> NO = Set.of(
            "fail",
            "failed",
            "f",
            "not ok",
            "nok",
            "no",
            "n",
            "wrong",
            "bad",
            "false",
            "0",
            "✗",
            "ccw",
            "acb",
            "anticlockwise",
            "counterclockwise",
            "reversed",
            "l1l3l2",
            "l1 l3 l2",
            "a c b",
            "a-c-b",
            "l1-l3-l2");

    private final List<String> problems;
    private final boolean isCommaDecimal;

    FilledCells(List<String> problems, boolean isCommaDecimal) {
        this.problems = problems;
        this.isCommaDecimal = isCommaDecimal;
    }

    /**
     * @param what for messages: "idle measured of load 'AMP-1'"
     * @param unit wanted, lower case
     * @param most greatest that can be
     */
    OptionalDouble amount(Cell cell, String at, String what, String unit, double most) {
        String word = cell.text().replaceFirst("^[>≥]\\s*", "");
        if (word.isEmpty() || word.matches("[-–—/]|n/?a")) {
            return OptionalDouble.empty();
        }
        // A lone comma before three digits is a decimal mark or parts thousands: the sheet may show which.
        boolean isTwofold = cell.kind() == Cell.Kind.TEXT
                && (isCommaDecimal
                        ? word.matches("[^,]*\\d\\.\\d{3}(\\D.*)?")
                        : word.matches("[^.]*\\d,\\d{3}(\\D.*)?"));
        Optional<Double> read = isTwofold
                ? Optional.empty()
                : Amount.of(word, isCommaDecimal || word.matches("[^.]*,\\d{1,2}(\\D.*)?"))
                        .flatMap(amount -> Amount.scale(amount.unit().isEmpty() ? unit : amount.unit(), unit)
                                .map(scale -> scale * amount.value()));
        if (read.isEmpty()) {
            problems.add(at + ": " + what + " is '" + Harmless.shown(cell.text()) + "', expected a number"
                    + (unit.isEmpty() ? "" : " of " + shown(unit))
                    + (isTwofold ? " that can be read in one way. Write it with a decimal point." : " such as 12.4."));
            return OptionalDouble.empty();
        }
        if (!(read.get() >= 0 && read.get() <= most)) {
            problems.add(at + ": " + what + " is " + Harmless.shown(cell.text()) + ", expected 0 to "
                    + (long) most + " " + shown(unit)
                    + (read.get() < 0
                            ? ". Maybe the clamp was the wrong way round."
                            : ". Maybe it is in another unit."));
            return OptionalDouble.empty();
        }
        return OptionalDouble.of(read.get());
    }

    private static String shown(String unit) {
        return switch (unit) {
            case "a" -> "A";
            case "v" -> "V";
            case "ma" -> "mA";
            case "mω" -> "MΩ";
            default -> unit;
        };
    }

    /** As ISO 8601 has it. */
    Optional<String> day(Cell cell, String at) {
        String word = cell.text();
        if (word.isEmpty()) {
            return Optional.empty();
        }
        boolean isCounted = cell.kind() == Cell.Kind.DATE || cell.kind() == Cell.Kind.NUMBER;
        Optional<LocalDate> day = isCounted ? counted(word) : written(word);
        if (day.filter(each -> !each.isBefore(EARLIEST) && !each.isAfter(LATEST))
                .isPresent()) {
            return day.map(LocalDate::toString);
        }
        problems.add(at + ": date '" + Harmless.shown(word) + "' "
                + (day.isEmpty()
                        ? "cannot be read, or in two ways."
                        : "is the day " + day.get() + ", expected " + EARLIEST + " to " + LATEST + ".")
                + " Write it as 2026-03-14.");
        return Optional.empty();
    }

    /** Workbooks count days, with the time of day behind the point. */
    private static Optional<LocalDate> counted(String word) {
        try {
            return Optional.of(WORKBOOK_EPOCH.plusDays((long) Math.floor(Double.parseDouble(word))));
        } catch (DateTimeException | NumberFormatException e) {
            return Optional.empty();
        }
    }

    private static Optional<LocalDate> written(String word) {
        try {
            Matcher iso = ISO.matcher(word);
            if (iso.lookingAt()) {
                return day(iso.group(1), iso.group(2), iso.group(3));
            }
            Matcher pointed = POINTED.matcher(word);
            if (pointed.matches()) {
                return day(pointed.group(3), pointed.group(2), pointed.group(1));
            }
            Matcher slashed = SLASHED.matcher(word);
            if (slashed.matches()) {
                boolean isDayFirst = Integer.parseInt(slashed.group(1)) > MONTHS;
                boolean isMonthFirst = Integer.parseInt(slashed.group(2)) > MONTHS;
                if (isDayFirst || isMonthFirst) {
                    return isDayFirst
                            ? day(slashed.group(3), slashed.group(2), slashed.group(1))
                            : day(slashed.group(3), slashed.group(1), slashed.group(2));
                }
            }
        } catch (DateTimeException | NumberFormatException e) {
            // No day has these figures.
        }
        return Optional.empty();
    }

    private static Optional<LocalDate> day(String year, String month, String day) {
        return Optional.of(LocalDate.of(Integer.parseInt(year), Integer.parseInt(month), Integer.parseInt(day)));
    }

    Optional<Boolean> yes(Cell cell, String at, String what) {
        String word = cell.text().toLowerCase(Locale.ROOT).strip();
        if (word.isEmpty()) {
            return Optional.empty();
        }
        if (YES.contains(word) || NO.contains(word)) {
            return Optional.of(YES.contains(word));
        }
        problems.add(at + ": " + what + " is '" + Harmless.shown(word)
                + "', expected pass or fail (of a rotation right or wrong).");
        return Optional.empty();
    }
}
