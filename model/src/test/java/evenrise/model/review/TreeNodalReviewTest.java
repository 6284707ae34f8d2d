package evenrise.model.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.electrical.Lag;
import evenrise.model.electrical.LineCurrents;
import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.source.Drawn;
import evenrise.model.electrical.source.FaultCurrent;
import evenrise.model.electrical.source.Inrush;
import evenrise.model.electrical.source.Instant;
import evenrise.model.electrical.source.Plant;
import evenrise.model.electrical.source.Terminals;
import evenrise.model.nodal.Drawing;
import evenrise.model.nodal.NodalTree;
import evenrise.model.nodal.WiredTree;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Random;
import java.util.stream.LongStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * Drops, dips and faults through nodes, nested transformers of every connection and sources beside the supply, beside an
 * independent solution of the same circuits, conductor by conductor and winding by winding. A few trees as a rule;
 * {@code -Devenrise.plants=300} for many.
 */
class TreeNodalReviewTest {
    private static final int PLANTS = Integer.getInteger("evenrise.plants", 40);

    /** How far a leg of split-phase may be from a third of what is between the legs. */
    private static final double LEG = 1.13;

    static LongStream seeds() {
        return LongStream.range(0, PLANTS);
    }

    private static List<Placement> fitting(Layout layout) {
        return layout.placements().stream().filter(Placement::fits).toList();
    }

    private static Drawing running(Placement each) {
        return new Drawing(each.load().runningAmps(), Lag.of(each.load()).radians(), false);
    }

    private static Drawing inUse(Placement each) {
        return new Drawing(
                Math.max(each.load().runningAmps(), each.load().idleAmps()),
                Lag.of(each.load()).radians(),
                false);
    }

    private static double percent(NodalTree nodal, String id, Terminals at) {
        Phasors nominal = new Phasors(nodal, id);
        return 100 * nodal.volts(id, at.from(), at.to()).length() / nominal.of(at);
    }

