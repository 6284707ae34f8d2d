package evenrise.solver.rework;

import evenrise.model.plan.BoardSetting;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * One row of a panel schedule, as it is written.
 *
 * @param place of the row, for messages
 * @param slots one or several
 * @param breaker its rating, maybe with its poles or its curve
 * @param control board and output in one cell, or empty
 */
record BuiltScheduleRow(
        String place,
        String panel,
        String slots,
        String load,
        String breaker,
        String polesSaid,
        String control,
        String startDelay,
        String step) {
    private static final Pattern NOBODY =
            Pattern.compile("(?i)[-–—./]*|spare.*|blank.*|space.*|reserve.*|unused|free|empty|n/?a");
    private static final Pattern NUMBER = Pattern.compile("\\d{1,4}");
    private static final Pattern RATING = Pattern.compile("(?i)^(?:[BCDKZ]\\s?)?(\\d+(?:[.,]\\d+)?)\\s*A?\\b.*");
    private static final Pattern RATED_AFTER_POLES =
            Pattern.compile("(?i)^([1-3])\\s*(?:P\\b|poles?|x|×)\\s*[BCDKZ]?\\s?(\\d+(?:[.,]\\d+)?)\\s*A?.*");
    private static final Pattern POLES =
            Pattern.compile("(?i).*?(?:\\b([1-3])\\s*-?\\s*(?:P\\b|poles?)|/\\s*([1-3])\\s*P?$).*");
    private static final Pattern LEAD =
            Pattern.compile("(?i)^(.+?)\\s*(?:[/:.,]|\\boutput\\b|\\bout\\b)\\s*(\\d{1,3})$");

    /** No rating, slot or output is written in more; patterns are not tried on what is longer. */
    private static final int LONGEST = 100;

    BuiltScheduleRow {
        slots = cut(slots);
        breaker = cut(breaker);
        control = cut(control);
    }

    private static String cut(String text) {
        return text.substring(0, Math.min(text.length(), LONGEST));
    }

    /** Where a control lead is. */
    record Lead(String board, int output) {}

    /** Whether it feeds nobody: empty, or a word for that. */
    boolean isSpare() {
        return NOBODY.matcher(load).matches();
    }

    /** Its slots as numbers; none where a word is not one. */
    List<Integer> slotNumbers() {
        List<Integer> numbers = new ArrayList<>();
        Matcher each = NUMBER.matcher(slots.replaceAll("\\.0+$", ""));
        while (each.find()) {
            numbers.add(Integer.parseInt(each.group()));
        }
        return numbers;
    }

    OptionalDouble amps() {
        Matcher second = RATED_AFTER_POLES.matcher(breaker);
        Matcher first = RATING.matcher(breaker);
        String found = second.matches() ? second.group(2) : first.matches() ? first.group(1) : "";
        return found.isEmpty() ? OptionalDouble.empty() : OptionalDouble.of(number(found));
    }

    Optional<Double> breakerAmps() {
        return amps().isPresent() ? Optional.of(amps().getAsDouble()) : Optional.empty();
    }

    Optional<Integer> poles() {
        Matcher said = NUMBER.matcher(polesSaid);
        if (said.lookingAt()) {
            return Optional.of(Integer.parseInt(said.group())).filter(poles -> poles >= 1 && poles <= 3);
        }
        Matcher beside = POLES.matcher(breaker);
        return beside.matches()
                ? Optional.of(Integer.parseInt(beside.group(1) == null ? beside.group(2) : beside.group(1)))
                : Optional.empty();
    }

    boolean saysControl() {
        return !NOBODY.matcher(control).matches()
                && !control.toLowerCase(Locale.ROOT).matches("none|always on|unswitched");
    }

    Optional<Lead> lead() {
        Matcher lead = LEAD.matcher(control.replaceAll("\\.0+$", ""));
        return saysControl() && lead.matches()
                ? Optional.of(new Lead(lead.group(1).strip(), Integer.parseInt(lead.group(2))))
                : Optional.empty();
    }

    /** How its board is set; empty where the row does not say both times. */
    Optional<BoardSetting> setting() {
        boolean saysBoth = startDelay.matches("\\d+([.,]\\d+)?") && step.matches("\\d+([.,]\\d+)?");
        return saysBoth
                ? lead().map(lead -> new BoardSetting(lead.board(), number(startDelay), number(step)))
                : Optional.empty();
    }

    private static double number(String text) {
        return Double.parseDouble(text.replace(',', '.'));
    }
}
