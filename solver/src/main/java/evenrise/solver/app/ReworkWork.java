package evenrise.solver.app;

import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.grid.GridWork;
import evenrise.solver.grid.StopSignal;
import evenrise.solver.portfolio.PlansFound;
import evenrise.solver.portfolio.ReworkTask;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;

/** Searches around the plan as built of a task: the bytes of what is found. */
final class ReworkWork implements GridWork {
    /** What is to be said of the files, whoever asks has said. */
    private static final Consumer<String> NOBODY = any -> {};

    private final PlannerSource planners;

    ReworkWork(PlannerSource planners) {
        this.planners = planners;
    }

    @Override
    public byte[] output(byte[] input, StopSignal stop) throws InvalidInput {
        try {
            ReworkTask task = ReworkTask.of(input);
            AskedVersion.refuseOther(task.softwareVersion());
            CancelSwitch cancel = new CancelSwitch();
            AtomicReference<PlansFound> found = new AtomicReference<>();
            stop.during(() -> found.set(found(task, cancel)), cancel::cancel);
            return found.get().bytes();
        } catch (IOException | JobFailed e) {
            throw new InvalidInput(e.getMessage());
        }
    }

    private PlansFound found(ReworkTask task, CancelSwitch cancel) {
        Project project = project(task.project());
        PlanningRequest request = new PlanningRequest(
                project, Optional.of(plan(task.from())), new Budget.Moves(task.moves()), task.seed(), 1);
        try (Watch watch = new Watch(JobListener.NONE)) {
            AroundBuilt.Found found = new AroundBuilt(planners, watch, cancel)
                    .search(request, project(task.held()), plan(task.built()), Optional.empty());
            return new PlansFound(
                    found.plans().stream()
                            .map(plan -> ReworkFolder.bytes(out -> PlanFile.write(plan, out, Format.JSON)))
                            .toList(),
                    found.moves(),
                    found.asNew().provenObjective());
        }
    }

    private static Plan plan(byte[] bytes) {
        return Inputs.plan(Source.stream(new ByteArrayInputStream(bytes), "the plan"), NOBODY);
    }

    private static Project project(byte[] bytes) {
        return Inputs.project(Source.stream(new ByteArrayInputStream(bytes), "the project"), NOBODY)
                .value()
                .orElseThrow();
    }
}
