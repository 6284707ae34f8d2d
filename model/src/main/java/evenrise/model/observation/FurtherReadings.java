package evenrise.model.observation;

import evenrise.model.observation.ObservedStart.Finding;
import evenrise.model.project.Phase;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What would tell what a recording leaves open, in the least number of readings: one more start recorded at some places at
 * once, each a set of clamps, and single loads that are switched by themselves or clamped on their own circuit.
 *
 * @param places with the loads that a recording there would tell
 * @param alone loads that no such place tells, or that are the only one that it would
 * @param atLeast no fewer readings do; as many as are given where that is proven
 */
public record FurtherReadings(List<Place> places, List<String> alone, int atLeast) {
    /** A motor runs up until its surge has halved so often (common practice, no source). */
    private static final double HALVES_OF_A_RUN_UP = 8;

    /**
     * One set of clamps.
     *
     * @param label as it is called
     * @param loads of those that are open, which it tells
     */
    public record Place(String label, List<String> loads) {
        public Place {
            loads = List.copyOf(loads);
        }
    }

    public FurtherReadings {
        places = List.copyOf(places);
        alone = List.copyOf(alone);
    }

    /** @param sigmaAmps noise of a sample, by phase, which a further recording is taken to have, too */
    static FurtherReadings of(Layout layout, Sight sight, Map<Phase, Double> sigmaAmps, List<ObservedStart> starts) {
        List<String> open = starts.stream()
                .filter(each -> each.finding() == Finding.CANNOT_TELL || each.finding() == Finding.TOO_SMALL)
                .flatMap(each -> each.expected().loads().stream())
                .toList();
        Map<String, Integer> index = new HashMap<>();
        open.forEach(each -> index.putIfAbsent(each, index.size()));
        Map<Distribution.Point, BitSet> told = new LinkedHashMap<>();
        for (Distribution.Point point : layout.distribution().points()) {
            if (point.index() != sight.point() && !index.isEmpty() && ExpectedStart.isDirect(layout, point.index())) {
                told.put(
                        point,
                        told(
                                ExpectedStart.of(layout, point.index(), sight.system(), 2 * sight.intervalSeconds()),
                                sight,
                                sigmaAmps,
                                index));
            }
        }
        // What a place tells of one load, switching that load tells without opening anything.
        told.values().removeIf(each -> each.cardinality() < 2);
        return least(index, told);
    }

    /** Alone by two samples, five standard deviations and more on each phase, while no motor runs up. */
    private static BitSet told(
            List<ExpectedStart> starts, Sight sight, Map<Phase, Double> sigmaAmps, Map<String, Integer> index) {
        BitSet told = new BitSet();
        for (ExpectedStart each : starts) {
            boolean isSeen = !each.isVague()
                    && index.containsKey(each.loads().get(0))
                    && sigmaAmps.entrySet().stream()
                            .allMatch(of -> each.amps(of.getKey()) == 0
                                    || each.amps(of.getKey()) >= Observer.DEVIATIONS * of.getValue())
                    && sigmaAmps.keySet().stream().anyMatch(phase -> each.amps(phase) > 0)
                    && starts.stream().noneMatch(other -> hides(other, each));
            if (isSeen) {
                told.set(index.get(each.loads().get(0)));
            }
        }
        return told;
    }

    private static boolean hides(ExpectedStart motor, ExpectedStart other) {
        double since = other.seconds() - motor.seconds();
        return motor.runsUp() && since > 0 && since < HALVES_OF_A_RUN_UP * motor.longestHalfSeconds();
    }

    private static FurtherReadings least(Map<String, Integer> index, Map<Distribution.Point, BitSet> told) {
        String[] loads = new String[index.size()];
        index.forEach((load, at) -> loads[at] = load);
        List<Distribution.Point> points = List.copyOf(told.keySet());
        List<BitSet> sets = new ArrayList<>(told.values());
        for (int i = 0; i < loads.length; i++) {
            BitSet alone = new BitSet();
            alone.set(i);
            sets.add(alone);
        }
        LeastCover.Cover cover = LeastCover.of(sets, loads.length, LeastCover.MOST_BRANCHES);
        List<Place> places = new ArrayList<>();
        List<String> alone = new ArrayList<>();
        for (int set : cover.sets()) {
            if (set < points.size()) {
                places.add(new Place(
                        points.get(set).label(),
                        sets.get(set).stream().mapToObj(i -> loads[i]).toList()));
            } else {
                alone.add(loads[set - points.size()]);
            }
        }
        return new FurtherReadings(places, alone, cover.atLeast());
    }

    /** How many readings. */
    public int count() {
        return places.size() + alone.size();
    }

    /** Whether no fewer do, of the kinds that are looked at. */
    public boolean isLeast() {
        return count() == atLeast;
    }
}
