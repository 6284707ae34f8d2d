package evenrise.solver.report.page;

import java.util.List;

/** Everything that any format shows. */
public record Document(
        Imprint imprint,
        List<Fact> facts,
        List<String> findings,
        List<String> cautions,
        List<Schedule> schedules,
        List<Grid> grids,
        List<Envelope> envelopes,
        List<PlayedLoad> loads,
        double durationSeconds,
        double toleranceSeconds,
        List<String> phaseNames,
        List<String> phaseColours,
        String phaseColourSource) {
    public Document {
        facts = List.copyOf(facts);
        schedules = List.copyOf(schedules);
        grids = List.copyOf(grids);
        loads = List.copyOf(loads);
    }

    /** The table of that id. */
    public Grid grid(String id) {
        return grids.stream().filter(each -> each.id().equals(id)).findFirst().orElseThrow();
    }
}
