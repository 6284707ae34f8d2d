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
            if (!task.softwareVersion().equals(ProgramVersion.ofThisProgram())) {
                throw new InvalidInput("asked by version " + task.softwareVersion() + " of a worker of version "
                        + ProgramVersion.ofThisProgram());
            }
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
        PlanRequest request = PlanRequest.of(Source.stream(new ByteArrayInputStream(task.project()), task.name()))
                .withEffort(Effort.ofMoves(task.moves()).withSeed(task.seed()).withThreads(1))
                .withTarget(PlanTarget.stream(out));
        JobControl control = new JobControl(JobListener.NONE, cancel);
        try (Watch watch = new Watch(control.listener())) {
            new PlanJob(planners, request, control, watch).run();
        }
    }
}
