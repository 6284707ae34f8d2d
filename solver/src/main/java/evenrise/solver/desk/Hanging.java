package evenrise.solver.desk;

import evenrise.model.answer.BrokenAnew;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.SlotLayout;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.solver.desk.DeskAnswers.PlaceView;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Supplier;

/**
 * A load in the hand: what each place would break or cost, judged by the referee on the very plan that putting it down there
 * makes. Free slots of a panel that differ in nothing but their number are judged once.
 */
final class Hanging {
    private static final int MOST_WORDS = 4;

    private record Kind(List<Phase> phases, boolean takesSwitched, boolean isReserved, int itself) {}

    private record Target(Optional<String> panel, List<Integer> slots, Optional<String> board, OptionalInt output) {}

    private final Layout layout;
    private final Verdict verdict;
    private final String load;
    private final HandMove hand;

    Hanging(Layout layout, Verdict verdict, String load) {
        this.layout = layout;
        this.verdict = verdict;
        this.load = load;
        this.hand = new HandMove(layout, load);
    }

    /** Every free slot of some panels, and every free output of the boards that reach one of them. */
    List<PlaceView> freePlaces(Set<String> panels) {
        List<Target> targets = new ArrayList<>();
        layout.project().panels().stream()
                .filter(panel -> panels.contains(panel.id()))
                .forEach(panel -> targets.addAll(freeSlots(panel)));
        if (layout.placement(load).isPresent()) {
            layout.project().boards().stream()
                    .filter(board -> board.reaches().stream().anyMatch(panels::contains))
                    .forEach(board -> targets.addAll(freeOutputs(board)));
        }
        return targets.parallelStream().map(this::judged).toList();
    }

    PlaceView slot(String panel, int slot) {
        return judged(new Target(Optional.of(panel), List.of(slot), Optional.empty(), OptionalInt.empty()));
    }

    PlaceView output(String board, int output) {
        return judged(new Target(Optional.empty(), List.of(), Optional.of(board), OptionalInt.of(output)));
    }

    private PlaceView judged(Target target) {
        Supplier<Plan> putDown = target.panel().isPresent()
                ? () -> hand.toSlot(target.panel().get(), target.slots().get(0))
                : () -> hand.toOutput(
                        target.board().orElseThrow(), target.output().getAsInt());
        Layout then = Layout.of(layout.index(), putDown.get());
        Verdict after = Referee.judge(then);
        BrokenAnew broken = BrokenAnew.of(verdict.violations(), after.violations());
        return new PlaceView(
                target.panel(),
                target.slots(),
                target.board(),
                target.output(),
                then.placement(load).orElseThrow().phases(),
                broken.added().size(),
                broken.gone(),
                broken.added().stream()
                        .map(BrokenRule::message)
                        .limit(MOST_WORDS)
                        .toList(),
                after.metrics().objective() - verdict.metrics().objective(),
                after.metrics().peakInrushAmps() - verdict.metrics().peakInrushAmps());
    }

    private List<Target> freeSlots(Panel panel) {
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
                .map(slots -> new Target(Optional.of(panel.id()), slots, Optional.empty(), OptionalInt.empty()))
                .toList();
    }

    private List<Target> freeOutputs(Board board) {
        List<Target> free = new ArrayList<>();
        for (int output = 1; output <= layout.index().typeOf(board).outputs(); output++) {
            if (!layout.outputs(board.id()).containsKey(output)) {
                free.add(new Target(Optional.empty(), List.of(), Optional.of(board.id()), OptionalInt.of(output)));
            }
        }
        return free;
    }
}
