package evenrise.model.review;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.source.FaultCurrent;
import evenrise.model.electrical.source.Ohms;
import evenrise.model.electrical.source.SourceImpedance;
import evenrise.model.project.Cable;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Electrical;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.project.Transformer;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Distribution.Point;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Fault currents of one project, in ampere rms, at each point's own voltage. The greatest is what devices must interrupt:
 * conductors at 20 °C, highest voltage, sources and transformers at their stiffest. The least is what must trip them:
 * conductors as warm as they work, since a magnetic trip acts before the fault warms them, lowest voltage, sources and
 * transformers at their weakest.
 */
final class FaultLevels {
    /** On split-phase half of what stands between the lines is 1.5 times a leg's. */
    private static final double LINES_OVER_LEG = 1.5;

    private final Project project;
    private final Distribution distribution;
    private final Optional<Practice> practice;
    private final Map<Integer, Optional<Before>> stiff = new HashMap<>();
    private final Map<Integer, Optional<Before>> weak = new HashMap<>();

    /**
     * What a fault meets, back to the source, at the point's own voltage.
     *
     * @param leg of a fault to neutral, its way back counted
     * @param lines of a fault of all lines, per line
     */
    record Before(Ohms leg, Ohms lines) {
        /** Behind a line, with a neutral beside it. */
        Before behind(Impedance line, Impedance neutral) {
            return new Before(leg.plus(line).plus(neutral), lines.plus(line));
        }
    }

    private FaultLevels(Project project) {
        this.project = project;
        this.distribution = Distribution.of(project);
        this.practice = project.electrical().flatMap(Electrical::practice);
    }

    /** Empty where too little is stated of every source. */
    static Optional<FaultLevels> of(Project project) {
        FaultLevels levels = new FaultLevels(project);
        return levels.distribution.points().stream().anyMatch(point -> point.parent() < 0 && levels.knows(point))
                ? Optional.of(levels)
                : Optional.empty();
    }

    Distribution distribution() {
        return distribution;
    }

    /** Whether source and transformers before a point are known. */
    boolean knows(Point point) {
        return stiff(point).isPresent();
    }

    /** The field that a point lacks, or something before it. */
    String needs(Point point) {
        for (Point at = point; ; at = distribution.points().get(at.parent())) {
            if (at.transformer().isPresent() && own(at, true).isEmpty()) {
                return "transformer.rated_kva and impedance_pct of transformer " + Phrase.quoted(at.id());
            }
            if (at.parent() < 0) {
                return SourceModel.of(project, at).map(SourceModel::needs).orElse(SourceModel.field(at));
            }
        }
    }

    /** What the greatest rests on, in words. */
    String greatestHow(Point point) {
        return "voltage factor " + Decimals.toThousandths(model(point).voltageFactor())
                + ", conductors at 20 °C, source at " + model(point).angle()
                + transformers(point, SourceModel.leastTransformerRatio(practice))
                + ", motors that feed back left out";
    }

    String leastHow(Point point) {
        return "voltage factor " + FaultCurrent.LEAST_VOLTAGE_FACTOR + ", conductors as warm as they work, source at "
                + model(point).angle() + transformers(point, SourceModel.mostTransformerRatio(practice));
    }

    /** Of whichever fault is worst there; a point without a feeder's cable counts as standing at what feeds it. */
    double greatest(Point point) {
        Before before = stiff(point).orElseThrow();
        double factor = model(point).voltageFactor();
        double volts = point.lineToNeutralVolts();
        double toNeutral = FaultCurrent.amps(factor, volts, before.leg().assumed());
        double lines = FaultCurrent.amps(factor, volts, before.lines().assumed());
        return point.system() == PhaseSystem.SINGLE_PHASE ? toNeutral : Math.max(lines, toNeutral);
    }

    double greatestToNeutral(Point point) {
        Impedance ohms = hasOwnLine(point)
                ? stiff(parent(point))
                        .orElseThrow()
                        .leg()
                        .assumed()
                        .plus(cold(point).times(1 + 1 / point.neutralFactor()))
                : stiff(point).orElseThrow().leg().assumed();
        return model(point).voltageFactor() * point.lineToNeutralVolts() / ohms.magnitudeOhms();
    }

