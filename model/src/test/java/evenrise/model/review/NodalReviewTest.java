package evenrise.model.review;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.electrical.LinePower;
import evenrise.model.electrical.Phasor;
import evenrise.model.electrical.breaker.TripEquivalent;
import evenrise.model.electrical.source.RadialPlant;
import evenrise.model.electrical.source.Terminals;
import evenrise.model.nodal.Drawing;
import evenrise.model.nodal.NodalPlant;
import evenrise.model.nodal.RandomPlant;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Phase;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Function;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/**
 * What the review says of drops, dips, swells and currents beside an independent nodal solution of the same plants. A few
 * plants as a rule; {@code -Devenrise.plants=1000} for many.
 */
@Tag("random")
class NodalReviewTest {
    private static final int PLANTS = Integer.getInteger("evenrise.plants", 40);

    static LongStream seeds() {
        return LongStream.range(0, PLANTS);
    }

    /** What the search for the worst angles may miss, of the fall. */
    private static final double UNFOUND = 0.25;

    /** In plants without a collapse the bound is at most so many times the phasor figure, and a little. */
    private static final double MODERATE_PERCENT = 20;

    private static final double SLACK = 2;
    private static final double MORE_PERCENT = 3.5;

    /** A steady load that is an impedance draws a little less behind its branch than it states, which no bound counts. */
    private static final double BRANCH_PERCENT = 0.1;

    private static StepDips dips(Layout layout) {
        return StepDips.of(layout, Feeders.behindSources(layout));
    }

    private static double fundamental(Load load, double amps) {
        return amps / LinePower.rmsOverFundamental(load.harmonicRatio());
    }

    private static List<Placement> fitting(Layout layout) {
        return layout.placements().stream().filter(Placement::fits).toList();
    }

    private static double percent(NodalPlant plant, String node, Terminals at) {
        Phasor volts = node.equals(RadialPlant.SUPPLY)
                ? plant.supplyVolts(at.from(), at.to())
                : plant.panelVolts(node, at.from(), at.to());
        return 100 * volts.length() / nominal(plant, at);
    }

