package evenrise.model.observation;

import evenrise.model.observation.Likeness.Explanation;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.OptionalInt;

/** Recorded starts matched to what a layout lets come on, by a clock. */
record MatchedStarts(
        Sight sight,
        Layout layout,
        List<ExpectedStart> expected,
        List<RecordedStart> recorded,
        Clock clock,
        StartMatch match) {
    private static final int ROUNDS = 3;

    /** With the clock that most pairs agree on. */
    static MatchedStarts of(Sight sight, Layout layout, List<RecordedStart> recorded) {
        List<ExpectedStart> expected = sight.expected(layout);
        Clock clock =
                Clock.ofMostPairs(expected, recorded, MatchedStarts::weight, Math.max(0.1, 4 * sight.sigmaSeconds()));
        MatchedStarts reading = matched(sight, layout, expected, recorded, clock);
        for (int round = 1; round < ROUNDS; round++) {
            reading = matched(sight, layout, expected, recorded, reading.clockSetAgain());
        }
        return reading;
    }

    private static MatchedStarts matched(
            Sight sight, Layout layout, List<ExpectedStart> expected, List<RecordedStart> recorded, Clock clock) {
        double[] planSeconds = recorded.stream()
                .mapToDouble(each -> clock.plan(each.seconds()))
                .toArray();
        return new MatchedStarts(
                sight,
                layout,
                expected,
                recorded,
                clock,
                new StartMatch(expected, recorded, planSeconds, sight.likeness()));
    }

    /** Of similar size on the same phases, fully; of another size, less. */
    private static double weight(ExpectedStart expected, RecordedStart recorded) {
        double like = 0;
        double size = 0;
        for (Map.Entry<Phase, RecordedStart.Change> each : recorded.steps().entrySet()) {
            double wanted = expected.readAmps(each.getKey());
            double found = each.getValue().amps();
            if (wanted > 0 && each.getValue().jumpAmps() > 0) {
                size += 0.2;
                like += found < 1.5 * wanted && found > wanted / 1.5 ? 1 : 0;
            }
        }
        return Math.max(like, size > 0 ? 0.2 : 0);
    }

    private Clock clockSetAgain() {
        List<double[]> pairs = new ArrayList<>();
        for (int i = 0; i < expected.size(); i++) {
            OptionalInt j = match.recordedOf(i);
            if (j.isPresent()) {
                Explanation why = match.pair(i).explanation();
                if (why == Explanation.AS_PLANNED || why == Explanation.OTHER_SIZE) {
                    pairs.add(new double[] {
                        expected.get(i).seconds(), recorded.get(j.getAsInt()).seconds()
                    });
                }
            }
        }
        return clock.setBy(
                pairs.stream().mapToDouble(each -> each[0]).toArray(),
                pairs.stream().mapToDouble(each -> each[1]).toArray());
    }

    /** The same recorded starts by the same clock, beside another layout. */
    MatchedStarts beside(Layout other) {
        return matched(sight, other, sight.expected(other), recorded, clock);
    }

    /** Other recorded starts by the same clock. */
    MatchedStarts with(List<RecordedStart> others) {
        return matched(sight, layout, expected, others, clock);
    }

    double planSeconds(int start) {
        return clock.plan(recorded.get(start).seconds());
    }

    /** Whether nothing that is as planned stands for an expected start. */
    boolean isOdd(int start) {
        return match.recordedOf(start).isEmpty() || match.pair(start).explanation() != Explanation.AS_PLANNED;
    }
}
