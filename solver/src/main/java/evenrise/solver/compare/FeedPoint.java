package evenrise.solver.compare;

import evenrise.model.project.Panel;
import evenrise.model.project.PhaseSystem;
import java.util.Optional;

/**
 * Where panels that may be exchanged hang: the supply, a node, or a panel that stays.
 *
 * @param name what feeds them
 * @param like the project's first such panel there, from which a new one takes what does not follow from its kind
 */
record FeedPoint(String name, Panel like, PhaseSystem system, double lineToNeutralVolts) {
    static final String SUPPLY = "supply";

    /** What feeds a panel. */
    static String nameOf(Panel panel) {
        return nameOf(panel.fedFrom());
    }

    static String nameOf(Optional<String> fedFrom) {
        return fedFrom.orElse(SUPPLY);
    }
}
