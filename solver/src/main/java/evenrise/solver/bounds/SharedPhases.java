package evenrise.solver.bounds;

import evenrise.model.electrical.InrushEnvelope;
import evenrise.model.project.Load;
import evenrise.model.project.Role;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Who shares a phase with whom. Loads of a role are put on phases one after another, by falling excess: each finds the
 * bases of those before it on its phases, and those of earlier roles, and a phase must bear that with its excess. A peak is
 * refuted if that cannot be done at all. Earlier roles may be cut in pieces. Sums of bases are counted in units, rounded to
 * the nearest; what a phase may have been given too much by that is taken off, at most what all rounding up has given.
 */
final class SharedPhases {
    /** Units in a peak, which are bits in a row of {@link PhaseSums}: so many for each load, within bounds. */
    private static final int UNITS_A_LOAD = 20;

    private static final int FEWEST_UNITS = 1000;
    private static final int MOST_UNITS = 2500;

    /** The unit is chosen among so many, up to so much larger, for the least rounding up. */
    private static final int TRIED_UNITS = 400;

    private static final double LARGEST_UNIT = 1.8;

    /** Loads of smaller excess are left out, which only lowers the bound. */
    private static final int MOST_LOADS = 150;

    private static final double CLOSE = 2e-4;
    private static final double FIRST_RISE = 0.001;
    private static final double MOST_RISE = 0.4;

    /** Far above what sums of doubles lose. */
    private static final double SLACK_AMPS = 1e-6;

    private final BoundedProject subject;

    SharedPhases(BoundedProject subject) {
        this.subject = subject;
    }

    /** The largest peak from {@code known} up that is refuted, or known itself. */
    double amps(double known) {
        double most = known;
        if (subject.phases < 2 || known <= 0) {
            return most;
        }
        List<Piece> earlier = new ArrayList<>();
        for (Load load : subject.project.loads()) {
            if (!load.switched()) {
                earlier.add(new Piece(load.poles(), InrushEnvelope.of(load, 0).baseAmps(), 0));
            }
        }
        if (!subject.tellsRolesApart()) {
            return new Ladder(subject.phases, earlier, falling(subject.loads), most).amps();
        }
        for (Role role : Role.values()) {
            List<Piece> loads = falling(
                    subject.loads.stream().filter(load -> load.role() == role).toList());
            most = new Ladder(subject.phases, earlier, loads, most).amps();
            earlier.addAll(loads);
        }
        return most;
    }

    private static List<Piece> falling(List<SwitchedLoad> loads) {
        return loads.stream()
                .map(load -> new Piece(load.poles(), load.baseAmps(), load.excessAmps()))
                .sorted(Comparator.comparingDouble(Piece::excessAmps).reversed())
                .toList();
    }

    /** What the argument sees of a load. */
    private record Piece(int poles, double baseAmps, double excessAmps) {}

    /** The loads of one role, or of all. */
    private static final class Ladder {
        private final int phases;
        private final List<Piece> loads;
        private final double known;
        private final double earlierAmps;
        private final double onEveryPhaseAmps;
        private final double mostOnOnePhaseAmps;
        private final double unitAmps;
        private final double mostGivenAmps;

        Ladder(int phases, List<Piece> earlier, List<Piece> falling, double known) {
            this.phases = phases;
            this.loads = falling.subList(0, Math.min(MOST_LOADS, falling.size()));
            this.known = known;
            double sum = 0;
            double every = 0;
            double one = 0;
            for (Piece piece : earlier) {
                sum += piece.poles() * piece.baseAmps();
                one += piece.baseAmps();
                every += piece.poles() == phases ? piece.baseAmps() : 0;
            }
            this.earlierAmps = sum;
            this.onEveryPhaseAmps = every;
            this.mostOnOnePhaseAmps = one;
            this.unitAmps = unit();
            this.mostGivenAmps = loads.stream()
                    .mapToDouble(load -> roundedUp(load.baseAmps(), unitAmps))
                    .sum();
        }

        double amps() {
            double refuted = known;
            double open = known * (1 + MOST_RISE);
            for (double rise = FIRST_RISE; rise < MOST_RISE; rise *= 3) {
                double peak = known * (1 + rise);
                if (!isRefuted(peak)) {
                    open = peak;
                    break;
                }
                refuted = peak;
            }
            while (open - refuted > known * CLOSE) {
                double middle = (refuted + open) / 2;
                if (isRefuted(middle)) {
                    refuted = middle;
                } else {
                    open = middle;
                }
            }
            return refuted;
        }

        /** The unit by which least is rounded up. Time: units tried × loads. */
        private double unit() {
            double smallest = known / Math.min(MOST_UNITS, Math.max(FEWEST_UNITS, UNITS_A_LOAD * loads.size()));
            double least = Double.POSITIVE_INFINITY;
            double found = smallest;
            for (int i = 0; i < TRIED_UNITS; i++) {
                double unit = smallest * (1 + (LARGEST_UNIT - 1) * i / TRIED_UNITS);
                double up = 0;
                // Loads of great excess come first, and are counted in every sum after them.
                for (int k = 0; k < loads.size(); k++) {
                    up += (loads.size() - k) * roundedUp(loads.get(k).baseAmps(), unit);
                }
                if (up < least) {
                    least = up;
                    found = unit;
                }
            }
            return found;
        }

        private static double roundedUp(double amps, double unit) {
            return Math.max(0, Math.round(amps / unit) * unit - amps);
        }

        /** Time: loads × units². */
        private boolean isRefuted(double peakAmps) {
            int largest = (int) units(peakAmps + mostGivenAmps);
            // The parts of two phases are rounded down, so the last may have been given two units too many.
            PhaseSums sums = new PhaseSums(phases, largest, units(earlierAmps - 2 * SLACK_AMPS) - 2);
            long least = units(onEveryPhaseAmps - 2 * SLACK_AMPS);
            sums.begin(least, least - 3, units(Math.min(peakAmps, mostOnOnePhaseAmps)));
            double givenAmps = 0;
            for (int i = 0; i < loads.size(); i++) {
                Piece load = loads.get(i);
                givenAmps += roundedUp(load.baseAmps(), unitAmps);
                int units = (int) Math.round(load.baseAmps() / unitAmps);
                sums.place(load.poles(), units, units(peakAmps - load.excessAmps() + givenAmps), i == 0);
                if (sums.isNone()) {
                    return true;
                }
            }
            return false;
        }

        private long units(double amps) {
            return (long) Math.floor((amps + SLACK_AMPS) / unitAmps);
        }
    }
}
