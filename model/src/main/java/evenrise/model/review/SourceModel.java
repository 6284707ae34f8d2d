package evenrise.model.review;

import evenrise.model.contract.Decimals;
import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.source.FaultCurrent;
import evenrise.model.electrical.source.SourceImpedance;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Electrical;
import evenrise.model.project.NodeSource;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.project.SupplySource;
import evenrise.model.rules.Distribution.Point;
import java.util.Optional;
import java.util.OptionalDouble;

/** What a project says of its source, as impedances between line and neutral; empty where it says too little. */
final class SourceModel {
    /** Usual of a transformer (assumption). */
    static final double TRANSFORMER_X_OVER_R = 3;

    private static final String SUPPLY_FIELD = "electrical.source";
    private static final String NODE_FIELD = "source.behind";
    private static final double UTILITY_X_OVER_R = 5;
    private static final double GENERATOR_X_OVER_R = 20;

    private final PhaseSystem system;
    private final double volts;
    private final SupplySource source;
    private final String field;
    private final Optional<Practice> practice;

    private SourceModel(Project project, PhaseSystem system, double volts, SupplySource source, String field) {
        this.system = system;
        this.volts = volts;
        this.source = source;
        this.field = field;
        this.practice = project.electrical().flatMap(Electrical::practice);
    }

    /** Of what is behind the supply. */
    static Optional<SourceModel> of(Project project) {
        return project.electrical()
                .flatMap(Electrical::source)
                .map(source -> new SourceModel(
                        project,
                        project.supply().system(),
                        project.supply().lineToNeutralVolts(),
                        source,
                        SUPPLY_FIELD));
    }

    /** Of what is behind the supply, or behind a source beside it. */
    static Optional<SourceModel> of(Project project, Point origin) {
        return origin.isSupply()
                ? of(project)
                : origin.node()
                        .flatMap(DistributionNode::source)
                        .flatMap(NodeSource::behind)
                        .map(source -> new SourceModel(
                                project, origin.system(), origin.lineToNeutralVolts(), source, NODE_FIELD));
    }

    /** The field that says what is behind the supply, or behind a source beside it. */
    static String field(Point origin) {
        return origin.isSupply() ? SUPPLY_FIELD : NODE_FIELD;
    }

    SupplySource source() {
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
        return impedance(leastTransformerRatio(practice), source.subtransientReactancePercent());
    }

    /**
     * For the least: a transformer at its greatest impedance by NEC practice; a generator by X'd where stated, to which its
     * current falls within a few cycles.
     */
    Optional<Impedance> forLeastFaults() {
        return impedance(
                mostTransformerRatio(practice),
                source.transientReactancePercent().isPresent()
                        ? source.transientReactancePercent()
                        : source.subtransientReactancePercent());
    }

    /** Of its nameplate's impedance, for the greatest fault currents. */
    static double leastTransformerRatio(Optional<Practice> practice) {
        return practice.equals(Optional.of(Practice.IEC)) ? 1 : FaultCurrent.LEAST_IMPEDANCE_RATIO;
    }

    /** Of its nameplate's impedance, for the least. */
    static double mostTransformerRatio(Optional<Practice> practice) {
        return practice.equals(Optional.of(Practice.IEC)) ? 1 : FaultCurrent.GREATEST_IMPEDANCE_RATIO;
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
            case UTILITY -> field + ".fault_a";
            case TRANSFORMER -> field + ".rated_kva and impedance_pct";
            case GENERATOR -> field + ".rated_kva and subtransient_reactance_pct";
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
                        system, volts, source.faultAmps().getAsDouble(), xOverR))
                : Optional.empty();
    }

    private Optional<Impedance> percent(OptionalDouble percent, double usualXOverR) {
        return percent.isPresent() && source.ratedKva().isPresent()
                ? Optional.of(SourceImpedance.ofPercent(
                        system,
                        volts,
                        source.ratedKva().getAsDouble(),
                        percent.getAsDouble(),
                        source.xOverR().orElse(usualXOverR)))
                : Optional.empty();
    }
}
