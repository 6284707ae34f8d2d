package evenrise.model.review;

import evenrise.model.contract.Decimals;
import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.source.FaultCurrent;
import evenrise.model.electrical.source.SourceImpedance;
import evenrise.model.project.Electrical;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.project.Source;
import evenrise.model.project.Supply;
import java.util.Optional;
import java.util.OptionalDouble;

/** What a project says of its source, as impedances between line and neutral; empty where it says too little. */
final class SourceModel {
    private static final double TRANSFORMER_X_OVER_R = 3;
    private static final double UTILITY_X_OVER_R = 5;
    private static final double GENERATOR_X_OVER_R = 20;

    private final Supply supply;
    private final Source source;
    private final Optional<Practice> practice;

    private SourceModel(Project project, Source source) {
        this.supply = project.supply();
        this.source = source;
        this.practice = project.electrical().flatMap(Electrical::practice);
    }

    static Optional<SourceModel> of(Project project) {
        return project.electrical().flatMap(Electrical::source).map(source -> new SourceModel(project, source));
    }

    Source source() {
        return source;
    }

    /** For dips: a generator by X'd where stated, the larger figure, else by X''d. */
    Optional<Impedance> forDips() {
        return impedance(
                1,
                source.transientReactancePercent().isPresent()
                        ? source.transientReactancePercent()
                        : source.subtransientReactancePercent());
    }

    /** For the greatest fault currents: a transformer at its least impedance by NEC practice, a generator by X''d. */
    Optional<Impedance> forGreatestFaults() {
        double least = practice.equals(Optional.of(Practice.IEC)) ? 1 : FaultCurrent.LEAST_IMPEDANCE_RATIO;
        return impedance(least, source.subtransientReactancePercent());
    }

    /**
     * For the least: a transformer at its greatest impedance by NEC practice; a generator by X'd where stated, to which its
     * current falls within a few cycles.
     */
    Optional<Impedance> forLeastFaults() {
        double most = practice.equals(Optional.of(Practice.IEC)) ? 1 : FaultCurrent.GREATEST_IMPEDANCE_RATIO;
        return impedance(
                most,
                source.transientReactancePercent().isPresent()
                        ? source.transientReactancePercent()
                        : source.subtransientReactancePercent());
    }

    /** Whether reactance over resistance is stated, not assumed. */
    boolean isAngleStated() {
        return source.xOverR().isPresent();
    }

    /** What is assumed of the angle, in words. */
    String angle() {
        double assumed =
                switch (source.kind()) {
                    case UTILITY -> UTILITY_X_OVER_R;
                    case TRANSFORMER, UPS -> TRANSFORMER_X_OVER_R;
                    case GENERATOR -> GENERATOR_X_OVER_R;
                };
        return "X/R " + Decimals.toThousandths(source.xOverR().orElse(assumed)) + (isAngleStated() ? "" : " (assumed)");
    }

    /** Voltage factor for the greatest fault currents; where no practice is stated, the greater. */
    double voltageFactor() {
        return practice.equals(Optional.of(Practice.NEC)) ? 1 : FaultCurrent.GREATEST_VOLTAGE_FACTOR;
    }

    /** What fields {@link #forDips} lacks. */
    String needs() {
        return switch (source.kind()) {
            case UTILITY -> "electrical.source.fault_a";
            case TRANSFORMER -> "electrical.source.rated_kva and impedance_pct";
            case GENERATOR -> "electrical.source.rated_kva and subtransient_reactance_pct";
            case UPS -> "a source other than a UPS, which has no steady impedance: see check ups-limit";
        };
    }

    private Optional<Impedance> impedance(double transformerRatio, OptionalDouble generatorPercent) {
        return switch (source.kind()) {
            case UTILITY -> network(source.xOverR().orElse(UTILITY_X_OVER_R));
            case TRANSFORMER ->
                percent(source.impedancePercent(), TRANSFORMER_X_OVER_R)
                        .map(own -> own.times(transformerRatio)
                                .plus(network(UTILITY_X_OVER_R).orElse(Impedance.ZERO)));
            case GENERATOR -> percent(generatorPercent, GENERATOR_X_OVER_R);
            case UPS -> Optional.empty();
        };
    }

    private Optional<Impedance> network(double xOverR) {
        return source.faultAmps().isPresent()
                ? Optional.of(SourceImpedance.ofFault(
                        supply.system(),
                        supply.lineToNeutralVolts(),
                        source.faultAmps().getAsDouble(),
                        xOverR))
                : Optional.empty();
    }

    private Optional<Impedance> percent(OptionalDouble percent, double usualXOverR) {
        return percent.isPresent() && source.ratedKva().isPresent()
                ? Optional.of(SourceImpedance.ofPercent(
                        supply.system(),
                        supply.lineToNeutralVolts(),
                        source.ratedKva().getAsDouble(),
                        percent.getAsDouble(),
                        source.xOverR().orElse(usualXOverR)))
                : Optional.empty();
    }
}