    /** The same as {@link #greatest} at whatever unstated angles give the most; empty where all are stated. */
    OptionalDouble greatestAtAnyAngle(Point point) {
        Before before = stiff(point).orElseThrow();
        if (before.leg().isKnown()) {
            return OptionalDouble.empty();
        }
        double toNeutral = before.leg().leastOhms();
        double lines = before.lines().leastOhms();
        double least = point.system() == PhaseSystem.SINGLE_PHASE ? toNeutral : Math.min(lines, toNeutral);
        return OptionalDouble.of(model(point).voltageFactor() * point.lineToNeutralVolts() / least);
    }

    /** Empty where a feeder's cable on the way is not stated, which would give too much. */
    OptionalDouble leastToNeutral(Point point) {
        if (point.isSupply()) {
            return OptionalDouble.of(FaultCurrent.amps(
                    FaultCurrent.LEAST_VOLTAGE_FACTOR,
                    point.lineToNeutralVolts(),
                    weak(point).orElseThrow().leg().assumed()));
        }
        return weak(point)
                .map(before -> OptionalDouble.of(FaultCurrent.LEAST_VOLTAGE_FACTOR
                        * point.lineToNeutralVolts()
                        / before.leg().mostOhms()))
                .orElse(OptionalDouble.empty());
    }

    /** The same at a transformer's own terminals, its secondary cable not counted. */
    Optional<Before> withoutCable(Point transformer) {
        Optional<CableRun> run = Feeders.run(project, transformer);
        return run.flatMap(it -> weak(parent(transformer)).map(before -> behind(transformer, before, it.impedance())))
                .flatMap(it -> own(transformer, false).map(own -> through(transformer, it, own)));
    }

    /** What the least fault meets before a point; empty where a feeder's cable on the way is not stated. */
    Optional<Before> weak(Point point) {
        if (!weak.containsKey(point.index())) {
            weak.put(point.index(), weakBefore(point));
        }
        return weak.get(point.index());
    }

    /** Impedance of a transformer on its secondary side, its windings and the cable behind them, cold or warm. */
    private Optional<Before> own(Point point, boolean isStiff) {
        double ratio =
                isStiff ? SourceModel.leastTransformerRatio(practice) : SourceModel.mostTransformerRatio(practice);
        Transformer it = point.node().flatMap(DistributionNode::transformer).orElseThrow();
        if (it.ratedKva().isEmpty() || it.impedancePercent().isEmpty()) {
            return Optional.empty();
        }
        Ohms windings = Ohms.of(
                SourceImpedance.ofPercent(
                                point.system(),
                                point.lineToNeutralVolts(),
                                it.ratedKva().getAsDouble(),
                                it.impedancePercent().getAsDouble(),
                                it.xOverR().orElse(SourceModel.TRANSFORMER_X_OVER_R))
                        .times(ratio),
                it.xOverR().isPresent());
        return Optional.of(new Before(
                windings.times(legRatio(point, isStiff)),
                point.system() == PhaseSystem.SPLIT_PHASE ? windings.times(LINES_OVER_LEG) : windings));
    }

    /** Of a fault to neutral on split-phase, a leg at its stiffest or at its weakest. */
    private static double legRatio(Point point, boolean isStiff) {
        return point.system() != PhaseSystem.SPLIT_PHASE
                ? 1
                : isStiff ? SourceImpedance.LEAST_LEG_RATIO : SourceImpedance.GREATEST_LEG_RATIO;
    }

    private Optional<Before> stiff(Point point) {
        if (!stiff.containsKey(point.index())) {
            stiff.put(point.index(), stiffBefore(point));
        }
        return stiff.get(point.index());
    }

    private Optional<Before> stiffBefore(Point point) {
        if (point.parent() < 0) {
            return SourceModel.of(project, point)
                    .flatMap(model ->
                            model.forGreatestFaults().map(ohms -> atSource(point, ohms, model.isAngleStated(), true)));
        }
        Impedance line = cold(point);
        Optional<Before> before = stiff(parent(point)).map(it -> it.behind(line, line.times(1 / neutral(point))));
        return point.transformer().isEmpty()
                ? before
                : before.flatMap(it -> own(point, true)
                        .map(own -> behindCable(point, through(point, it, own), FaultCurrent.COLD_CELSIUS)));
    }

