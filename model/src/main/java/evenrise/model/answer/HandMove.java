package evenrise.model.answer;

import evenrise.model.answer.PlanChange.Way;
import evenrise.model.contract.Phrase;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.LoadMove;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * One load taken by hand and put down elsewhere. Whoever has the place already gets the one that the load leaves. Rules are
 * not asked: a person may put a load where it breaks one, and is shown what.
 */
public final class HandMove {
    private final Layout layout;
    private final Load load;
    private final Optional<Placement> now;

    public HandMove(Layout layout, String load) {
        this.layout = layout;
        this.load = layout.index()
                .load(load)
                .orElseThrow(() -> refused("the project has no load " + Phrase.quoted(load) + "."));
        this.now = layout.placement(load);
    }

    /** Moves put down one after the other; the last plan has phases and times of every load. */
    public static Plan after(Layout layout, List<LoadMove> moves) {
        Layout now = layout;
        for (LoadMove move : moves) {
            now = Layout.of(now.index(), new HandMove(now, move.load()).to(move));
        }
        return now.plan();
    }

    /** Where a move says: a slot, an output, a time, or, where it says none of these, out of its panel. */
    public Plan to(LoadMove move) {
        if (move.panel().isPresent() && move.slot().isPresent()) {
            return toSlot(move.panel().get(), move.slot().getAsInt());
        }
        if (move.board().isPresent() && move.output().isPresent()) {
            return toOutput(move.board().get(), move.output().getAsInt());
        }
        return move.onSeconds().isPresent() ? toTime(move.onSeconds().getAsDouble()) : away();
    }

    /** Into a slot. A switched load that has no output yet takes the free one that breaks least, of equals the cheapest. */
    public Plan toSlot(String panelId, int slot) {
        Panel panel = layout.index()
                .panel(panelId)
                .orElseThrow(() -> refused("the project has no panel " + Phrase.quoted(panelId) + "."));
        List<Integer> span = layout.index().slotsOf(panel).span(slot, load.poles());
        if (span.isEmpty()) {
            throw refused("a breaker of " + Phrase.counted(load.poles(), "pole") + " does not fit at slot " + slot
                    + " of panel " + Phrase.quoted(panelId) + ".");
        }
        List<Placement> there = layout.in(panel).stream()
                .filter(each -> !each.id().equals(load.id()))
                .filter(each -> each.slots().stream().anyMatch(span::contains))
                .toList();
        if (now.isEmpty()) {
            refuseTaken(there, panelId, slot);
            return withAnOutput(placed(panelId, slot));
        }
        Seat seat = Seat.of(now.get().assignment());
        Seat next = new Seat(panelId, slot, seat.board(), seat.output(), seat.askedSeconds());
        if (there.isEmpty()) {
            return changed(Map.of(load.id(), next));
        }
        Placement other = there.get(0);
        if (there.size() > 1 || !other.slots().equals(span) || !now.get().fits()) {
            refuseTaken(there, panelId, slot);
        }
        Seat its = Seat.of(other.assignment());
        return changed(Map.of(
                load.id(),
                next,
                other.id(),
                new Seat(seat.panel(), seat.slot(), its.board(), its.output(), its.askedSeconds())));
    }

    /** Onto an output of a board. */
    public Plan toOutput(String boardId, int output) {
        Board board = layout.index()
                .board(boardId)
                .orElseThrow(() -> refused("the project has no board " + Phrase.quoted(boardId) + "."));
        int outputs = layout.index().typeOf(board).outputs();
        if (output < 1 || output > outputs) {
            throw refused("board " + Phrase.quoted(boardId) + " has outputs 1 to " + outputs + ".");
        }
        if (now.isEmpty()) {
            throw refused("load " + Phrase.quoted(load.id()) + " has no slot yet. Put it in a panel first.");
        }
        Seat seat = Seat.of(now.get().assignment());
        Seat next =
                new Seat(seat.panel(), seat.slot(), Optional.of(boardId), OptionalInt.of(output), seat.askedSeconds());
        Placement other = layout.outputs(boardId).get(output);
        if (other == null || other.id().equals(load.id())) {
            return changed(Map.of(load.id(), next));
        }
        if (seat.board().isEmpty()) {
            throw refused("output " + output + " of board " + Phrase.quoted(boardId) + " switches "
                    + Phrase.quoted(other.id()) + ", and there is none to give it in exchange.");
        }
        Seat its = Seat.of(other.assignment());
        return changed(Map.of(
                load.id(),
                next,
                other.id(),
                new Seat(its.panel(), its.slot(), seat.board(), seat.output(), seat.askedSeconds())));
    }

