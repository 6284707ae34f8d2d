package evenrise.solver.document;

import evenrise.model.rules.Distribution;
import evenrise.model.rules.Layout;
import java.util.List;

/** The current of the supply, or of another node, over time, for whoever shows nothing else of a plan. */
public final class SupplyCurves {
    private SupplyCurves() {}

    /** One for each command that is carried out. */
    public static List<NodeCurves> of(Layout layout) {
        return new Envelopes(layout).of(layout.distribution().points().get(Distribution.SUPPLY));
    }

    /** The same of a panel or node; none where there is none of that name. */
    public static List<NodeCurves> of(Layout layout, String node) {
        return layout.distribution().points().stream()
                .filter(each -> each.id().equals(node))
                .findFirst()
                .map(new Envelopes(layout)::of)
                .orElse(List.of());
    }
}