    private static double nominal(NodalPlant plant, Terminals at) {
        Phasor from = plant.nominal(at.from());
        return at.to().map(to -> from.minus(plant.nominal(to))).orElse(from).length();
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void dropsAreThoseOfTheNodes(long seed) {
        Layout layout = RandomPlant.of(seed);
        for (boolean hasSource : new boolean[] {false, true}) {
            NodalPlant nodal = NodalPlant.of(layout, hasSource);
            for (Placement each : fitting(layout)) {
                Load load = each.load();
                nodal.draw(load.id(), Drawing.current(fundamental(load, load.runningAmps()), load.powerFactor()));
            }
            nodal.solve();
            FullUseVoltages ours =
                    new FullUseVoltages(layout, hasSource ? Feeders.behindSources(layout) : Feeders.stiff(layout));

            for (Panel panel : layout.project().panels()) {
                for (Terminals at : Terminals.all(layout.project().supply().system())) {
                    assertThat(100 - ours.lowPercent(panel.id(), at))
                            .isCloseTo(percent(nodal, panel.id(), at), within(1e-4));
                }
            }
            for (Placement each : fitting(layout)) {
                double least = Terminals.of(each.phases()).stream()
                        .mapToDouble(at -> 100
                                * nodal.loadVolts(each.id(), at.from(), at.to()).length()
                                / nominal(nodal, at))
                        .min()
                        .orElseThrow();
                assertThat(100 - ours.lowPercent(each)).isCloseTo(least, within(1e-4));
            }
        }
    }

    /** One way in which steady loads and inrush may answer. */
    private record Answer(Function<Random, Double> lag, boolean areSteadyImpedances, boolean isInrushImpedance) {}

    private static final List<Answer> ANSWERS = List.of(
            new Answer(random -> random.nextDouble() * Math.PI / 2, false, true),
            new Answer(random -> random.nextDouble() * Math.PI / 2, true, true),
            new Answer(random -> random.nextBoolean() ? 0 : Math.PI / 2, false, true),
            new Answer(random -> random.nextBoolean() ? 0 : Math.PI / 2, true, false),
            new Answer(random -> random.nextDouble() * Math.PI / 2, false, false));

    @ParameterizedTest
    @MethodSource("seeds")
    void noDipOrSwellIsBeyondItsBound(long seed) {
        Layout layout = RandomPlant.of(seed);
        StepDips dips = dips(layout);
        Random random = new Random(seed);
        List<String> nodes = new ArrayList<>(List.of(RadialPlant.SUPPLY));
        layout.project().panels().forEach(panel -> nodes.add(panel.id()));
        for (Answer answer : ANSWERS) {
            Map<Double, NodalPlant> solved = new HashMap<>();
            for (String node : nodes) {
                for (DipStep step : dips.steps(node)) {
                    NodalPlant plant = solved.computeIfAbsent(step.atSeconds(), now -> at(layout, now, answer, random));
                    double truth = percent(plant, node, step.at());
                    String what = step.text() + " " + answer;

                    assertThat(100 - truth)
                            .as(what)
                            .isLessThanOrEqualTo(step.bound().lowPercent() + BRANCH_PERCENT);
                    assertThat(truth - 100)
                            .as(what)
                            .isLessThanOrEqualTo(step.bound().highPercent() + BRANCH_PERCENT);
                    // A branch takes something off an inrush, which may be what lifts another phase: the bound counts
                    // that.
                    boolean isAsPhasors = answer.isInrushImpedance() && !answer.areSteadyImpedances();
                    if (isAsPhasors && !RandomPlant.hasBranches(seed)) {
                        Dip phasors = step.phasors();
                        double more = UNFOUND * Math.max(1, phasors.fallPercent());
                        assertThat(100 - truth).as(what).isLessThanOrEqualTo(phasors.lowPercent() + more);
                    }
                }
            }
        }
    }

    /** No bound lies so far above that it would tell nothing. */
    @ParameterizedTest
    @MethodSource("seeds")
    void boundsAreWithinTheirSlack(long seed) {
        Layout layout = RandomPlant.of(seed);
        StepDips dips = dips(layout);
        List<String> nodes = new ArrayList<>(List.of(RadialPlant.SUPPLY));
        layout.project().panels().forEach(panel -> nodes.add(panel.id()));
        List<DipStep> steps =
                nodes.stream().flatMap(node -> dips.steps(node).stream()).toList();
        boolean isModerate = steps.stream().allMatch(step -> step.bound().lowPercent() < MODERATE_PERCENT);
        for (DipStep step : steps) {
            double phasors = step.phasors().lowPercent();
            double bound = step.bound().lowPercent();

            assertThat(bound).as(step.text()).isBetween(phasors, step.mostLowPercent(DipReading.BOUND) + 1e-9);
            if (isModerate) {
                assertThat(bound).as(step.text()).isLessThanOrEqualTo(SLACK * Math.max(0, phasors) + MORE_PERCENT);
            }
        }
    }

    @ParameterizedTest
    @MethodSource("seeds")
    void noPanelDipsLessThanItsSupply(long seed) {
        Layout layout = RandomPlant.of(seed);
        StepDips dips = dips(layout);
        Map<String, DipStep> supply = new HashMap<>();
        dips.steps(RadialPlant.SUPPLY).forEach(step -> supply.put(step.at() + "/" + step.atSeconds(), step));
        for (Panel panel : layout.project().panels()) {
            for (DipStep step : dips.steps(panel.id())) {
                DipStep above = supply.get(step.at() + "/" + step.atSeconds());

                assertThat(step.phasors().lowPercent())
                        .as(step.text())
                        .isGreaterThanOrEqualTo(above.phasors().lowPercent() - UNFOUND);
                assertThat(step.bound().lowPercent())
                        .as(step.text())
                        .isGreaterThanOrEqualTo(above.bound().lowPercent() - 1e-9);
            }
        }
    }

    /** The plant at a switch-on, every inrush at an angle of its own. */
    private static NodalPlant at(Layout layout, double nowSeconds, Answer answer, Random random) {
        NodalPlant plant = NodalPlant.of(layout, true);
        double frequency = layout.project().supply().frequencyHertz();
        for (Placement each : fitting(layout)) {
            double on = each.onSeconds().orElse(Double.NEGATIVE_INFINITY);
            Load load = each.load();
            if (on > nowSeconds + 1e-9) {
                continue;
            }
            double idle = fundamental(load, load.idleAmps());
            plant.draw(
                    load.id(),
                    answer.areSteadyImpedances()
                            ? Drawing.impedance(idle, Math.acos(load.powerFactor()))
                            : Drawing.current(idle, load.powerFactor()));
            if (each.isSequenced()) {
                double half = load.inrushHalfMillis() / 1000;
                double excess = Math.max(0, load.inrushAmps() - Math.sqrt(2) * load.idleAmps());
                double amps =
                        TripEquivalent.pulseAmps(excess, half, frequency) * Math.pow(2, -(nowSeconds - on) / half);
                double lag = answer.lag().apply(random);
                if (amps < 1e-6 * excess) {
                    continue;
                }
                plant.draw(load.id(), new Drawing(amps, lag, answer.isInrushImpedance()));
            }
        }
        return plant.solve();
    }

    /** Third harmonics at angles of their own never make more than ours, which add as numbers. */
    @ParameterizedTest
    @MethodSource("seeds")
    void lineCurrentsAreThoseOfTheNodes(long seed) {
        Layout layout = RandomPlant.of(seed);
        NodalPlant nodal = NodalPlant.of(layout, true);
        NodalPlant third = NodalPlant.ofHarmonic(layout, 3);
        Random random = new Random(seed);
        boolean isPure = true;
        for (Placement each : fitting(layout)) {
            Load load = each.load();
            double amps = fundamental(load, load.runningAmps());
            isPure &= load.harmonicRatio() == 0;
            nodal.draw(load.id(), Drawing.current(amps, load.powerFactor()));
            third.drawHarmonic(load.id(), amps * load.harmonicRatio(), 2 * Math.PI * random.nextDouble());
        }
        nodal.solve();
        third.solve();
        for (evenrise.model.rules.NodeFigures node : layout.nodes()) {
            for (Phase phase : layout.project().supply().system().phases()) {
                boolean isSupply = node.node().equals(RadialPlant.SUPPLY);
                double fundamental =
                        (isSupply ? nodal.supplyAmps(phase) : nodal.feederAmps(node.node(), phase)).length();
                double triplen = (isSupply ? third.supplyAmps(phase) : third.feederAmps(node.node(), phase)).length();
                double ours = node.phasorAmps().get(phase);

                assertThat(ours).isGreaterThanOrEqualTo(Math.hypot(fundamental, triplen) - 1e-4);
                assertThat(ours).isLessThanOrEqualTo(node.runningAmps().get(phase) + 1e-9);
                if (isPure) {
                    assertThat(ours).isCloseTo(fundamental, within(1e-4));
                }
            }
        }
    }
}
