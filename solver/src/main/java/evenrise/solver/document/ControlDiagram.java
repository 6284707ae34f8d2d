package evenrise.solver.document;

import evenrise.model.project.Board;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import evenrise.solver.report.BoardUse;
import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeMap;

/** Which command starts which boards, which board starts the next, and how many leads of each go to which panel. */
final class ControlDiagram {
    /** No id of a board ends in a blank. */
    private static final String COMMAND = "start signal ";

    private static final String NOTE =
            "A line leads from what starts a board to the board. Leads are counted by the panel"
                    + " that their breakers or contactors sit in; those that leave the board's own panel are named with it.";

    private final Layout layout;
    private final Project project;

    private ControlDiagram(Layout layout) {
        this.layout = layout;
        this.project = layout.project();
    }

    static Diagram of(Layout layout) {
        ControlDiagram of = new ControlDiagram(layout);
        Set<String> commands = new LinkedHashSet<>();
        List<Diagram.Block> boards = new ArrayList<>();
        for (BoardUse use : BoardUse.of(layout)) {
            Board board = layout.index().board(use.board()).orElseThrow();
            String starts = use.after().orElseGet(() -> of.command(board));
            if (use.after().isEmpty()) {
                commands.add(starts);
            }
            boards.add(of.block(use, starts));
        }
        List<Diagram.Block> blocks = new ArrayList<>();
        commands.forEach(id -> blocks.add(
                new Diagram.Block(id, Diagram.Kind.COMMAND, Optional.empty(), "", List.of(), List.of("switches on"))));
        blocks.addAll(boards);
        return new Diagram("control", "Control diagram", "control", NOTE, blocks);
    }

    private String command(Board board) {
        return board.system()
                .or(() -> layout.outputs(board.id()).values().stream()
                        .flatMap(each -> each.load().system().stream())
                        .findFirst())
                .filter(id -> project.systems().stream().map(SwitchedSystem::id).anyMatch(id::equals))
                .map(id -> COMMAND + "of " + id + " ")
                .orElse(COMMAND);
    }

    private Diagram.Block block(BoardUse use, String starts) {
        List<String> lines = new ArrayList<>();
        lines.add("type " + Plain.text(use.type(), 30));
        lines.add("in " + Plain.text(use.panel(), 40));
        if (use.outputsUsed() == 0) {
            lines.add("not in use");
        } else {
            lines.add(use.outputsUsed() + " of " + use.outputs() + " outputs");
            lines.add(
                    use.startDelaySeconds().isPresent()
                            ? "delay "
                                    + Unrounded.seconds(use.startDelaySeconds().getAsDouble()) + " s, step "
                                    + Unrounded.seconds(use.stepSeconds().orElse(0)) + " s"
                            : "each output its time");
            use.firstOnSeconds()
                    .ifPresent(first -> lines.add("on from " + Unrounded.seconds(first) + " to "
                            + Unrounded.seconds(use.lastOnSeconds().getAsDouble()) + " s"));
        }
        crossing(use)
                .forEach((panel, count) ->
                        lines.add(count + (count == 1 ? " lead" : " leads") + " to " + Plain.text(panel, 40)));
        return new Diagram.Block(use.board(), Diagram.Kind.BOARD, Optional.of(starts), "", List.of(), lines);
    }

    /** Leads that leave the board's panel, by the panel that they go to. */
    private Map<String, Integer> crossing(BoardUse use) {
        Map<String, Integer> leads = new TreeMap<>();
        for (Placement each : layout.outputs(use.board()).values()) {
            if (!each.assignment().panel().equals(use.panel())) {
                leads.merge(each.assignment().panel(), 1, Integer::sum);
            }
        }
        return leads;
    }
}
