package evenrise.model.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LineCurrents;
import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.source.Drawn;
import evenrise.model.electrical.source.Inrush;
import evenrise.model.electrical.source.Instant;
import evenrise.model.electrical.source.InstantByLoad;
import evenrise.model.electrical.source.Plant;
import evenrise.model.electrical.source.Terminals;
import evenrise.model.nodal.WiredTree;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.LongStream;
import org.assertj.core.data.Offset;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Dips and swells from sums that are kept and from the part of a tree that inrush flows through, beside the same load by load
 * with the whole tree solved. A few trees as a rule; {@code -Devenrise.plants=300} for many.
 */
class DipsByLoadTest {
    private static final int PLANTS = Integer.getInteger("evenrise.plants", 12);
    private static final Offset<Double> EQUAL = within(1e-9);

    static LongStream seeds() {
        return LongStream.range(0, PLANTS);
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void areEqualAndWithinTheirLimits(long seed) {
        Layout layout = WiredTree.of(seed, Practice.NEC);
        Random random = new Random(seed);
        Plant plant = Feeders.behindSources(layout);
        Map<String, LineCurrents> steady = new LinkedHashMap<>();
        layout.project()
                .panels()
                .forEach(panel -> steady.put(
                        panel.id(),
                        new LineCurrents(layout.distribution().of(panel).system())));
        List<Drawn> known = new ArrayList<>();
        List<Inrush> inrushes = new ArrayList<>();
        double times = 1 + 10 * random.nextDouble();
        for (Placement each :
                layout.placements().stream().filter(Placement::fits).toList()) {
            String panel = each.assignment().panel();
            double lag = Lag.of(each.load()).radians();
            if (random.nextBoolean()) {
                steady.get(panel).add(each.phases(), each.load().runningAmps(), Lag.of(each.load()));
                known.add(new Drawn(panel, each.phases(), each.load().runningAmps()));
            } else {
                Drawn drawn =
                        new Drawn(panel, each.phases(), times * each.load().runningAmps());
                inrushes.add(new Inrush(drawn, lag, random.nextInt(3)));
            }
        }
        Map<String, LineValues> amps = new LinkedHashMap<>();
        steady.forEach((panel, lines) -> amps.put(panel, lines.lines()));
        List<Terminals> terminals = Terminals.all(PhaseSystem.THREE_PHASE);

        Instant ours = new Instant(plant, terminals, amps, known, inrushes);
        Instant quick = new Instant(plant, terminals, amps, known, inrushes);
        InstantByLoad byLoad = new InstantByLoad(plant, terminals, amps, known, inrushes);
        List<Inrush> left = inrushes.stream()
                .map(each -> new Inrush(
                        new Drawn(
                                each.drawn().panel(),
                                each.drawn().phases(),
                                each.drawn().amps() / 2),
                        each.lagRadians(),
                        each.kind()))
                .toList();
        Instant later = quick.later(left);
        InstantByLoad laterByLoad = new InstantByLoad(plant, terminals, amps, known, left);

        for (Point point : layout.distribution().points()) {
            for (Terminals at : Terminals.all(point.system())) {
                String id = point.id();
                assertThat(ours.steadyPercent(id, at)).isCloseTo(byLoad.steadyPercent(id, at), EQUAL);
                assertThat(ours.statedPercent(id, at)).isCloseTo(byLoad.statedPercent(id, at), EQUAL);
                Instant.Span phasors =
                        new Instant.Span(ours.leastPercentByPhasors(id, at), ours.greatestPercentByPhasors(id, at));
                Instant.Span bound =
                        new Instant.Span(ours.leastPercentByBound(id, at), ours.greatestPercentByBound(id, at));
                same(phasors, byLoad.phasors(id, at));
                same(bound, byLoad.bound(id, at));
                isWithin(phasors, quick.limitsByPhasors(id, at));
                isWithin(bound, quick.limitsByBound(id, at));
                tellsSides(quick, id, at, phasors, bound);
                tellsSides(later, id, at, laterByLoad.phasors(id, at), laterByLoad.bound(id, at));
            }
        }
    }

    private static void same(Instant.Span ours, Instant.Span byLoad) {
        assertThat(ours.leastPercent()).isCloseTo(byLoad.leastPercent(), EQUAL);
        assertThat(ours.greatestPercent()).isCloseTo(byLoad.greatestPercent(), EQUAL);
    }

    private static void isWithin(Instant.Span span, Instant.Limits limits) {
        assertThat(span.leastPercent()).isGreaterThanOrEqualTo(limits.most().leastPercent() - 1e-9);
        assertThat(span.greatestPercent()).isLessThanOrEqualTo(limits.most().greatestPercent() + 1e-9);
    }

    /** On which side of a level a voltage is, told before the voltage is. */
    private static void tellsSides(Instant quick, String id, Terminals at, Instant.Span phasors, Instant.Span bound) {
        for (double away : new double[] {-5, -0.01, 0.01, 5}) {
            assertThat(quick.isBelowByPhasors(id, at, phasors.leastPercent() + away))
                    .isEqualTo(away > 0);
            assertThat(quick.isAboveByPhasors(id, at, phasors.greatestPercent() + away))
                    .isEqualTo(away < 0);
            assertThat(quick.isBelowByBound(id, at, bound.leastPercent() + away))
                    .isEqualTo(away > 0);
            assertThat(quick.isAboveByBound(id, at, bound.greatestPercent() + away))
                    .isEqualTo(away < 0);
        }
    }
}
