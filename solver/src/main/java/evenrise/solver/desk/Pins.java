package evenrise.solver.desk;

import evenrise.model.project.Project;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.PinRequest;
import evenrise.solver.app.PinnedLoads;
import evenrise.solver.app.Source;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Optional;

/** Pins places of what lies on the desk by the job that does it for everybody, which writes where nobody looks. */
final class Pins {
    private final Jobs jobs;

    Pins(Jobs jobs) {
        this.jobs = jobs;
    }

    Project pinned(DeskState state, DeskRequests.Pin asked) {
        PinnedLoads which = asked.all()
                ? PinnedLoads.ALL
                : new PinnedLoads(false, asked.panels(), asked.boards(), asked.groups(), asked.loads());
        try {
            Path aside = Files.createTempFile("evenrise-desk", ".json");
            try {
                return jobs.pin(new PinRequest(
                                Source.of(state.project()),
                                asked.pinned() ? Optional.of(Source.of(state.plan())) : Optional.empty(),
                                which,
                                false,
                                aside))
                        .project();
            } finally {
                Files.deleteIfExists(aside);
            }
        } catch (IOException e) {
            throw new JobFailed(JobFailed.Reason.OUTPUT, "nothing can be written in the folder for temporary files.");
        }
    }
}
