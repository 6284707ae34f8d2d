package evenrise.model.event;

import java.util.List;

/**
 * What happened in a rehearsal, from its first happening until all had come to rest.
 *
 * @param format name and version of this trace as JSON
 * @param script what the script is called
 * @param use what the currents take loads to draw that are on when something happens
 * @param steps everything that happened, in the order of time
 * @param episodes the same, summed from happening to happening
 * @param findings what was found, in the order of time
 * @param groups when each shutdown group came on, went off or was left half-way
 * @param readings currents at each instant at which something closes, opens or returns, of the nodes that it concerns
 * @param onAtEnd switched loads that are on at the end
 */
public record Trace(
        String format,
        String project,
        String script,
        Use use,
        double endSeconds,
        Display shown,
        boolean locked,
        List<EventFinding> findings,
        List<Episode> episodes,
        List<TraceEntry> steps,
        List<GroupChange> groups,
        List<PhaseReading> readings,
        List<String> onAtEnd,
        List<String> cautions) {

    public static final String FORMAT = "evenrise-rehearsal/1";

    Trace with(List<Episode> otherEpisodes, List<EventFinding> otherFindings) {
        return new Trace(
                format,
                project,
                script,
                use,
                endSeconds,
                shown,
                locked,
                List.copyOf(otherFindings),
                List.copyOf(otherEpisodes),
                steps,
                groups,
                readings,
                onAtEnd,
                cautions);
    }
}
