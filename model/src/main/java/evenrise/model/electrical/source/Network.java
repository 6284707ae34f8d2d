package evenrise.model.electrical.source;

import evenrise.model.electrical.Impedance;
import java.util.Map;

/**
 * What stands between the loads and an unyielding voltage.
 *
 * @param source between a line and neutral at the supply's terminals
 * @param feeders of a line conductor, by panel; a panel that is missing counts as none
 */
public record Network(Impedance source, Map<String, Impedance> feeders) {
    public Network {
        feeders = Map.copyOf(feeders);
    }
}
