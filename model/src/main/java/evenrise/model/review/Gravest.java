package evenrise.model.review;

import java.util.Comparator;
import java.util.Iterator;
import java.util.List;
import java.util.PriorityQueue;
import java.util.Spliterator;
import java.util.Spliterators;
import java.util.function.ToDoubleFunction;
import java.util.stream.Stream;
import java.util.stream.StreamSupport;

/** Dips of some steps by a figure, the greatest first, reading only those that may be next. */
final class Gravest implements Iterator<Dip> {
    /** A step that was read or one whose figure is at most the key. */
    private record Entry(int place, DipStep step, Dip dip, double key) {
        boolean isRead() {
            return dip != null;
        }
    }

    private final DipReading reading;
    private final ToDoubleFunction<Dip> figure;
    private final PriorityQueue<Entry> entries = new PriorityQueue<>(Comparator.comparingDouble(Entry::key)
            .reversed()
            .thenComparing(Entry::isRead)
            .thenComparingInt(Entry::place));

    private Gravest(
            List<DipStep> steps, DipReading reading, ToDoubleFunction<DipStep> most, ToDoubleFunction<Dip> figure) {
        this.reading = reading;
        this.figure = figure;
        for (int i = 0; i < steps.size(); i++) {
            entries.add(new Entry(i, steps.get(i), null, most.applyAsDouble(steps.get(i))));
        }
    }

    /** @param most more than the figure may be; quick */
    static Stream<Dip> of(
            List<DipStep> steps, DipReading reading, ToDoubleFunction<DipStep> most, ToDoubleFunction<Dip> figure) {
        return StreamSupport.stream(
                Spliterators.spliteratorUnknownSize(
                        new Gravest(steps, reading, most, figure), Spliterator.ORDERED | Spliterator.NONNULL),
                false);
    }

    @Override
    public boolean hasNext() {
        return !entries.isEmpty();
    }

    @Override
    public Dip next() {
        while (!entries.element().isRead()) {
            Entry next = entries.remove();
            Dip dip = reading.of(next.step());
            entries.add(new Entry(next.place(), next.step(), dip, figure.applyAsDouble(dip)));
        }
        return entries.remove().dip();
    }
}
