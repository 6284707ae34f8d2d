package evenrise.model.review;

import evenrise.model.contract.Decimals;
import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.source.FaultCurrent;
import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.Feeder;
import evenrise.model.project.Load;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.project.Source;
import evenrise.model.project.SourceKind;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The way of a fault from a line through the protective conductor back to the source, of each feeder and each branch: source,
 * lines and protective conductors as warm as they work. A loop is empty where a part of it is not stated.
 */
final class FaultLoops {
    private final Project project;
    private final FaultLevels levels;
    private final OptionalDouble statedAtSupply;

    /** A loop, and the least current that a fault draws through it at 0.95 of the voltage. */
    record Loop(double ohms, double leastAmps) {
        String text() {
            return Say.amps(leastAmps) + " at least through a loop of " + Decimals.apart(ohms, 0, 3) + " Ω";
        }
    }

    private FaultLoops(Project project, FaultLevels levels, OptionalDouble statedAtSupply) {
        this.project = project;
        this.levels = levels;
        this.statedAtSupply = statedAtSupply;
    }

    /** Empty where the loop at the supply's terminals is unknown; {@link #needs} says why. */
    static Optional<FaultLoops> of(Project project) {
        Optional<SourceModel> model = SourceModel.of(project);
        OptionalDouble stated =
                model.map(SourceModel::source).map(Source::faultLoopOhms).orElse(OptionalDouble.empty());
        boolean isUtility = model.map(SourceModel::source)
                .filter(source -> source.kind() == SourceKind.UTILITY)
                .isPresent();
        return stated.isEmpty() && isUtility
                ? Optional.empty()
                : FaultLevels.of(project).map(levels -> new FaultLoops(project, levels, stated));
    }

    /** The field that the loop at the supply's terminals lacks. */
    static String needs(Project project) {
        Optional<SourceModel> model = SourceModel.of(project);
        return model.map(SourceModel::source)
                        .filter(source -> source.kind() == SourceKind.UTILITY)
                        .isPresent()
                ? "electrical.source.fault_loop_ohm"
                : model.map(SourceModel::needs).orElse("electrical.source");
    }

    Optional<Loop> ofFeeder(Panel panel) {
        return feeder(panel).map(this::loop);
    }

    /** Of a branch out of that panel. */
    Optional<Loop> ofBranch(Load load, Panel panel) {
        return feeder(panel)
                .flatMap(feeder -> load.circuit()
                        .flatMap(Circuit::cable)
                        .flatMap(cable -> Run.of(project, cable, load.breakerAmps()))
                        .flatMap(FaultLoops::thereAndBack)
                        .map(branch -> loop(feeder.plus(branch))));
    }

    /** Whether the protective conductor of a feeder is stated. */
    static boolean isKnown(Panel panel) {
        return panel.feeder()
                .flatMap(Feeder::cable)
                .flatMap(Cable::protectiveSize)
                .isPresent();
    }

    private Optional<Impedance> feeder(Panel panel) {
        return Feeders.run(project, panel).flatMap(FaultLoops::thereAndBack);
    }

    private static Optional<Impedance> thereAndBack(Run run) {
        return run.protective().map(back -> run.impedance().plus(back));
    }

    private Loop loop(Impedance conductors) {
        double ohms = statedAtSupply.isPresent()
                ? statedAtSupply.getAsDouble() + conductors.magnitudeOhms()
                : levels.most(levels.weakLeg(), conductors);
        return new Loop(
                ohms, FaultCurrent.LEAST_VOLTAGE_FACTOR * project.supply().lineToNeutralVolts() / ohms);
    }
}
