package evenrise.model.review;

import static evenrise.model.contract.Figures.HUNDREDTHS;

import evenrise.model.contract.Decimals;
import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.source.FaultCurrent;
import evenrise.model.electrical.source.Ohms;
import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Feeder;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.SourceKind;
import evenrise.model.project.SupplySource;
import evenrise.model.project.Transformer;
import evenrise.model.rules.Distribution.Point;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The way of a fault from a line through the protective conductor back to the source or the transformer whose voltages the
 * point has, of each feeder and each branch: source, lines and protective conductors as warm as they work. A loop is empty
 * where a part of it is not stated. What a transformer draws for a fault behind it flows in lines and neutral before it.
 */
final class FaultLoops {
    private final Project project;
    private final FaultLevels levels;

    /** A loop, and the least current that a fault draws through it at 0.95 of the voltage. */
    record Loop(double ohms, double leastAmps, double volts) {
        String text() {
            return HUNDREDTHS.amps(leastAmps) + " at least through a loop of " + Decimals.apart(ohms, 0, 3) + " Ω";
        }
    }

    /** The loop at the beginning of a system: as stated, a number without an angle, or as computed. */
    private record Origin(OptionalDouble statedOhms, Optional<Ohms> computed) {
        double with(Impedance conductors) {
            return statedOhms.isPresent()
                    ? statedOhms.getAsDouble() + conductors.magnitudeOhms()
                    : computed.orElseThrow().plus(conductors).mostOhms();
        }
    }

    private FaultLoops(Project project, FaultLevels levels) {
        this.project = project;
        this.levels = levels;
    }

    /** Empty where no loop at the terminals of a source or transformer is known; {@link #needs} says why. */
    static Optional<FaultLoops> of(Project project) {
        return FaultLevels.of(project)
                .map(levels -> new FaultLoops(project, levels))
                .filter(loops -> loops.levels.distribution().points().stream()
                        .anyMatch(point -> point.index() == point.origin()
                                && loops.atOrigin(point).isPresent()));
    }

    /** The field that the loop at the supply's terminals lacks. */
    static String needs(Project project) {
        return needs(project, FaultLevels.of(project), Optional.empty());
    }

    /** The field that the loop lacks at the terminals of what a point has its voltages from. */
    String needs(Point point) {
        return needs(project, Optional.of(levels), Optional.of(point));
    }

    private static String needs(Project project, Optional<FaultLevels> levels, Optional<Point> point) {
        Optional<Point> source = point.flatMap(it -> levels.map(known -> top(known, it)));
        Optional<SourceModel> model =
                source.isPresent() ? SourceModel.of(project, source.get()) : SourceModel.of(project);
        boolean isBeside = source.isPresent() && !source.get().isSupply();
        if (model.filter(FaultLoops::isUtility).isPresent()) {
            return (isBeside ? "source.behind" : "electrical.source") + ".fault_loop_ohm";
        }
        return source.isPresent() && levels.isPresent()
                ? levels.get().needs(point.orElseThrow())
                : model.map(SourceModel::needs).orElse("electrical.source");
    }

    /** Whether the loop is known at the terminals of what a point has its voltages from. */
    boolean knowsOriginOf(Point point) {
        return atOrigin(origin(point)).isPresent();
    }

    /** Of a feeder at the voltage of the panel or node that it feeds; none before a transformer, see {@link #ofPrimary}. */
    Optional<Loop> ofFeeder(Point point) {
        return feeders(point).flatMap(conductors -> loop(point, conductors));
    }

    /** Of the feeder of a transformer, on its primary side. */
    Optional<Loop> ofPrimary(Point transformer) {
        Point above = levels.distribution().points().get(transformer.parent());
        return own(transformer)
                .flatMap(own -> feeders(above).map(own::plus))
                .flatMap(conductors -> loop(above, conductors));
    }

    /** Of a branch out of that panel. */
    Optional<Loop> ofBranch(Load load, Point panel) {
        return feeders(panel)
                .flatMap(feeder -> load.circuit()
                        .flatMap(Circuit::cable)
                        .flatMap(cable -> CableRun.of(project, cable, load.breakerAmps()))
                        .flatMap(FaultLoops::thereAndBack)
                        .flatMap(branch -> loop(panel, feeder.plus(branch))));
    }

    /** Whether the protective conductor of a feeder is stated. */
    static boolean isKnown(Point point) {
        return point.feeder()
                .flatMap(Feeder::cable)
                .flatMap(Cable::protectiveSize)
                .isPresent();
    }

    /** All feeders from the origin of a point's voltages to the point; none at the origin itself, but a transformer's cable. */
    private Optional<Impedance> feeders(Point point) {
        if (point.index() == point.origin()) {
            Optional<Cable> behind =
                    point.node().flatMap(DistributionNode::transformer).flatMap(Transformer::secondaryCable);
            return behind.isEmpty()
                    ? Optional.of(Impedance.ZERO)
                    : CableRun.of(project, behind.get(), point.ratedAmps()).flatMap(FaultLoops::thereAndBack);
        }
        return feeders(levels.distribution().points().get(point.parent()))
                .flatMap(above -> own(point).map(above::plus));
    }

    private Optional<Impedance> own(Point point) {
        return Feeders.run(project, point).flatMap(FaultLoops::thereAndBack);
    }

    private static Optional<Impedance> thereAndBack(CableRun run) {
        return run.protective().map(back -> run.impedance().plus(back));
    }

    private Optional<Loop> loop(Point point, Impedance conductors) {
        return atOrigin(origin(point)).map(origin -> {
            double ohms = origin.with(conductors);
            return new Loop(
                    ohms,
                    FaultCurrent.LEAST_VOLTAGE_FACTOR * point.lineToNeutralVolts() / ohms,
                    point.lineToNeutralVolts());
        });
    }

    /** At the terminals of the supply, a source or a transformer. */
    private Optional<Origin> atOrigin(Point origin) {
        if (origin.transformer().isPresent()) {
            return isThroughUnknownNeutral(origin)
                    ? Optional.empty()
                    : levels.withoutCable(origin)
                            .map(before -> new Origin(OptionalDouble.empty(), Optional.of(before.leg())));
        }
        Optional<SourceModel> model = SourceModel.of(project, origin);
        OptionalDouble stated =
                model.map(SourceModel::source).map(SupplySource::faultLoopOhms).orElse(OptionalDouble.empty());
        return stated.isEmpty() && model.filter(FaultLoops::isUtility).isPresent()
                ? Optional.empty()
                : levels.weak(origin).map(before -> new Origin(stated, Optional.of(before.leg())));
    }

    /** A transformer whose primary current returns by a neutral needs the way of the neutral, which a utility must state. */
    private boolean isThroughUnknownNeutral(Point transformer) {
        boolean isToNeutral = transformer.transformer().orElseThrow().returnsByNeutral()
                || transformer.transformer().orElseThrow().passesNeutralOn();
        Point above = origin(levels.distribution().points().get(transformer.parent()));
        return isToNeutral
                && (above.transformer().isPresent()
                        ? isThroughUnknownNeutral(above)
                        : SourceModel.of(project, above)
                                .filter(FaultLoops::isUtility)
                                .isPresent());
    }

    private static boolean isUtility(SourceModel model) {
        return model.source().kind() == SourceKind.UTILITY;
    }

    private Point origin(Point point) {
        return levels.distribution().points().get(point.origin());
    }

    private static Point top(FaultLevels levels, Point point) {
        Point at = point;
        while (at.parent() >= 0) {
            at = levels.distribution().points().get(at.parent());
        }
        return at;
    }
}
