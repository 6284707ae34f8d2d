package evenrise.model.review;

import evenrise.model.electrical.Lag;
import evenrise.model.electrical.NeutralCurrent;
import evenrise.model.electrical.PhaseCurrents;
import evenrise.model.electrical.Phasor;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.SlotLayout;
import evenrise.model.project.Supply;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;

/**
 * Where one more load could go, and how much it may draw there: free slots whose phases have room under the ratings of
 * panel and supply, and, for one pole at power factor 1 without harmonics, under their neutrals. Inrush is not asked: a
 * switched load needs an output and a time, which a new plan gives it.
 */
public final class NextLoad {
    /**
     * A place for one more load.
     *
     * @param amps most that it may draw on each line, rms
     * @param takesSwitched whether a switched breaker may sit there
     */
    public record Place(String panel, List<Integer> slots, List<Phase> phases, double amps, boolean takesSwitched) {
        public Place {
            slots = List.copyOf(slots);
            phases = List.copyOf(phases);
        }
    }

    private final Layout layout;
    private final PhaseSystem system;
    private final double fraction;

    private NextLoad(Layout layout) {
        this.layout = layout;
        this.system = layout.project().supply().system();
        this.fraction = layout.project().supply().continuousFraction();
    }

    /** Every place for a breaker of so many poles with any room at all, most room first, then in the panels' order. */
    public static List<Place> places(Layout layout, int poles) {
        return new NextLoad(layout).all(poles);
    }

    private List<Place> all(int poles) {
        Supply supply = layout.project().supply();
        Room above = new Room(
                layout.placements().stream().filter(Placement::fits).toList(),
                supply.ratedAmps(),
                supply.neutralFactor());
        List<Place> places = new ArrayList<>();
        for (Panel panel : layout.project().panels()) {
            Room here = new Room(layout.in(panel), panel.ratedAmps(), panel.neutralFactor());
            places.addAll(in(panel, poles, here, above));
        }
        places.sort(Comparator.comparingDouble(Place::amps).reversed());
        return places;
    }

    private List<Place> in(Panel panel, int poles, Room here, Room above) {
        SlotLayout geometry = layout.index().slotsOf(panel);
        Set<Integer> taken = new HashSet<>(panel.reservedSlots());
        layout.in(panel).forEach(each -> taken.addAll(each.slots()));
        List<Place> places = new ArrayList<>();
        for (int slot = 1; slot <= panel.slots(); slot++) {
            List<Integer> slots = geometry.span(slot, poles);
            List<Phase> phases = slots.stream().map(geometry::phase).toList();
            boolean isFree = !slots.isEmpty() && slots.stream().noneMatch(taken::contains);
            if (isFree && phases.stream().distinct().count() == poles) {
                double amps = Math.min(here.amps(phases), above.amps(phases));
                if (amps > 0) {
                    boolean takesSwitched = panel.switchedSlots()
                            .map(list -> list.containsAll(slots))
                            .orElse(true);
                    places.add(new Place(panel.id(), slots, phases, amps, takesSwitched));
                }
            }
        }
        return places;
    }

    /** What the loads of one node leave free. */
    private final class Room {
        private final PhaseCurrents lines = new PhaseCurrents(system);
        private final double lineLimitAmps;
        private final double neutralLimitAmps;
        private Phasor returned = Phasor.ZERO;
        private double thirdAmps;

        Room(List<Placement> fed, double ratedAmps, double neutralFactor) {
            this.lineLimitAmps = fraction * ratedAmps;
            this.neutralLimitAmps = ratedAmps * neutralFactor;
            for (Placement each : fed) {
                Load load = each.load();
                lines.add(each.phases(), load.runningAmps());
                if (load.poles() == 1) {
                    NeutralCurrent.Share share = NeutralCurrent.share(
                            system, each.phases().get(0), load.runningAmps(), Lag.of(load), load.harmonicRatio());
                    returned = returned.plus(new Phasor(share.realAmps(), share.imaginaryAmps()));
                    thirdAmps += share.thirdAmps();
                }
            }
        }

        double amps(List<Phase> phases) {
            double byLines = phases.stream()
                    .mapToDouble(phase -> lineLimitAmps - lines.amps(phase))
                    .min()
                    .orElse(0);
            return phases.size() > 1 ? byLines : Math.min(byLines, byNeutral(phases.get(0)));
        }

        /** The greater x with |N + x·u|² + T² = L², u being the phase's direction, N and T what returns already. */
        private double byNeutral(Phase phase) {
            NeutralCurrent.Share unit = NeutralCurrent.share(system, phase, 1, Lag.NONE, 0);
            double along = returned.real() * unit.realAmps() + returned.imaginary() * unit.imaginaryAmps();
            double beyond =
                    returned.length() * returned.length() + thirdAmps * thirdAmps - neutralLimitAmps * neutralLimitAmps;
            double square = along * along - beyond;
            return beyond > 0 || square < 0 ? 0 : Math.sqrt(square) - along;
        }
    }
}
