package evenrise.model.observation;

import evenrise.model.observation.ObservedStart.Finding;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** Loads that came on at each other's time: one fault, where each of them alone would look like one of its own. */
final class Swaps {
    /** Three standard deviations, squared. */
    private static final double UNLIKE = 9;

    private final MatchedStarts reading;
    private final Likeness likeness;

    /**
     * Two expected starts, with what stands at their times.
     *
     * @param gain by how much everything is likelier so
     */
    private record Swap(int one, int other, int atOne, int atOther, double gain) {}

    Swaps(MatchedStarts reading) {
        this.reading = reading;
        this.likeness = reading.sight().likeness();
    }

    /** @param starts what was found of each, which is changed */
    void name(List<ObservedStart> starts) {
        List<Swap> swaps = new ArrayList<>();
        for (int i = 0; i < starts.size(); i++) {
            for (int j = i + 1; j < starts.size() && isUnlike(i); j++) {
                if (isUnlike(j) && (reading.isOdd(i) || reading.isOdd(j))) {
                    swap(i, j).filter(each -> each.gain() > 0).ifPresent(swaps::add);
                }
            }
        }
        swaps.sort(Comparator.comparingDouble(Swap::gain).reversed());
        boolean[] named = new boolean[starts.size()];
        for (Swap each : swaps) {
            if (!named[each.one()] && !named[each.other()]) {
                named[each.one()] = true;
                named[each.other()] = true;
                starts.set(each.one(), found(each.one(), each.other(), each.atOther(), each.gain()));
                starts.set(each.other(), found(each.other(), each.one(), each.atOne(), each.gain()));
            }
        }
    }

    /** Whether something stands for it that is not quite as planned. */
    private boolean isUnlike(int start) {
        return reading.match().recordedOf(start).isPresent()
                && (reading.isOdd(start) || reading.match().pair(start).cost() > UNLIKE);
    }

    private Optional<Swap> swap(int one, int other) {
        int first = reading.match().recordedOf(one).orElseThrow();
        int second = reading.match().recordedOf(other).orElseThrow();
        OptionalInt atOne = at(one, first, second);
        OptionalInt atOther = at(other, first, second);
        if (atOne.isEmpty() || atOther.isEmpty() || atOne.getAsInt() == atOther.getAsInt()) {
            return Optional.empty();
        }
        double now =
                reading.match().pair(one).cost() + reading.match().pair(other).cost();
        double swapped = Likeness.OTHER_TIME
                + cost(one, atOther.getAsInt())
                + cost(other, atOne.getAsInt())
                + late(one, atOne.getAsInt())
                + late(other, atOther.getAsInt());
        return Optional.of(new Swap(one, other, atOne.getAsInt(), atOther.getAsInt(), now - swapped));
    }

    /** Which of two stands at the time of an expected start. */
    private OptionalInt at(int start, int first, int second) {
        int nearer = late(start, first) <= late(start, second) ? first : second;
        return late(start, nearer) < Likeness.OTHER_TIME ? OptionalInt.of(nearer) : OptionalInt.empty();
    }

    private double late(int start, int recorded) {
        double late =
                (reading.planSeconds(recorded) - reading.expected().get(start).seconds())
                        / reading.sight().sigmaSeconds();
        return late * late;
    }

    private double cost(int start, int recorded) {
        return likeness.elsewhereCost(
                reading.expected().get(start), reading.recorded().get(recorded), Likeness.PLANNED);
    }

    private ObservedStart found(int start, int partner, int recorded, double gain) {
        double confidence = 1 / (1 + Math.exp(-gain / 2));
        return new ObservedStart(
                reading.expected().get(start),
                confidence < Observer.SURE ? Finding.CANNOT_TELL : Finding.SWAPPED,
                Optional.of(reading.recorded().get(recorded)),
                OptionalDouble.of(reading.planSeconds(recorded)),
                confidence,
                Optional.of(reading.expected().get(partner)));
    }
}
