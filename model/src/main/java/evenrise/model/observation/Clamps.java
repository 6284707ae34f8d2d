package evenrise.model.observation;

import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** Whether clamps stand on other phases than their channels say, or in another range. */
final class Clamps {
    private static final int FEWEST_FOR_A_SCALE = 5;
    private static final double MOST_OFF_SCALE = 1.25;

    /** Part of a current that a surge may leave, and the current still be known. */
    private static final double MOST_LEFT = 0.1;

    private Clamps() {}

    /** The order of channels by which everything fits best; the stated one unless another is much better. */
    static int[] order(Sight sight, Layout layout, List<RecordedStart> recorded) {
        List<int[]> orders = Likeness.orders();
        int[] best = orders.get(0);
        if (sight.phases().size() < Phase.values().length) {
            return best;
        }
        double least = MatchedStarts.of(sight, layout, recorded).match().cost() - Observer.WORTH_BLAMING;
        for (int[] order : orders.subList(1, orders.size())) {
            double cost = MatchedStarts.of(sight, layout, ordered(recorded, order))
                    .match()
                    .cost();
            if (cost < least) {
                least = cost;
                best = order;
            }
        }
        return best;
    }

    static List<RecordedStart> ordered(List<RecordedStart> recorded, int[] order) {
        return recorded.stream().map(each -> each.ordered(order)).toList();
    }

    /** The same as phase to channel, where they are not the same. */
    static Map<Phase, Phase> channels(int[] order) {
        Map<Phase, Phase> channels = new EnumMap<>(Phase.class);
        for (Phase phase : Phase.values()) {
            if (order[phase.ordinal()] != phase.ordinal()) {
                channels.put(phase, Phase.values()[order[phase.ordinal()]]);
            }
        }
        return channels;
    }

    /** Whether its surge is over by whatever form it decays, as far as a clamp's scale is concerned. */
    private static boolean isOver(ExpectedStart expected, Phase phase, RecordedStart.Change change) {
        double half = expected.longestHalfSeconds();
        return half == 0
                || expected.surgeAmps().getOrDefault(phase, 0.0) * AnyDecay.left(change.seenSeconds() / half)
                        <= MOST_LEFT * change.amps();
    }

    /** What the median start of a phase must be multiplied by to be what is expected, where that is far from 1. */
    static Map<Phase, Double> scales(MatchedStarts reading) {
        Map<Phase, List<Double>> ratios = new EnumMap<>(Phase.class);
        for (int i = 0; i < reading.expected().size(); i++) {
            OptionalInt j = reading.match().recordedOf(i);
            if (j.isPresent()) {
                RecordedStart recorded = reading.recorded().get(j.getAsInt());
                ExpectedStart expected = reading.expected().get(i);
                expected.readAmps().forEach((phase, amps) -> {
                    RecordedStart.Change change = recorded.on(phase);
                    if (amps > 0 && change.amps() > 0 && change.isSettled() && isOver(expected, phase, change)) {
                        ratios.computeIfAbsent(phase, any -> new ArrayList<>()).add(amps / change.amps());
                    }
                });
            }
        }
        Map<Phase, Double> scales = new EnumMap<>(Phase.class);
        ratios.forEach((phase, some) -> {
            double median = some.stream().sorted().toList().get(some.size() / 2);
            boolean isOff = median > MOST_OFF_SCALE || median < 1 / MOST_OFF_SCALE;
            if (some.size() >= FEWEST_FOR_A_SCALE && isOff) {
                scales.put(phase, median);
            }
        });
        return scales;
    }
}
