package evenrise.solver.document;

import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeStart;
import evenrise.model.rules.PhasePeak;
import java.util.ArrayList;
import java.util.List;

/**
 * What a node carries on its worst phase as one system starts: P the system's own start, F what it draws in use, and the
 * rest beside it.
 */
public record StartRow(String node, String system, PhasePeak peak, double restAmps, double usedAmps) {

    /** Node by node, systems with loads there in the project's order. */
    static List<StartRow> of(Layout layout) {
        List<StartRow> rows = new ArrayList<>();
        layout.distribution()
                .points()
                .forEach(point -> layout.starts(point.index()).stream()
                        .filter(start -> !Envelopes.switchedBy(layout, point.index(), start.system())
                                .isEmpty())
                        .forEach(start -> rows.add(of(point.id(), start))));
        return rows;
    }

    private static StartRow of(String node, NodeStart start) {
        PhasePeak worst = start.worst();
        return new StartRow(
                node,
                start.system().orElse(""),
                worst,
                start.restAmps().get(worst.phase()),
                start.usedAmps().get(worst.phase()));
    }

    /** P. */
    double startingAmps() {
        return peak.amps() - restAmps;
    }

    /** F. */
    double inUseAmps() {
        return usedAmps - restAmps;
    }

    /** With the rest, starting or in use. */
    double mostAmps() {
        return Math.max(peak.amps(), usedAmps);
    }
}
