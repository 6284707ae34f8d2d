package evenrise.model.review;

import evenrise.model.project.DistributionNode;
import evenrise.model.project.DistributionNodeBuilder;
import evenrise.model.project.Electrical;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.project.Secondary;
import evenrise.model.project.SourceKind;
import evenrise.model.project.SupplySource;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerBuilder;
import evenrise.model.project.TransformerConnection;
import java.util.List;
import java.util.Optional;

/** Nodes with transformers for tests. */
final class Trees {
    /** Of 480Y/277 V and of 208Y/120 V, to neutral. */
    static final double VOLTS_480 = 480 / Math.sqrt(3);

    static final double VOLTS_208 = 208 / Math.sqrt(3);

    private Trees() {}

    /** A network of 30,000 A behind the supply that is all reactance, but for a thousandth. */
    static Electrical stiffNetwork(Practice practice) {
        return Electrical.builder()
                .practice(practice)
                .source(SupplySource.builder()
                        .kind(SourceKind.UTILITY)
                        .faultAmps(30_000)
                        .xOverR(1000)
                        .build())
                .build();
    }

    static TransformerBuilder deltaWye(double volts) {
        return Transformer.builder()
                .connection(TransformerConnection.DELTA_WYE)
                .secondary(Secondary.builder()
                        .system(PhaseSystem.THREE_PHASE)
                        .lineToNeutralVolts(volts)
                        .build());
    }

    static TransformerBuilder single(PhaseSystem system, double volts, Phase... primary) {
        return Transformer.builder()
                .connection(TransformerConnection.SINGLE)
                .primaryPhases(List.of(primary))
                .secondary(Secondary.builder()
                        .system(system)
                        .lineToNeutralVolts(volts)
                        .build());
    }

    static DistributionNodeBuilder node(String id, double ratedAmps, Transformer transformer) {
        return DistributionNode.builder().id(id).ratedAmps(ratedAmps).transformer(Optional.of(transformer));
    }
}
