package evenrise.solver.desk;

import evenrise.model.file.SideNotes;
import evenrise.model.project.PhaseSystem;
import evenrise.solver.app.GenerateRequest;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import java.util.Optional;
import java.util.OptionalInt;

/** Somebody without a project of his own tries the desk: an invented hall, drawn anew and the same each time. */
final class PracticeHall implements DeskPart {
    /** A hall that a search of seconds plans, with enough in it for every view. */
    private static final GenerateRequest HALL = new GenerateRequest(
            2, OptionalInt.of(30), PhaseSystem.THREE_PHASE, 4, Optional.of("Practice hall, invented"));

    private final Desk desk;
    private final Jobs jobs;

    PracticeHall(Desk desk, Jobs jobs) {
        this.desk = desk;
        this.jobs = jobs;
    }

    @Override
    public void offer(DeskRoutes routes) {
        routes.asked(
                "/api/practice",
                "An invented hall becomes the project, where there is none",
                DeskRequests.Bare.class,
                DeskAnswers.DeskSheet.class,
                any -> begin());
    }

    private DeskAnswers.DeskSheet begin() {
        synchronized (desk) {
            if (desk.state().isPresent()) {
                throw new JobFailed(
                        JobFailed.Reason.REQUEST,
                        "a project lies on the desk already. Open the desk on an empty folder to practise.");
            }
            desk.put("practice hall", DeskState.unplanned(jobs.generate(HALL), SideNotes.NONE));
        }
        return desk.sheet();
    }
}
