package evenrise.model.event;

import java.util.List;

/**
 * What follows from one happening until the next.
 *
 * @param text what began it
 * @param fromRest whether every inrush before it had died away and no sequence was under way
 * @param inUse whether what was on when it began is in use from then on
 * @param closed how many breakers closed
 * @param opened how many breakers opened
 * @param shown what the operator is shown at its end
 * @param peaks of the supply, then of the panels in the project's order
 */
public record Episode(
        double fromSeconds,
        double toSeconds,
        String text,
        boolean fromRest,
        boolean inUse,
        int closed,
        int opened,
        int loadsOn,
        Display shown,
        List<NodePeak> peaks) {

    Episode withPeaks(List<NodePeak> others) {
        return new Episode(fromSeconds, toSeconds, text, fromRest, inUse, closed, opened, loadsOn, shown, others);
    }
}
