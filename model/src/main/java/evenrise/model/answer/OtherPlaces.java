package evenrise.model.answer;

import evenrise.model.answer.PlanChange.Way;
import evenrise.model.plan.BoardSetting;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.SlotLayout;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Stream;

/**
 * Every change of a plan that brings one load to another place: to a free slot, a free output or both, in exchange with
 * another load, by another setting of its board, or, where its output has a time of its own, at another of the times at
 * which something comes on. Free slots of a panel that differ in nothing but their number are one place.
 */
final class OtherPlaces {
    /** A change and in how many ways it can be made. */
    record Counted(PlanChange change, int alike) {}

    private record Kind(List<Phase> phases, boolean takesSwitched, int itself) {}

    private final Layout layout;
    private final Placement load;
    private final Seat seat;
    private final boolean slotsDiffer;

    OtherPlaces(Layout layout, Placement load) {
        this.layout = layout;
        this.load = load;
        this.seat = Seat.of(load.assignment());
        this.slotsDiffer = layout.project().loads().stream()
                        .anyMatch(each -> each.rack().isPresent())
                || layout.project().panels().stream()
                        .anyMatch(panel -> layout.project().spareIn(panel).isPresent());
    }

    /** @param everyExchange whether exchanges with loads of panels that its board does not reach are among them */
    List<Counted> all(boolean everyExchange) {
        List<Counted> all = new ArrayList<>();
        Map<Panel, Map<Kind, List<Integer>>> free = freeSlots();
        free.forEach((panel, kinds) -> kinds.values()
                .forEach(slots -> all.add(counted(Way.SLOT, seat.at(panel.id(), slots.get(0)), slots.size()))));
        if (load.board().isPresent()) {
            freeOutputs().forEach(lead -> all.add(counted(Way.OUTPUT, lead, 1)));
            free.forEach((panel, kinds) -> both(panel, kinds, all));
        }
        exchanges(everyExchange).forEach(change -> all.add(new Counted(change, 1)));
        load.board().ifPresent(board -> times(board).forEach(change -> all.add(new Counted(change, 1))));
        return all;
    }

    private Counted counted(Way way, Seat there, int alike) {
        return new Counted(PlanChange.of(way, Map.of(load.id(), there)), alike);
    }

    /** Where its breaker fits beside all others, by panel and by what tells the slots apart. */
    private Map<Panel, Map<Kind, List<Integer>>> freeSlots() {
        Map<Panel, Map<Kind, List<Integer>>> found = new LinkedHashMap<>();
        for (Panel panel : layout.project().panels()) {
            SlotLayout geometry = layout.index().slotsOf(panel);
            Set<Integer> taken = new HashSet<>(panel.reservedSlots());
            layout.in(panel).stream().filter(each -> each != load).forEach(each -> taken.addAll(each.slots()));
            Map<Kind, List<Integer>> kinds = new LinkedHashMap<>();
            for (int slot = 1; slot <= panel.slots(); slot++) {
                List<Integer> span = geometry.span(slot, load.load().poles());
                boolean isHere = panel.id().equals(seat.panel()) && slot == seat.slot() && load.fits();
                if (!span.isEmpty() && !isHere && span.stream().noneMatch(taken::contains)) {
                    List<Phase> phases = span.stream().map(geometry::phase).toList();
                    boolean takesSwitched = panel.switchedSlots()
                            .map(list -> list.containsAll(span))
                            .orElse(true);
                    kinds.computeIfAbsent(
                                    new Kind(phases, takesSwitched, slotsDiffer ? slot : 0), any -> new ArrayList<>())
                            .add(slot);
                }
            }
            found.put(panel, kinds);
        }
        return found;
    }

    /** Outputs that nobody has, of every board. */
    private List<Seat> freeOutputs() {
        List<Seat> free = new ArrayList<>();
        for (Board board : layout.project().boards()) {
            for (int output = 1; output <= layout.index().typeOf(board).outputs(); output++) {
                if (!layout.outputs(board.id()).containsKey(output)) {
                    free.add(seat.switchedBy(board.id(), output));
                }
            }
        }
        return free;
    }

    /** To a panel that its board does not reach, with an output of a board that does. */
    private void both(Panel panel, Map<Kind, List<Integer>> kinds, List<Counted> into) {
        if (load.board().orElseThrow().reaches().contains(panel.id())) {
            return;
        }
        for (Seat lead : freeOutputs()) {
            Board board = layout.index().board(lead.board().orElseThrow()).orElseThrow();
            if (board.reaches().contains(panel.id())) {
                kinds.values()
                        .forEach(slots -> into.add(counted(Way.BOTH, lead.at(panel.id(), slots.get(0)), slots.size())));
            }
        }
    }

    private List<PlanChange> exchanges(boolean every) {
        List<PlanChange> changes = new ArrayList<>();
        for (Placement other : layout.placements()) {
            boolean isNear = other.assignment().panel().equals(seat.panel())
                    || load.board().isPresent() && load.board().equals(other.board());
            if (other != load && (every || isNear)) {
                Seat its = Seat.of(other.assignment());
                boolean slotsFit = other.load().poles() == load.load().poles() && other.fits();
                boolean hasLead = load.board().isPresent() && other.board().isPresent();
                if (slotsFit) {
                    changes.add(exchange(
                            Way.SLOTS_EXCHANGED,
                            seat.at(its.panel(), its.slot()),
                            other.id(),
                            its.at(seat.panel(), seat.slot())));
                }
                if (hasLead) {
                    changes.add(
                            exchange(Way.OUTPUTS_EXCHANGED, seat.withLeadOf(its), other.id(), its.withLeadOf(seat)));
                }
                if (slotsFit && hasLead) {
                    changes.add(exchange(Way.PLACES_EXCHANGED, its, other.id(), seat));
                }
            }
        }
        return changes;
    }

    private PlanChange exchange(Way way, Seat there, String other, Seat here) {
        return PlanChange.of(way, Map.of(load.id(), there, other, here));
    }

    private Stream<PlanChange> times(Board board) {
        BoardType type = layout.index().typeOf(board);
        if (type.isTimedByOutput()) {
            double start = layout.times().beginSeconds(board.id());
            TreeSet<Double> offered = new TreeSet<>();
            Stream.concat(Stream.of(0.0), layout.placements().stream().flatMap(OtherPlaces::timesNear))
                    .forEach(seconds -> offered.add(
                            start + type.timesSeconds().orElseThrow().nearestSeconds(seconds - start)));
            return offered.stream()
                    .filter(seconds -> seconds != load.onSeconds().orElse(Double.NaN))
                    .map(seconds -> PlanChange.of(Way.TIME, Map.of(load.id(), seat.askedAt(seconds))));
        }
        BoardSetting now = layout.setting(board);
        return type.startDelaySeconds().stream()
                .flatMap(delay -> type.stepSeconds().stream().map(step -> new BoardSetting(board.id(), delay, step)))
                .filter(setting -> !setting.equals(now))
                .map(PlanChange::of);
    }

    /** When a load comes on, and when it has settled. */
    private static Stream<Double> timesNear(Placement placement) {
        return placement.onSeconds().stream()
                .boxed()
                .flatMap(on -> Stream.of(on, on + placement.load().settleSeconds()));
    }

    /** The load that gives up its place. */
    static Optional<String> exchangedWith(PlanChange change, String load) {
        return change.seats().keySet().stream().filter(id -> !id.equals(load)).findFirst();
    }
}
