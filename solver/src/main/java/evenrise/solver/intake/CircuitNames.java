package evenrise.solver.intake;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * The circuits that a cell names, such as {@code 12}, {@code LP1-7}, {@code 1,3} or {@code 1-6}.
 *
 * @param written as the list has it
 * @param all one name for each circuit or slot
 */
record CircuitNames(String written, List<String> all) {
    static final CircuitNames NONE = new CircuitNames("", List.of());

    private static final Pattern RUN = Pattern.compile("([0-9]{1,3})\\s*(?:-|–|to|bis|à)\\s*([0-9]{1,3})");
    private static final int MOST = 200;

    CircuitNames {
        all = List.copyOf(all);
    }

    static CircuitNames of(String written) {
        String text = CellReader.cut(written.strip());
        if (text.isEmpty()) {
            return NONE;
        }
        List<String> all = new ArrayList<>();
        for (String part : text.split("\\s*[,;+&]\\s*|(?<=[0-9])\\s*/\\s*(?=[0-9])")) {
            Matcher run = RUN.matcher(part);
            if (run.matches() && Integer.parseInt(run.group(1)) < Integer.parseInt(run.group(2))) {
                for (int i = Integer.parseInt(run.group(1));
                        i <= Integer.parseInt(run.group(2)) && all.size() < MOST;
                        i++) {
                    all.add(String.valueOf(i));
                }
            } else if (!part.isBlank()) {
                all.add(part.strip());
            }
        }
        return new CircuitNames(text, all);
    }

    /** For the notes of a load; empty where the list names none. */
    String noted() {
        return all.isEmpty() ? "" : "circuit " + written + " in the list";
    }

    /** How many of some equal pieces share one circuit at most. */
    int piecesOnEach(int pieces, int poles) {
        long circuits = ofPieces(pieces, poles).stream().distinct().count();
        return all.isEmpty() ? 1 : (int) ((pieces + circuits - 1) / circuits);
    }

    /**
     * The circuit of each of some equal pieces: one for each where the cell names as many as there are pieces, or as many
     * slots as they have poles together; else all are on one.
     */
    List<String> ofPieces(int pieces, int poles) {
        List<String> each = new ArrayList<>();
        boolean isOneEach = all.size() == pieces && !(poles > 1 && all.size() == poles);
        boolean isByPoles = poles > 1 && all.size() == pieces * poles;
        for (int i = 0; i < pieces; i++) {
            each.add(
                    isByPoles
                            ? String.join(", ", all.subList(i * poles, (i + 1) * poles))
                            : isOneEach ? all.get(i) : written);
        }
        return each;
    }
}
