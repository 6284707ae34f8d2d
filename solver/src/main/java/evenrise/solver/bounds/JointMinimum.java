package evenrise.solver.bounds;

import evenrise.model.project.Role;
import evenrise.model.rules.Tolerances;
import java.util.Comparator;
import java.util.PriorityQueue;
import java.util.function.BooleanSupplier;

/**
 * The least that peak and duration can cost together. All plans are split by when the first amplifier and the last load come
 * on; each part has a bound of its own, and the least of them bounds all plans. The part with the least is split, or looked
 * at more closely, as long as effort is left. A part whose peak is above the supply's inrush limit holds no plan.
 */
final class JointMinimum {
    private static final int FIRST_ROUNDS = 300;
    private static final int ROUNDS = 100;
    private static final int CLOSER_LOOKS = 3;

    private final BoundedProject subject;
    private final SpreadPeak spread;
    private final PackedPeak packed;
    private final BoardRoom room;
    private final double leastPeakAmps;
    private final double limitAmps;
    private final BooleanSupplier stop;
    private int effort;

    /** A part of the plans and what is known of it. */
    private static final class Part {
        final Box box;
        final Windows windows;
        double[] weights;
        double atLeast;
        double amps;
        int looks;

        Part(Box box, Windows windows, double[] weights, double atLeast) {
            this.box = box;
            this.windows = windows;
            this.weights = weights;
            this.atLeast = atLeast;
        }
    }

    /**
     * @param leastPeakAmps a bound on the peak of all plans
     * @param stop whether to leave it at what is proven so far
     */
    JointMinimum(BoundedProject subject, double leastPeakAmps, int effort, BooleanSupplier stop) {
        this.subject = subject;
        this.spread = new SpreadPeak(subject);
        this.packed = new PackedPeak(subject);
        this.room = new BoardRoom(subject);
        this.leastPeakAmps = leastPeakAmps;
        this.limitAmps =
                subject.project.supply().inrushLimitAmps().orElse(Double.POSITIVE_INFINITY) + 2 * Tolerances.AMPS;
        this.effort = effort;
        this.stop = stop;
    }

    /** Least of {@code ampsWeight}·peak + {@code secondsWeight}·duration; negative where no plan can keep the order. */
    double of(double ampsWeight, double secondsWeight) {
        int last = subject.grid.count() - 1;
        PriorityQueue<Part> parts = new PriorityQueue<>(Comparator.comparingDouble((Part part) -> part.atLeast)
                .thenComparingInt(part -> part.box.amplifierFrom())
                .thenComparingInt(part -> part.box.endFrom()));
        boolean isSplit = subject.has(Role.AMPLIFIER) && subject.loads.size() > 1;
        Box whole = new Box(0, isSplit ? last : 0, secondsWeight > 0 ? 0 : last, last);
        Part all = new Part(whole, null, new double[last + 1], 0);
        int left = effort;
        if (stop.getAsBoolean()) {
            return ampsWeight * leastPeakAmps;
        }
        add(parts, all, all.box, FIRST_ROUNDS, ampsWeight, secondsWeight);
        while (!parts.isEmpty()) {
            Part least = parts.peek();
            boolean splits = !least.box.isPoint();
            if (left-- <= 0 || stop.getAsBoolean() || !splits && least.looks >= CLOSER_LOOKS) {
                return least.atLeast;
            }
            parts.remove();
            if (splits) {
                for (Box half : least.box.halves()) {
                    add(parts, least, half, ROUNDS, ampsWeight, secondsWeight);
                }
            } else {
                least.looks++;
                look(least, 2 * ROUNDS << least.looks, ampsWeight, secondsWeight);
                addIfAllowed(parts, least);
            }
        }
        return -1;
    }

    private void add(
            PriorityQueue<Part> parts, Part whole, Box box, int rounds, double ampsWeight, double secondsWeight) {
        Windows windows = Windows.in(box, subject);
        if (box.amplifierFrom() <= box.endTo() && windows.possible && room.suffices(box)) {
            Part part = new Part(box, windows, whole.weights, whole.atLeast);
            look(part, rounds, ampsWeight, secondsWeight);
            addIfAllowed(parts, part);
        }
    }

    private void addIfAllowed(PriorityQueue<Part> parts, Part part) {
        if (part.amps <= limitAmps) {
            parts.add(part);
        }
    }

    private void look(Part part, int rounds, double ampsWeight, double secondsWeight) {
        boolean matters = ampsWeight > 0 || Double.isFinite(limitAmps);
        double amps = Math.max(leastPeakAmps, spread.amps(part.weights, part.windows));
        if (matters) {
            double[] weights =
                    spread.weights(part.box, part.windows, rounds, ampsWeight > 0 ? leastPeakAmps : limitAmps);
            double proven = spread.amps(weights, part.windows);
            if (proven > amps) {
                amps = proven;
                part.weights = weights;
            }
        }
        part.amps = matters ? packed.amps(amps, part.windows) : amps;
        double seconds = subject.grid.earliestSeconds(part.box.endFrom());
        part.atLeast = Math.max(part.atLeast, ampsWeight * part.amps + secondsWeight * seconds);
    }
}
