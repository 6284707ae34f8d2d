package evenrise.model.review;

import evenrise.model.electrical.source.Network;
import evenrise.model.electrical.source.Terminals;
import evenrise.model.electrical.source.UnitDips;
import evenrise.model.rules.Distribution.Point;
import evenrise.model.rules.Layout;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The network that a project states. */
public final class Networks {
    private Networks() {}

    /** Empty where the project does not say enough of its source. */
    public static Optional<Network> of(Layout layout) {
        return SourceModel.of(layout.project())
                .flatMap(SourceModel::forDips)
                .map(source -> new Network(source, Feeders.impedances(layout)));
    }

    /** What currents do to the voltages of a tree; empty of a star, and where no source is known. */
    public static Optional<UnitDips> ofTree(Layout layout) {
        List<Point> known = Feeders.behindKnownSources(layout);
        if (known.isEmpty() || Feeders.isStar(layout)) {
            return Optional.empty();
        }
        Map<String, Set<Terminals>> fed = FedTerminals.of(layout);
        fed.keySet().retainAll(known.stream().map(Point::id).toList());
        return Optional.of(new UnitDips(Feeders.behindSources(layout), FedTerminals.all(layout.distribution()), fed));
    }
}
