package evenrise.model.answer;

import evenrise.model.project.Board;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.SlotLayout;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Where a load could be put by hand without another giving way. */
public final class FreePlaces {
    private final Layout layout;
    private final String load;

    private record Kind(List<Phase> phases, boolean takesSwitched, boolean isReserved, int itself) {}

    public FreePlaces(Layout layout, String load) {
        this.layout = layout;
        this.load = load;
    }

    /** Every free slot of some panels, and every free output of the boards that reach one of them. */
    public List<FreePlace> in(Set<String> panels) {
        List<FreePlace> places = new ArrayList<>();
        layout.project().panels().stream()
                .filter(panel -> panels.contains(panel.id()))
                .forEach(panel -> places.addAll(slots(panel)));
        if (layout.placement(load).isPresent()) {
            layout.project().boards().stream()
                    .filter(board -> board.reaches().stream().anyMatch(panels::contains))
                    .forEach(board -> places.addAll(outputs(board)));
        }
        return places;
    }

    /** Every free slot of a panel. */
    public List<FreePlace> slotsOf(String panel) {
        return layout.index().panel(panel).map(this::slots).orElse(List.of());
    }

    /** Every free output of a board, where the load sits in a panel that it reaches. */
    public List<FreePlace> outputsOf(String board) {
        Optional<String> panel =
                layout.placement(load).map(each -> each.assignment().panel());
        return layout.index()
                .board(board)
                .filter(found -> panel.filter(found.reaches()::contains).isPresent())
                .map(this::outputs)
                .orElse(List.of());
    }

    private List<FreePlace> slots(Panel panel) {
        boolean slotsDiffer = layout.project().spareIn(panel).isPresent()
                || layout.project().loads().stream()
                        .anyMatch(each -> each.rack().isPresent());
        SlotLayout geometry = layout.index().slotsOf(panel);
        Set<Integer> taken = new HashSet<>();
        layout.in(panel).stream().filter(each -> !each.id().equals(load)).forEach(each -> taken.addAll(each.slots()));
        int poles = layout.index().load(load).orElseThrow().poles();
        Map<Kind, List<Integer>> kinds = new LinkedHashMap<>();
        for (int slot = 1; slot <= panel.slots(); slot++) {
            List<Integer> span = geometry.span(slot, poles);
            if (!span.isEmpty() && span.stream().noneMatch(taken::contains)) {
                Kind kind = new Kind(
                        span.stream().map(geometry::phase).toList(),
                        panel.switchedSlots()
                                .map(list -> list.containsAll(span))
                                .orElse(true),
                        span.stream().anyMatch(panel.reservedSlots()::contains),
                        slotsDiffer ? slot : 0);
                kinds.computeIfAbsent(kind, any -> new ArrayList<>()).add(slot);
            }
        }
        return kinds.values().stream()
                .map(slots -> FreePlace.slots(panel.id(), slots))
                .toList();
    }

    private List<FreePlace> outputs(Board board) {
        List<FreePlace> free = new ArrayList<>();
        for (int output = 1; output <= layout.index().typeOf(board).outputs(); output++) {
            if (!layout.outputs(board.id()).containsKey(output)) {
                free.add(FreePlace.output(board.id(), output));
            }
        }
        return free;
    }
}
