package evenrise.solver.app;

import evenrise.solver.grid.GridWork;
import evenrise.solver.grid.StopSignal;
import evenrise.solver.portfolio.PlanTask;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;

/** Finds the plan of a task: the bytes of its file. */
final class PlanWork implements GridWork {
    private final PlannerSource planners;

    PlanWork(PlannerSource planners) {
        this.planners = planners;
    }

    @Override
    public byte[] output(byte[] input, StopSignal stop) throws InvalidInput {
        try {
            PlanTask task = PlanTask.of(input);
            AskedVersion.refuseOther(task.softwareVersion());
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            CancelSwitch cancel = new CancelSwitch();
            stop.during(() -> plan(task, out, cancel), cancel::cancel);
            return out.toByteArray();
        } catch (IOException e) {
            throw new InvalidInput(e.getMessage());
        } catch (JobFailed e) {
            throw new InvalidInput(e.getMessage());
        }
    }

    private void plan(PlanTask task, ByteArrayOutputStream out, CancelSwitch cancel) {
        PlanRequest alone = PlanRequest.of(Source.stream(new ByteArrayInputStream(task.project()), task.name()))
                .withEffort(Effort.ofMoves(task.moves()).withSeed(task.seed()).withThreads(1))
                .withPlacingAll(task.placesAll())
                .withTarget(PlanTarget.stream(out));
        PlanRequest request = task.from()
                .map(plan -> alone.withFrom(Source.stream(new ByteArrayInputStream(plan), "the plan to start at")))
                .orElse(alone);
        JobControl control = new JobControl(JobListener.NONE, cancel);
        try (Watch watch = new Watch(control.listener())) {
            new PlanJob(planners, request, control, watch).run();
        }
    }
}
