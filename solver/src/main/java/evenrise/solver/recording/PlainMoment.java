package evenrise.solver.recording;

import java.time.DateTimeException;
import java.time.LocalDate;

/** Dates and times as in {@code 2026-03-14 09:30:00.25}, read without texts, since a long table has many of them. */
final class PlainMoment {
    private static final int DATE = 10;
    private static final int TIME = 19;
    private static final int MOST_DECIMALS = 9;

    private long lastDate = -1;
    private double lastSeconds;

    /** Seconds since 1970; not a number where it is written in another way, or is no date and time. */
    double seconds(byte[] cell, int length, boolean isCommaDecimal) {
        boolean isOne = length >= TIME
                && length <= TIME + 1 + MOST_DECIMALS
                && cell[4] == '-'
                && cell[7] == '-'
                && (cell[DATE] == 'T' || cell[DATE] == ' ')
                && cell[13] == ':'
                && cell[16] == ':';
        if (!isOne) {
            return Double.NaN;
        }
        int year = number(cell, 0, 4);
        int month = number(cell, 5, 7);
        int day = number(cell, 8, DATE);
        int hours = number(cell, 11, 13);
        int minutes = number(cell, 14, 16);
        int whole = number(cell, 17, TIME);
        boolean isTime = Math.min(Math.min(Math.min(year, month), Math.min(day, hours)), Math.min(minutes, whole)) >= 0
                && hours < 24
                && minutes < 60
                && whole < 60;
        if (!isTime) {
            return Double.NaN;
        }
        return date(year, month, day) + 3600 * hours + 60 * minutes + whole + decimals(cell, length, isCommaDecimal);
    }

    private double date(int year, int month, int day) {
        long date = 10_000L * year + 100 * month + day;
        if (date != lastDate) {
            try {
                lastSeconds = 86_400.0 * LocalDate.of(year, month, day).toEpochDay();
            } catch (DateTimeException e) {
                lastSeconds = Double.NaN;
            }
            lastDate = date;
        }
        return lastSeconds;
    }

    private static double decimals(byte[] cell, int length, boolean isCommaDecimal) {
        if (length == TIME) {
            return 0;
        }
        boolean isMark = cell[TIME] == '.' || isCommaDecimal && cell[TIME] == ',';
        int digits = number(cell, TIME + 1, length);
        return isMark && digits >= 0 ? digits / Math.pow(10, length - TIME - 1) : Double.NaN;
    }

    /** Of digits alone; less than nothing where it is something else. */
    private static int number(byte[] cell, int from, int to) {
        int number = from == to ? -1 : 0;
        for (int i = from; i < to && number >= 0; i++) {
            number = cell[i] >= '0' && cell[i] <= '9' ? 10 * number + cell[i] - '0' : -1;
        }
        return number;
    }
}
