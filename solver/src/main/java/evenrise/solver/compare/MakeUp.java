package evenrise.solver.compare;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * Which panels and boards a project is built of, beside those that stay.
 *
 * @param panels each kind as often as it is taken
 * @param boards alike
 * @param price of the whole project, of everything that has one
 */
public record MakeUp(List<PanelKind> panels, List<BoardKind> boards, double price) {
    public MakeUp {
        panels = List.copyOf(panels);
        boards = List.copyOf(boards);
    }

    /** Such as {@code 2 × p84, 1 × p24 at MDP-2}. */
    public String panelWords() {
        return words(panels, kind -> kind.type().id() + place(kind.point().name(), FeedPoint.SUPPLY));
    }

    /** Such as {@code 3 × b16 for hall}. */
    public String boardWords() {
        return words(
                boards,
                kind -> kind.type().id() + kind.system().map(it -> " for " + it).orElse(""));
    }

    /** What of it has no price, such as {@code 3 × work: board}; empty where all has one. */
    public String unpricedWords() {
        Map<String, Integer> counts = new TreeMap<>();
        panels.forEach(kind -> kind.lacks().forEach(each -> counts.merge(each, 1, Integer::sum)));
        boards.forEach(kind -> kind.lacks().forEach(each -> counts.merge(each, 1, Integer::sum)));
        return counts.entrySet().stream()
                .map(each -> each.getValue() + " × " + each.getKey())
                .collect(Collectors.joining(", "));
    }

    private static String place(String name, String usual) {
        return name.equals(usual) ? "" : " at " + name;
    }

    private static <K> String words(List<K> kinds, Function<K, String> name) {
        Map<String, Integer> counts = new LinkedHashMap<>();
        kinds.forEach(kind -> counts.merge(name.apply(kind), 1, Integer::sum));
        return counts.isEmpty()
                ? "none"
                : counts.entrySet().stream()
                        .map(each -> each.getValue() + " × " + each.getKey())
                        .collect(Collectors.joining(", "));
    }
}
