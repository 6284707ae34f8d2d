package evenrise.solver.app;

import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.WriteFailed;
import evenrise.model.plan.Plan;
import evenrise.model.rules.Layout;
import evenrise.model.scatter.NodeScatter;
import evenrise.model.scatter.Trials;
import evenrise.solver.grid.GridAnswer;
import evenrise.solver.grid.GridJob;
import evenrise.solver.grid.StopSignal;
import evenrise.solver.grid.WorkGrid;
import evenrise.solver.portfolio.TrialTask;
import java.io.ByteArrayOutputStream;
import java.util.ArrayList;
import java.util.List;

/** Trials in shards, each a job; what they come to together is what one run comes to, bit for bit. */
final class TrialShards {
    /** Of more, a job would take long; of fewer, its way would cost more than it. */
    private static final int TRIALS_OF_A_SHARD = 100_000;

    private final Layout layout;
    private final Watch watch;

    TrialShards(Layout layout, Watch watch) {
        this.layout = layout;
        this.watch = watch;
    }

    /** @throws JobFailed where a shard fails, or the workers are lost */
    List<NodeScatter> drawn(Plan plan, int trials, long seed, WorkGrid grid) {
        List<GridJob> jobs = jobs(plan, trials, seed);
        Trials all = TrialWork.none(layout);
        List<String> failures = new ArrayList<>();
        StopSignal stop = new StopSignal();
        int[] done = {0};
        Grids.reached(() -> {
            grid.run(
                    jobs,
                    (job, answer) -> {
                        if (answer instanceof GridAnswer.Failed failed) {
                            failures.add(job.name() + ": " + failed.cause().words() + ": " + failed.words());
                            stop.stop();
                        } else {
                            all.add(((GridAnswer.Done) answer).output());
                            watch.part(new JobPart(++done[0], jobs.size(), job.name(), "drawn"));
                        }
                    },
                    stop);
            return grid;
        });
        if (!failures.isEmpty()) {
            throw new JobFailed(JobFailed.Reason.GRID, failures);
        }
        return all.results();
    }

    private List<GridJob> jobs(Plan plan, int trials, long seed) {
        byte[] project = bytes(out -> ProjectFile.write(layout.project(), out, Format.JSON));
        byte[] planned = bytes(out -> PlanFile.write(plan, out, Format.JSON));
        List<GridJob> jobs = new ArrayList<>();
        for (int from = 0; from < trials; from += Math.min(TRIALS_OF_A_SHARD, trials - from)) {
            int to = from + Math.min(TRIALS_OF_A_SHARD, trials - from);
            TrialTask task = new TrialTask(ProgramVersion.ofThisProgram(), project, planned, from, to, seed);
            jobs.add(new GridJob(task.key(), "trials " + (from + 1) + " to " + to, task.bytes()));
        }
        return jobs;
    }

    private interface Writing {
        void to(ByteArrayOutputStream out) throws WriteFailed;
    }

    private static byte[] bytes(Writing writing) {
        ByteArrayOutputStream out = new ByteArrayOutputStream();
        try {
            writing.to(out);
        } catch (WriteFailed e) {
            throw new IllegalStateException("memory takes what is written", e);
        }
        return out.toByteArray();
    }
}
