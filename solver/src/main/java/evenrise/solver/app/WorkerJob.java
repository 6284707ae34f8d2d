package evenrise.solver.app;

import evenrise.solver.grid.GridEngine.WorkerPost;
import evenrise.solver.grid.SiteCertificates;
import evenrise.solver.grid.StopSignal;

/** Takes jobs of others until it is cancelled. */
final class WorkerJob {
    private final PlannerSource planners;
    private final JobControl control;
    private final Watch watch;

    WorkerJob(PlannerSource planners, JobControl control, Watch watch) {
        this.planners = planners;
        this.control = control;
        this.watch = watch;
    }

    void run(WorkerRequest request) {
        QuietLibraries.hush();
        int slots = request.slots().orElse(Runtime.getRuntime().availableProcessors());
        WorkerPost post = new WorkerPost(request.port().orElse(0), slots);
        StopSignal stop = new StopSignal();
        control.cancellation().whenCancelled(stop::stop);
        Grids.reached(() -> {
            Grids.engine().work(Grids.site(request.access()), post, new KindsOfWork(planners), watch.notes(), stop);
            return post;
        });
    }

    static void keys(KeysRequest request) {
        Grids.reached(() -> {
            new SiteCertificates(request.folder()).make(request.machines());
            return request;
        });
    }
}
