package evenrise.model.check;

import evenrise.model.project.Board;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.SlotLayout;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/** What is fixed of a load's place exists, agrees with itself, and is not fixed for another load. */
final class FixedPlaces {
    private final ProjectParts parts;
    private final Consumer<Objection> found;
    private final Map<String, String> slotOwners = new HashMap<>();
    private final Map<String, String> outputOwners = new HashMap<>();

    private FixedPlaces(ProjectParts parts, Consumer<Objection> found) {
        this.parts = parts;
        this.found = found;
    }

    static void check(ProjectParts parts, Consumer<Objection> found) {
        FixedPlaces check = new FixedPlaces(parts, found);
        List<Load> loads = parts.project.loads();
        for (int i = 0; i < loads.size(); i++) {
            check.load(loads.get(i), "/loads/" + i + "/fixed");
        }
    }

    private void load(Load load, String at) {
        FixedPlace fixed = load.fixed();
        Panel panel = fixed.panel().map(parts.panels::get).orElse(null);
        Board board = fixed.board().map(parts.boards::get).orElse(null);
        if (panel != null
                && !load.panels().isEmpty()
                && !load.panels().contains(panel.id())
                && parts.knows("/panels")) {
            String cure = "Maybe add it to panels.";
            error(at + "/panel", Shown.quoted(panel.id()), "one of its panels: " + Shown.quoted(load.panels()), cure);
        }
        boolean reachKnown = board != null && parts.knows(parts.pointer(board) + "/reaches");
        if (panel != null && reachKnown && !board.reaches().contains(panel.id())) {
            String value = Shown.quoted(board.id()) + ", which does not reach panel " + Shown.quoted(panel.id());
            error(at + "/board", value, "a board that reaches the fixed panel", "Maybe add the panel to its reaches.");
        }
        if (fixed.slot().isPresent()) {
            slot(load, fixed.slot().getAsInt(), panel, at + "/slot");
        }
        if (fixed.output().isPresent() && load.switched()) {
            output(load, fixed.output().getAsInt(), board, at + "/output");
        }
    }

    private void slot(Load load, int slot, Panel fixedPanel, String at) {
        Panel only = fixedPanel == null && load.panels().size() == 1
                ? parts.panels.get(load.panels().get(0))
                : fixedPanel;
        List<Panel> possible = only != null
                ? List.of(only)
                : load.panels().isEmpty()
                        ? parts.project.panels()
                        : load.panels().stream()
                                .map(parts.panels::get)
                                .filter(java.util.Objects::nonNull)
                                .toList();
        if (load.fixed().panel().isPresent() && fixedPanel == null || !parts.knows("/panels")) {
            return;
        }
        int most = possible.stream().mapToInt(Panel::slots).max().orElse(Integer.MAX_VALUE);
        if (slot > most) {
            error(
                    at,
                    "" + slot,
                    "at most " + most + ", the slots of " + (only == null ? "its panels" : "the panel"),
                    "");
        } else if (only != null) {
            String owner = null;
            for (int taken : new SlotLayout(only, parts.project.supply().system()).span(slot, load.poles())) {
                String earlier = slotOwners.putIfAbsent(only.id() + "\0" + taken, load.id());
                owner = owner == null ? earlier : owner;
            }
            taken(at, "slot " + slot + " of panel " + Shown.quoted(only.id()), owner);
        }
    }

    private void output(Load load, int output, Board board, String at) {
        int most = board != null
                ? parts.outputs(board)
                : parts.project.boards().stream().mapToInt(parts::outputs).max().orElse(0);
        boolean known = parts.knows("/boards")
                && parts.knows("/board_types")
                && (board != null
                        ? parts.types.containsKey(board.type())
                        : load.fixed().board().isEmpty());
        if (known && output > most) {
            String whose = board != null ? "the board" : "the largest board";
            error(at, "" + output, "at most " + most + ", the outputs of " + whose, "");
        } else if (board != null) {
            String owner = outputOwners.putIfAbsent(board.id() + "\0" + output, load.id());
            taken(at, "output " + output + " of board " + Shown.quoted(board.id()), owner);
        }
    }

    private void taken(String at, String place, String owner) {
        Optional.ofNullable(owner)
                .ifPresent(id -> error(
                        at,
                        place + ", where load " + Shown.quoted(id) + " is fixed",
                        "a place of its own",
                        "Maybe free one."));
    }

    private void error(String pointer, String value, String expected, String cure) {
        found.accept(Objection.error(pointer, value, expected, cure));
    }
}