    private record Phasors(NodalTree nodal, String id) {
        double of(Terminals at) {
            return at.to()
                    .map(to -> nodal.nominal(id, at.from()).minus(nodal.nominal(id, to)))
                    .orElse(nodal.nominal(id, at.from()))
                    .length();
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void dropsAtEveryPointAreTheCircuits(long seed) {
        Layout layout = WiredTree.of(seed, Practice.NEC);
        for (boolean hasSources : new boolean[] {false, true}) {
            NodalTree nodal = NodalTree.of(layout, hasSources);
            fitting(layout).forEach(each -> nodal.draw(each, running(each)));
            nodal.solve();

            FullUseVoltages ours =
                    new FullUseVoltages(layout, hasSources ? Feeders.behindSources(layout) : Feeders.stiff(layout));

            for (Point point : layout.distribution().points()) {
                for (Terminals at : Terminals.all(point.system())) {
                    assertThat(100 - ours.lowPercent(point.id(), at))
                            .describedAs(point.id() + " " + at.text())
                            .isCloseTo(percent(nodal, point.id(), at), within(1e-3));
                }
            }
        }
    }

    /** NEC practice: conductors at 20 °C and a tenth off the impedance for the greatest; a tenth more and 0.95 for the least. */
    @ParameterizedTest
    @MethodSource("seeds")
    void faultsAreTheCircuits(long seed) {
        Layout layout = WiredTree.of(seed, Practice.NEC);
        FaultLevels levels = FaultLevels.of(layout.project()).orElseThrow();
        for (Point point : layout.distribution().points()) {
            boolean isExact = isExact(layout, point);
            double toNeutral = toNeutral(NodalTree.ofFaults(layout, 20, 0.9), point);
            double most = point.system() == PhaseSystem.SINGLE_PHASE
                    ? toNeutral
                    : Math.max(toNeutral, lines(NodalTree.ofFaults(layout, 20, 0.9), point));
            double least =
                    FaultCurrent.LEAST_VOLTAGE_FACTOR * toNeutral(NodalTree.ofFaults(layout, Double.NaN, 1.1), point);

            assertThat(levels.greatestToNeutral(point) / toNeutral).isBetween(0.999, isExact ? 1.001 : LEG);
            assertThat(levels.greatest(point) / most).isBetween(0.999, isExact ? 1.001 : LEG);
            assertThat(levels.leastToNeutral(point).orElse(least) / least).isBetween(isExact ? 0.999 : 1 / LEG, 1.001);
        }
    }

    private static boolean isExact(Layout layout, Point point) {
        for (Point at = point; ; at = layout.distribution().points().get(at.parent())) {
            if (at.system() == PhaseSystem.SPLIT_PHASE) {
                return false;
            }
            if (at.parent() < 0) {
                return true;
            }
        }
    }

    private static double toNeutral(NodalTree nodal, Point point) {
        int fault = nodal.fault(point.id(), Phase.A, Optional.empty());
        return nodal.solve().amps(fault);
    }

    private static double lines(NodalTree nodal, Point point) {
        int fault = point.system() == PhaseSystem.SPLIT_PHASE
                ? nodal.fault(point.id(), Phase.A, Optional.of(Phase.B))
                : nodal.faultOfAll(point.id());
        return nodal.solve().amps(fault);
    }

    /** Every other load closes with twelve times its running current, each at an angle of its own. */
    @ParameterizedTest
    @MethodSource("seeds")
    void dipsAreTheCircuitsAndNeverBeyondTheBound(long seed) {
        Layout layout = WiredTree.of(seed, Practice.NEC);
        Random random = new Random(seed);
        Plant plant = Feeders.behindSources(layout);
        Map<String, LineCurrents> steady = new LinkedHashMap<>();
        layout.project()
                .panels()
                .forEach(panel -> steady.put(
                        panel.id(),
                        new LineCurrents(layout.distribution().of(panel).system())));
        NodalTree nodal = NodalTree.of(layout, true);
        List<Drawn> known = new ArrayList<>();
        List<Inrush> inrushes = new ArrayList<>();
        for (Placement each : fitting(layout)) {
            String panel = each.assignment().panel();
            if (random.nextBoolean()) {
                steady.get(panel).add(each.phases(), each.load().runningAmps(), Lag.of(each.load()));
                known.add(new Drawn(panel, each.phases(), each.load().runningAmps()));
                nodal.draw(each, running(each));
            } else {
                double lag = Math.PI / 2 * random.nextDouble();
                double amps = 12 * each.load().runningAmps();
                inrushes.add(new Inrush(new Drawn(panel, each.phases(), amps), lag, each.id()));
                nodal.draw(each, Drawing.impedance(amps, lag));
            }
        }
        nodal.solve();
        Map<String, LineValues> amps = new LinkedHashMap<>();
        steady.forEach((panel, lines) -> amps.put(panel, lines.lines()));
        List<Terminals> terminals = Terminals.all(PhaseSystem.THREE_PHASE);

        Instant ours = new Instant(plant, terminals, amps, known, inrushes);

        for (Point point : layout.distribution().points()) {
            for (Terminals at : Terminals.all(point.system())) {
                double least = plant.carrying(point.id()).stream()
                        .mapToDouble(id -> percent(nodal, id, at))
                        .min()
                        .orElseThrow();
                assertThat(ours.statedPercent(point.id(), at)).isCloseTo(least, within(1e-3));
                Instant.Span bound = new Instant.Span(
                        ours.leastPercentByBound(point.id(), at), ours.greatestPercentByBound(point.id(), at));
                assertThat(percent(nodal, point.id(), at))
                        .describedAs(point.id() + " " + at.text())
                        .isBetween(bound.leastPercent() - 1e-3, bound.greatestPercent() + 1e-3);
                Instant.Span most = ours.limitsByBound(point.id(), at).most();
                assertThat(bound.leastPercent()).isGreaterThanOrEqualTo(most.leastPercent() - 1e-6);
                assertThat(bound.greatestPercent()).isLessThanOrEqualTo(most.greatestPercent() + 1e-6);
            }
        }
    }

    /** Every second load is a motor that starts while all else is in full use; seen from every point at its own voltage. */
    @ParameterizedTest
    @MethodSource("seeds")
    void dipsOfMotorsThatStartAreTheCircuits(long seed) {
        double powerFactor = 0.2 + 0.1 * (seed % 7);
        Layout layout = Motors.everySecond(WiredTree.of(seed, Practice.NEC), 12, powerFactor);
        MotorDips dips = new MotorDips(layout, Feeders.behindSources(layout), Feeders.behindKnownSources(layout));
        for (Placement motor : fitting(layout)) {
            if (MotorStarting.lockedRotorAmps(layout, motor).isPresent()) {
                NodalTree before = NodalTree.of(layout, true);
                NodalTree nodal = NodalTree.of(layout, true);
                fitting(layout).stream().filter(each -> each != motor).forEach(each -> {
                    before.draw(each, inUse(each));
                    nodal.draw(each, inUse(each));
                });
                nodal.draw(motor, Drawing.impedance(12 * motor.load().runningAmps(), Math.acos(powerFactor)));
                before.solve();
                nodal.solve();

                MotorDips.Start start = dips.of(motor);

                for (Point point : layout.distribution().points()) {
                    double most = 0;
                    for (Terminals at : Terminals.all(point.system())) {
                        double left = percent(nodal, point.id(), at);
                        most = Math.max(most, percent(before, point.id(), at) - left);
                        assertThat(start.remaining().get(0).get(point.id()).get(at))
                                .describedAs(motor.id() + " at " + point.id() + " " + at.text())
                                .isCloseTo(left, within(1e-3));
                    }
                    assertThat(start.mostPercent(point.id())).isCloseTo(most, within(2e-3));
                }
            }
        }
    }
}
