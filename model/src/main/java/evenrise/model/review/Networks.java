package evenrise.model.review;

import evenrise.model.electrical.source.Network;
import evenrise.model.rules.Layout;
import java.util.Optional;

/** The network that a project states. */
public final class Networks {
    private Networks() {}

    /** Empty where the project does not say enough of its source. */
    public static Optional<Network> of(Layout layout) {
        return SourceModel.of(layout.project())
                .flatMap(SourceModel::forDips)
                .map(source -> new Network(source, Feeders.impedances(layout)));
    }
}
