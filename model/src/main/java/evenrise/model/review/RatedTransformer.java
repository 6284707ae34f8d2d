package evenrise.model.review;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.source.SourceImpedance;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import evenrise.model.rules.Distribution.Point;
import java.util.List;
import java.util.Optional;

/** A transformer whose rating is stated, with its rated line currents. */
record RatedTransformer(Point point, Transformer transformer, double kva) {
    static Optional<RatedTransformer> of(Point point) {
        Optional<Transformer> transformer = point.node().flatMap(DistributionNode::transformer);
        return transformer
                .filter(it -> it.ratedKva().isPresent())
                .map(it -> new RatedTransformer(point, it, it.ratedKva().getAsDouble()));
    }

    /** Of its windings, on the secondary, between line and neutral; X/R as it is usual where none is stated. */
    Optional<Impedance> impedance() {
        return transformer.impedancePercent().isPresent()
                ? Optional.of(SourceImpedance.ofPercent(
                        point.system(),
                        point.lineToNeutralVolts(),
                        kva,
                        transformer.impedancePercent().getAsDouble(),
                        transformer.xOverR().orElse(SourceModel.TRANSFORMER_X_OVER_R)))
                : Optional.empty();
    }

    /** Rated line current of the secondary. */
    double secondaryAmps() {
        int poles = point.system().phases().size();
        return 1000 * kva / Level.of(point).voltAmpsPerAmp(poles);
    }

    /** Rated line current of the primary. */
    double primaryAmps() {
        return secondaryAmps() * primaryOverSecondary(point);
    }

    /** Of balanced line currents. */
    static double primaryOverSecondary(Point point) {
        double ratio = point.transformer().orElseThrow().ratio();
        return point.system() == PhaseSystem.SPLIT_PHASE ? 2 * ratio : ratio;
    }

    /** Secondary of one voltage on two conductors: 240.4(F). */
    boolean isTwoWire() {
        return transformer.connection() == TransformerConnection.SINGLE && point.system() == PhaseSystem.SINGLE_PHASE;
    }

    List<Phase> primaryPhases() {
        return point.transformer().orElseThrow().primaryPhases();
    }
}
