package evenrise.solver.document;

import evenrise.model.plan.Assignment;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Where loads are, in words, and in the order in which somebody walks along the panels. */
final class Places {
    /** Stands for the time of what no board switches. */
    static final String ALWAYS_ON = "always on";

    private Places() {}

    /** By panel, in the project's order, then by slot. */
    static List<Placement> inOrder(Layout layout) {
        Map<String, Integer> panels = new LinkedHashMap<>();
        layout.project().panels().forEach(panel -> panels.put(panel.id(), panels.size()));
        return layout.placements().stream()
                .sorted(Comparator.comparingInt((Placement each) ->
                                panels.getOrDefault(each.assignment().panel(), panels.size()))
                        .thenComparingInt(each -> each.assignment().slot()))
                .toList();
    }

    /** All slots of its breaker: {@code 7, 9, 11}, which no spreadsheet takes for a date. */
    static String slots(Placement each) {
        return each.slots().isEmpty()
                ? String.valueOf(each.assignment().slot())
                : each.slots().stream().map(String::valueOf).collect(Collectors.joining(", "));
    }

    static String phases(Placement each) {
        return each.phases().stream().map(Phase::name).collect(Collectors.joining());
    }

    static String board(Placement each) {
        return each.board().map(board -> board.id()).orElse("");
    }

    /** A number, or an empty text for what has no output. */
    static Object output(Placement each) {
        return each.isSequenced() ? (Object) each.assignment().output().getAsInt() : "";
    }

    /** A number of seconds, or the words for what no board switches. */
    static Object on(Placement each) {
        return each.isSequenced() ? (Object) each.onSeconds().getAsDouble() : ALWAYS_ON;
    }

    /** Seconds from the command to switch off; an empty text for what no board switches. */
    static Object off(Layout layout, Placement each) {
        return each.isSequenced()
                ? (Object) layout.times().offSeconds(each.onSeconds().getAsDouble())
                : "";
    }

    /** Panel, slot and lead of an assignment, as a sentence has them. */
    static String words(Assignment it) {
        String lead = it.board().isPresent() && it.output().isPresent()
                ? ", board " + it.board().get() + " output " + it.output().getAsInt()
                : "";
        return "panel " + it.panel() + " slot " + it.slot() + lead;
    }
}