    private Optional<Before> weakBefore(Point point) {
        if (point.parent() < 0) {
            return SourceModel.of(project, point)
                    .flatMap(model ->
                            model.forLeastFaults().map(ohms -> atSource(point, ohms, model.isAngleStated(), false)));
        }
        if (point.transformer().isPresent()) {
            return withoutCable(point).map(it -> behindCable(point, it, Double.NaN));
        }
        return Feeders.run(project, point)
                .flatMap(run -> weak(parent(point)).map(before -> behind(point, before, run.impedance())));
    }

    private static Before behind(Point point, Before before, Impedance line) {
        return new Before(
                before.leg().plus(line.times(1 + 1 / neutral(point))),
                before.lines().plus(line));
    }

    private static Before atSource(Point point, Impedance ohms, boolean isAngleStated, boolean isStiff) {
        boolean isSplit = point.system() == PhaseSystem.SPLIT_PHASE;
        return new Before(
                Ohms.of(isSplit ? ohms.times(legRatio(point, isStiff)) : ohms, isAngleStated),
                Ohms.of(isSplit ? ohms.times(LINES_OVER_LEG) : ohms, isAngleStated));
    }

    /**
     * What stands before a transformer, seen through it, and its own. Behind a delta a fault to neutral meets two thirds of
     * what one of all lines does, as positive and negative sequence pass and zero sequence does not: (Z1 + Z2 + 0)/3.
     */
    private Before through(Point point, Before primary, Before own) {
        double squared = point.transformer().orElseThrow().ratio()
                * point.transformer().orElseThrow().ratio();
        return switch (point.node()
                .flatMap(DistributionNode::transformer)
                .orElseThrow()
                .connection()) {
            case WYE_WYE ->
                new Before(
                        primary.leg().times(squared).plus(own.leg()),
                        primary.lines().times(squared).plus(own.lines()));
            case DELTA_WYE ->
                new Before(
                        primary.lines().times(2 * squared / 3).plus(own.leg()),
                        primary.lines().times(squared).plus(own.lines()));
            case SINGLE -> {
                boolean isToNeutral = point.transformer().orElseThrow().returnsByNeutral();
                Ohms winding = isToNeutral ? primary.leg() : primary.lines().times(2);
                double ofLines = point.system() == PhaseSystem.SPLIT_PHASE ? 2 * squared : squared;
                yield new Before(
                        winding.times(squared).plus(own.leg()),
                        winding.times(ofLines).plus(own.lines()));
            }
        };
    }

    /** @param celsius of the conductors; as warm as they work where it is no number */
    private Before behindCable(Point point, Before before, double celsius) {
        Optional<Cable> cable =
                point.node().flatMap(DistributionNode::transformer).flatMap(Transformer::secondaryCable);
        return cable.flatMap(each -> CableRun.of(project, each, point.ratedAmps()))
                .map(run -> Double.isNaN(celsius) ? run.impedance() : run.impedance(celsius))
                .map(line -> before.behind(line, line.times(1 / point.neutralFactor())))
                .orElse(before);
    }

    private Impedance cold(Point point) {
        return Feeders.run(project, point)
                .map(run -> run.impedance(FaultCurrent.COLD_CELSIUS))
                .orElse(Impedance.ZERO);
    }

    /** A node's factor is that of a transformer's secondary; its primary feeder's neutral is taken to be as large as a line. */
    private static double neutral(Point point) {
        return point.transformer().isPresent() ? 1 : point.neutralFactor();
    }

    private static boolean hasOwnLine(Point point) {
        return point.parent() >= 0 && point.transformer().isEmpty();
    }

    private Point parent(Point point) {
        return distribution.points().get(point.parent());
    }

    private SourceModel model(Point point) {
        Point at = point;
        while (at.parent() >= 0) {
            at = parent(at);
        }
        return SourceModel.of(project, at).orElseThrow();
    }

    private String transformers(Point point, double ratio) {
        for (Point at = point; at.parent() >= 0; at = parent(at)) {
            if (at.transformer().isPresent()) {
                return ", transformers at " + Decimals.toThousandths(ratio) + " of their impedance"
                        + (stiff(point).orElseThrow().leg().isKnown()
                                ? ""
                                : ", unstated X/R of transformers taken as 3");
            }
        }
        return "";
    }
}