    /** To another time, where its output has one of its own. */
    public Plan toTime(double onSeconds) {
        Seat seat = Seat.of(now.orElseThrow(() ->
                        refused("load " + Phrase.quoted(load.id()) + " has no slot yet. Put it in a panel first."))
                .assignment());
        return changed(Map.of(
                load.id(),
                new Seat(seat.panel(), seat.slot(), seat.board(), seat.output(), OptionalDouble.of(onSeconds))));
    }

    /** Out of its panel, among those without a place. */
    public Plan away() {
        return timed(layout.plan()
                .withAssignments(layout.plan().assignments().stream()
                        .filter(each -> !each.load().equals(load.id()))
                        .toList()));
    }

    private Plan placed(String panel, int slot) {
        List<Assignment> assignments = new ArrayList<>(layout.plan().assignments());
        assignments.add(Assignment.builder()
                .load(load.id())
                .panel(panel)
                .slot(slot)
                .phases(List.of())
                .build());
        return timed(layout.plan().withAssignments(assignments));
    }

    private Plan withAnOutput(Plan placed) {
        if (!load.switched() || load.comesWith().isPresent()) {
            return placed;
        }
        Layout before = Layout.of(layout.index(), placed);
        record Tried(Plan plan, Verdict verdict) {}
        return layout.project().boards().stream()
                .flatMap(board -> firstFree(before, board))
                .map(seat -> new HandMove(before, load.id()).changed(Map.of(load.id(), seat)))
                .map(plan -> new Tried(plan, Referee.judge(Layout.of(layout.index(), plan))))
                .min(Comparator.<Tried>comparingInt(
                                each -> each.verdict().violations().size())
                        .thenComparingDouble(each -> each.verdict().metrics().objective()))
                .map(Tried::plan)
                .orElse(placed);
    }

    private Stream<Seat> firstFree(Layout before, Board board) {
        Seat seat = Seat.of(before.placement(load.id()).orElseThrow().assignment());
        return board.reaches().contains(seat.panel())
                ? Stream.iterate(1, output -> output + 1)
                        .limit(before.index().typeOf(board).outputs())
                        .filter(output -> !before.outputs(board.id()).containsKey(output))
                        .limit(1)
                        .map(output -> new Seat(
                                seat.panel(),
                                seat.slot(),
                                Optional.of(board.id()),
                                OptionalInt.of(output),
                                OptionalDouble.empty()))
                : Stream.empty();
    }

    private Plan changed(Map<String, Seat> seats) {
        return timed(new PlanChange(Way.BOTH, seats, Optional.empty()).in(layout.plan()));
    }

    private Plan timed(Plan bare) {
        return PlanFinisher.timed(layout.index(), bare);
    }

    private void refuseTaken(List<Placement> there, String panel, int slot) {
        if (!there.isEmpty()) {
            Placement other = there.get(0);
            throw refused("slot " + slot + " of panel " + Phrase.quoted(panel) + " is taken by "
                    + Phrase.quoted(other.id()) + " of "
                    + Phrase.counted(other.load().poles(), "pole")
                    + ", which cannot change places with a load of "
                    + Phrase.counted(load.poles(), "pole") + (now.isEmpty() ? " that has none" : "")
                    + ". Lift it off first.");
        }
    }

    private static HandRefused refused(String why) {
        return new HandRefused(why);
    }
}
