package evenrise.model.review;

import evenrise.model.contract.Decimals;
import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.source.FaultCurrent;
import evenrise.model.electrical.source.SourceImpedance;
import evenrise.model.project.Panel;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * Fault currents of one project, in ampere rms. The greatest is what devices must interrupt: conductors at 20 °C, highest
 * voltage, source at its stiffest. The least is what must trip them: conductors as warm as they work, since a magnetic trip
 * acts before the fault warms them, lowest voltage, source at its weakest.
 */
final class FaultLevels {
    private final Project project;
    private final SourceModel model;
    private final Impedance stiff;
    private final Impedance weak;
    private final double volts;
    private final PhaseSystem system;

    private FaultLevels(Project project, SourceModel model, Impedance stiff, Impedance weak) {
        this.project = project;
        this.model = model;
        this.stiff = stiff;
        this.weak = weak;
        volts = project.supply().lineToNeutralVolts();
        system = project.supply().system();
    }

    /** Empty where too little is stated of the source. */
    static Optional<FaultLevels> of(Project project) {
        return SourceModel.of(project)
                .flatMap(model -> model.forGreatestFaults()
                        .flatMap(stiff ->
                                model.forLeastFaults().map(weak -> new FaultLevels(project, model, stiff, weak))));
    }

    /** What the greatest rests on, in words. */
    String greatestHow() {
        return "voltage factor " + Decimals.toThousandths(model.voltageFactor()) + ", conductors at 20 °C, source at "
                + model.angle() + ", motors that feed back left out";
    }

    String leastHow() {
        return "voltage factor " + FaultCurrent.LEAST_VOLTAGE_FACTOR + ", conductors as warm as they work, source at "
                + model.angle();
    }

    double greatestAtSupply() {
        return greatest(Impedance.ZERO, Impedance.ZERO);
    }

    /** Of whichever fault is worst there; a panel without a feeder's cable counts as standing at the supply. */
    double greatest(Panel panel) {
        Impedance line = cold(panel);
        return greatest(line, line.times(1 / panel.neutralFactor()));
    }

    double greatestToNeutral(Panel panel) {
        Impedance line = cold(panel);
        return model.voltageFactor()
                * volts
                / leg(stiff).plus(line.times(1 + 1 / panel.neutralFactor())).magnitudeOhms();
    }

    /** The same as {@link #greatest} at whatever angle of the source gives the most; empty where the angle is stated. */
    OptionalDouble greatestAtAnyAngle(Panel panel) {
        if (model.isAngleStated()) {
            return OptionalDouble.empty();
        }
        Impedance line = cold(panel);
        Impedance loop = line.plus(line.times(1 / panel.neutralFactor()));
        double toNeutral = FaultCurrent.leastOhms(leg(stiff).magnitudeOhms(), loop);
        double lines = FaultCurrent.leastOhms(between(stiff).magnitudeOhms(), line);
        double least = system == PhaseSystem.SINGLE_PHASE ? toNeutral : Math.min(lines, toNeutral);
        return OptionalDouble.of(model.voltageFactor() * volts / least);
    }

    double leastToNeutralAtSupply() {
        return FaultCurrent.amps(FaultCurrent.LEAST_VOLTAGE_FACTOR, volts, weakLeg());
    }

    /** Empty where the feeder's cable is not stated, which would give too much. */
    OptionalDouble leastToNeutral(Panel panel) {
        Optional<Run> run = Feeders.run(project, panel);
        if (run.isEmpty()) {
            return OptionalDouble.empty();
        }
        Impedance loop = run.get().impedance().times(1 + 1 / panel.neutralFactor());
        return OptionalDouble.of(FaultCurrent.LEAST_VOLTAGE_FACTOR * volts / most(weakLeg(), loop));
    }

    /** Ohms of a source and what stands behind it, the most where the source's angle is unknown. */
    double most(Impedance source, Impedance behind) {
        return model.isAngleStated()
                ? source.plus(behind).magnitudeOhms()
                : source.magnitudeOhms() + behind.magnitudeOhms();
    }

    /** Of a line to neutral, or to the protective conductor, at the supply. */
    Impedance weakLeg() {
        return system == PhaseSystem.SPLIT_PHASE ? weak.times(SourceImpedance.GREATEST_LEG_RATIO) : weak;
    }

    private double greatest(Impedance line, Impedance neutral) {
        double factor = model.voltageFactor();
        double toNeutral =
                FaultCurrent.amps(factor, volts, leg(stiff).plus(line).plus(neutral));
        double lines = FaultCurrent.amps(factor, volts, between(stiff).plus(line));
        return system == PhaseSystem.SINGLE_PHASE ? toNeutral : Math.max(lines, toNeutral);
    }

    /** For a fault to neutral: a leg of split-phase at its stiffest. */
    private Impedance leg(Impedance source) {
        return system == PhaseSystem.SPLIT_PHASE ? source.times(SourceImpedance.LEAST_LEG_RATIO) : source;
    }

    /** For a fault of all lines, per line: on split-phase half of what stands between the two, 1.5 times a leg's. */
    private Impedance between(Impedance source) {
        return system == PhaseSystem.SPLIT_PHASE ? source.times(1.5) : source;
    }

    private Impedance cold(Panel panel) {
        return Feeders.run(project, panel)
                .map(run -> run.impedance(FaultCurrent.COLD_CELSIUS))
                .orElse(Impedance.ZERO);
    }
}
