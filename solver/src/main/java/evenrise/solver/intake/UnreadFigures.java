package evenrise.solver.intake;

import evenrise.solver.table.Amount;
import evenrise.solver.table.HeaderWords;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;

/** A column that is not read, though it may hold what counts: figures, or voltages. */
final class UnreadFigures {
    /** What electrical plans have no use for. */
    private static final Pattern OTHER = Pattern.compile(
            "(.*\\b)?(hz|frequency|frequenz|frequence|weight|gewicht|poids|peso|kg|lbs?|price|cost|preis|prix|precio|btu.*|heat|height|width"
                    + "|depth|hohe|breite|tiefe|ru|rack units?|mca|length|pos|position|no|nr|line|item no|row|#|date|year|serial.*)");

    private UnreadFigures() {}

    /** What to ask about it; empty where it holds nothing of the kind. */
    static Optional<String> question(String header, List<String> values) {
        List<String> filled = values.stream().filter(value -> !value.isBlank()).toList();
        long figures = filled.stream()
                .filter(value -> Amount.of(Figure.of(value).text()).isPresent()
                        || !FigureInWords.volts(value).isEmpty()
                        || FigureInWords.draw(value).isPresent())
                .count();
        boolean isOther = OTHER.matcher(HeaderWords.plain(header)).matches();
        return filled.isEmpty() || isOther || 2 * figures < filled.size()
                ? Optional.empty()
                : Optional.of(
                        "holds figures and is not read. Does it say how many there are, what they draw, or at which"
                                + " voltage? Then name it in a mapping (--write-mapping, --map).");
    }
}
