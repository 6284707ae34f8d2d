package evenrise.solver.intake;

import evenrise.solver.table.Amount;
import evenrise.solver.table.HeaderWords;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Finds what a piece draws, and at which voltage, among other words: {@code 850W 208V}, {@code 180 W max / 60 W avg}. */
final class FigureInWords {
    private static final Pattern DRAW = Pattern.compile(
            "(?<![\\p{L}0-9.,])(?<![0-9]/)(?:([1-9][0-9]?)\\s*[x×*]\\s*)?([0-9]{1,3}(?:[ \u00a0][0-9]{3})+|[0-9][0-9.,]*|(?:[0-9]{1,3}[ -])?[1-9]/[2-8])"
                    + "\\s*(kw|kva|watts?|w|va|amps?|ampere|a|ma|hp)\\b(?:\\s*[x×*]\\s*([1-9][0-9]?)\\b)?");
    private static final Pattern VOLTS = Pattern.compile(
            "(?<![0-9.,])([0-9]{2,3}(?:\\s*[-–/y]+\\s*[0-9]{2,3})?)\\s*v(?:olts?)?\\s?(ac|dc)?(?![\\p{L}0-9])");
    private static final Pattern PHASES =
            Pattern.compile("(?<![0-9])([13])\\s*-?\\s*(?:ph(?:ases?)?\\b|~|ø)|\\b(three)[ -]?phase");
    private static final Pattern FRACTION = Pattern.compile("(?:([0-9]{1,3})[ -])?([1-9])/([2-8])");

    /** Current before apparent before active power: the first needs no power factor. */
    private static final List<String> KINDS =
            List.of("a", "amp", "amps", "ampere", "ma", "va", "kva", "w", "watt", "watts", "kw");

    /** Of each kind, the last one's that of shafts. */
    private static final List<String> UNITS = List.of("a", "va", "w", "hp");

    /** Longer texts are stories. */
    private static final int LONGEST = 160;

    private FigureInWords() {}

    /** Of several of the best kind the greatest, or their sum where the text adds them; empty where there is none. */
    static Optional<Figure> draw(String text) {
        if (text.length() > LONGEST) {
            return Optional.empty();
        }
        List<Part> parts = parts(HeaderWords.folded(text));
        int best = parts.stream().mapToInt(Part::kind).min().orElse(0);
        List<Part> of = parts.stream().filter(part -> part.kind() == best).toList();
        if (of.size() > 1 && text.contains("+")) {
            double sum = of.stream().mapToDouble(Part::value).sum();
            return Optional.of(new Figure(sum + " " + UNITS.get(best), 1, true));
        }
        return of.stream().max(Comparator.comparingDouble(Part::value)).map(Part::figure);
    }

    /** @param value in ampere, volt-amperes, watts or horsepower, all pieces of it together */
    private record Part(Figure figure, int kind, double value) {}

    private static List<Part> parts(String folded) {
        List<Part> parts = new ArrayList<>();
        for (Matcher matcher = DRAW.matcher(folded); matcher.find(); ) {
            int times = times(matcher.group(1)) * times(matcher.group(4));
            String figure = decimal(matcher.group(2)) + " " + matcher.group(3);
            double value =
                    times * Amount.of(figure).map(FigureInWords::inWholeUnits).orElse(0.0);
            if (value > 0) {
                parts.add(new Part(new Figure(figure, times, true), kind(matcher.group(3)), value));
            }
        }
        return parts;
    }

    private static int times(String group) {
        return group == null ? 1 : Integer.parseInt(group);
    }

    /** Voltage and phases, as a column of voltages has them; empty where none stand there. */
    static String volts(String text) {
        if (text.length() > LONGEST) {
            return "";
        }
        String folded = HeaderWords.folded(text);
        Matcher volts = VOLTS.matcher(folded);
        Matcher phases = PHASES.matcher(folded);
        String stated = volts.find() ? volts.group(1) + " V" + (volts.group(2) == null ? "" : volts.group(2)) : "";
        String count = !phases.find() ? "" : phases.group(1) == null ? "3" : phases.group(1);
        return count.isEmpty() ? stated : (stated + " " + count + "ph").strip();
    }

    /** {@code 1-1/2} as 1.5; other texts as they are. */
    static String decimal(String text) {
        Matcher fraction = FRACTION.matcher(text.strip());
        if (!fraction.matches()) {
            return text;
        }
        double whole = fraction.group(1) == null ? 0 : Double.parseDouble(fraction.group(1));
        return String.valueOf(whole + Double.parseDouble(fraction.group(2)) / Double.parseDouble(fraction.group(3)));
    }

    private static int kind(String unit) {
        int index = KINDS.indexOf(unit);
        return index < 0 ? 3 : index < 5 ? 0 : index < 7 ? 1 : 2;
    }

    private static double inWholeUnits(Amount amount) {
        return amount.value()
                * (amount.unit().startsWith("k") ? 1000 : amount.unit().equals("ma") ? 0.001 : 1);
    }
}
