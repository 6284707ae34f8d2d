package evenrise.model.observation;

import evenrise.model.observation.ObservedStart.Finding;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;

/** Loads that came on at each other's time: one fault, where each of them alone would look like one of its own. */
final class Swaps {
    /** Three standard deviations, squared. */
    private static final double UNLIKE = 9;

    private final MatchedStarts reading;
    private final Likeness likeness;
    private final boolean[] isUnknown;

    /**
     * Two expected starts, with what stands at their times.
     *
     * @param gain by how much everything is likelier so
     */
    private record Swap(int one, int other, int atOne, int atOther, double gain) {}

    Swaps(MatchedStarts reading) {
        this.reading = reading;
        this.likeness = reading.sight().likeness();
        this.isUnknown = new boolean[reading.recorded().size()];
        reading.match().unknown().forEach(each -> isUnknown[each] = true);
    }

    /** @param starts what was found of each, which is changed */
    void name(List<ObservedStart> starts) {
        List<Swap> swaps = new ArrayList<>();
        for (int i = 0; i < starts.size(); i++) {
            for (int j = i + 1; j < starts.size(); j++) {
                if (isUnlike(i) && isUnlike(j) && (reading.isOdd(i) || reading.isOdd(j))) {
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

    /** Whether nothing stands for it, or what is not quite as planned. */
    private boolean isUnlike(int start) {
        return reading.isOdd(start) || reading.match().pair(start).cost() > UNLIKE;
    }

    /** Of two for which nothing else stands than what is at their times, be it each other's or unknown. */
    private Optional<Swap> swap(int one, int other) {
        OptionalInt atOne = at(one, one, other);
        OptionalInt atOther = at(other, one, other);
        if (atOne.isEmpty() || atOther.isEmpty() || atOne.getAsInt() == atOther.getAsInt()) {
            return Optional.empty();
        }
        int first = atOne.getAsInt();
        int second = atOther.getAsInt();
        List<ExpectedStart> exchanged = reading.sight()
                .exchanged(
                        reading.layout(),
                        reading.expected().get(one),
                        reading.expected().get(other));
        double swapped = Likeness.OTHER_TIME
                + cost(exchanged.get(0), second)
                + cost(exchanged.get(1), first)
                + Likeness.MISSING * released(List.of(one, other), List.of(first, second));
        return Optional.of(new Swap(one, other, first, second, costNow(one, other, first, second) - swapped));
    }

    private double cost(ExpectedStart expected, int recorded) {
        return likeness.inPlaceCost(expected, reading.recorded().get(recorded), reading.planSeconds(recorded));
    }

    /** Of the two, with what is at their times and what else stands for them. */
    private double costNow(int one, int other, int first, int second) {
        Set<Integer> open = new HashSet<>(List.of(first, second));
        double cost = 0;
        for (int each : new int[] {one, other}) {
            OptionalInt standing = reading.match().recordedOf(each);
            cost += standing.isPresent() ? reading.match().pair(each).cost() : Likeness.MISSING;
            standing.ifPresent(open::remove);
        }
        return cost + open.size() * Likeness.MISSING;
    }

    /** How many recorded starts stand for one of the two now, and for nothing then. */
    private long released(List<Integer> starts, List<Integer> then) {
        return starts.stream()
                .flatMap(each -> reading.match().recordedOf(each).stream().boxed())
                .filter(each -> !then.contains(each))
                .count();
    }

    /** What stands at the time of an expected start, if that is one of these, or nothing else's. */
    private OptionalInt at(int start, int one, int other) {
        int nearest = -1;
        for (int j = 0; j < reading.recorded().size(); j++) {
            boolean isFree = isUnknown[j] || isOf(one, j) || isOf(other, j);
            if (isFree
                    && late(start, j) < Likeness.OTHER_TIME
                    && (nearest < 0 || late(start, j) < late(start, nearest))) {
                nearest = j;
            }
        }
        return nearest < 0 ? OptionalInt.empty() : OptionalInt.of(nearest);
    }

    private boolean isOf(int start, int recorded) {
        OptionalInt standing = reading.match().recordedOf(start);
        return standing.isPresent() && standing.getAsInt() == recorded;
    }

    private double late(int start, int recorded) {
        double late =
                (reading.planSeconds(recorded) - reading.expected().get(start).seconds())
                        / reading.sight().sigmaSeconds();
        return late * late;
    }

    private ObservedStart found(int start, int partner, int recorded, double gain) {
        double confidence = Sureness.of(gain);
        return new ObservedStart(
                reading.expected().get(start),
                confidence < Observer.SURE ? Finding.CANNOT_TELL : Finding.SWAPPED,
                Finding.SWAPPED,
                Optional.of(reading.recorded().get(recorded)),
                OptionalDouble.of(reading.planSeconds(recorded)),
                confidence,
                Optional.of(reading.expected().get(partner)));
    }
}
