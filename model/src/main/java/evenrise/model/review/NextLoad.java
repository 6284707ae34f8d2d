package evenrise.model.review;

import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.SlotLayout;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Where one more load could go, and how much it may draw there: free slots whose phases have room under every limit on the
 * way that is stated, which are the ratings of panel and supply, the feeder's device and cable, and, for one pole at power
 * factor 1 without harmonics, the neutrals of all three at their worst use. Inrush is not asked: a switched load needs an
 * output and a time, which a new plan gives it.
 */
public final class NextLoad {
    /**
     * A place for one more load.
     *
     * @param amps most that it may draw on each line, rms
     * @param limit what allows no more
     * @param countsFeeder whether the panel's feeder has a cable that could be judged, and was
     * @param takesSwitched whether a switched breaker may sit there
     */
    public record Place(
            String panel,
            List<Integer> slots,
            List<Phase> phases,
            double amps,
            String limit,
            boolean countsFeeder,
            boolean takesSwitched) {
        public Place {
            slots = List.copyOf(slots);
            phases = List.copyOf(phases);
        }
    }

    private final Layout layout;

    private NextLoad(Layout layout) {
        this.layout = layout;
    }

    /** Every place for a breaker of so many poles with any room at all, most room first, then in the panels' order. */
    public static List<Place> places(Layout layout, int poles) {
        return new NextLoad(layout).all(poles);
    }

    private List<Place> all(int poles) {
        Room.All rooms = Room.all(layout);
        List<Place> places = new ArrayList<>();
        for (Panel panel : layout.project().panels()) {
            places.addAll(in(panel, poles, rooms));
        }
        places.sort(Comparator.comparingDouble(Place::amps).reversed());
        return places;
    }

    /** At the panel and at all that feeds it. */
    private Room.Limit left(Panel panel, List<Phase> phases, Room.All rooms) {
        List<Room.Limit> limits = new ArrayList<>();
        Room.Asked asked = Room.Asked.of(phases);
        for (Point at = layout.distribution().of(panel); ; ) {
            for (int carrying : layout.distribution().onward(at.index())) {
                limits.add(rooms.at().get(carrying).left(asked));
            }
            Point origin = layout.distribution().points().get(at.origin());
            if (origin.transformer().isEmpty()) {
                return Room.Limit.least(limits);
            }
            asked = asked.before(origin.transformer().get());
            if (rooms.before().containsKey(origin.index())) {
                limits.add(rooms.before().get(origin.index()).left(asked));
            }
            at = layout.distribution().points().get(origin.parent());
        }
    }

    private List<Place> in(Panel panel, int poles, Room.All rooms) {
        SlotLayout geometry = layout.index().slotsOf(panel);
        boolean countsFeeder =
                FeederCable.of(layout, layout.distribution().of(panel)).isPresent();
        Set<Integer> taken = new HashSet<>(panel.reservedSlots());
        layout.in(panel).forEach(each -> taken.addAll(each.slots()));
        List<Place> places = new ArrayList<>();
        for (int slot = 1; slot <= panel.slots(); slot++) {
            List<Integer> slots = geometry.span(slot, poles);
            List<Phase> phases = slots.stream().map(geometry::phase).toList();
            boolean isFree = !slots.isEmpty() && slots.stream().noneMatch(taken::contains);
            if (isFree && phases.stream().distinct().count() == poles) {
                Room.Limit left = left(panel, phases, rooms);
                if (left.amps() > 0) {
                    boolean takesSwitched = panel.switchedSlots()
                            .map(list -> list.containsAll(slots))
                            .orElse(true);
                    places.add(
                            new Place(panel.id(), slots, phases, left.amps(), left.of(), countsFeeder, takesSwitched));
                }
            }
        }
        return places;
    }
}
