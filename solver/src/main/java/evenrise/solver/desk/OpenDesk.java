package evenrise.solver.desk;

import evenrise.model.file.Problem;
import evenrise.model.file.Reading;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CountDownLatch;

/** A folder's desk from its opening to its closing: the lock, the files, the server. */
public final class OpenDesk implements AutoCloseable {
    private final FolderLock lock;
    private final Keeper keeper;
    private final DeskWork work;
    private final DeskServer server;
    private final List<DeskPart> parts;
    private final CountDownLatch closed = new CountDownLatch(1);

    private OpenDesk(FolderLock lock, Keeper keeper, DeskWork work, List<DeskPart> parts, DeskServer server) {
        this.lock = lock;
        this.keeper = keeper;
        this.work = work;
        this.parts = parts;
        this.server = server;
    }

    /**
     * @param place a folder with one project, or with none yet; or the project's file
     * @param port 0 for a free one
     * @throws JobFailed where it cannot be opened
     */
    public static OpenDesk on(Path place, int port, Jobs jobs) {
        DeskFiles files = DeskFiles.of(place);
        FolderLock lock = FolderLock.of(files.folder());
        try {
            List<String> told = new ArrayList<>();
            Desk desk = new Desk(files, first(files, told), told);
            DeskWork work = new DeskWork(desk, files, jobs);
            List<DeskPart> parts = DeskParts.of(work, desk, files, jobs);
            DeskServer server = new DeskServer(port, desk, new DeskRoutes(parts));
            Keeper keeper = new Keeper(files, desk, jobs);
            keeper.start();
            server.start();
            return new OpenDesk(lock, keeper, work, parts, server);
        } catch (RuntimeException e) {
            lock.close();
            throw e;
        }
    }

    private static Optional<DeskState> first(DeskFiles files, List<String> told) {
        if (!files.hasProject()) {
            return Optional.empty();
        }
        Reading<Project> read = files.readProject();
        Project project = read.value().orElseThrow(() -> failed(files.project(), read.problems()));
        DeskState bare = DeskState.unplanned(project, read.notes());
        read.problems().forEach(each -> told.add(each.message()));
        if (!files.hasPlan()) {
            return Optional.of(bare);
        }
        Reading<Plan> plan = files.readPlan(project);
        // A plan that the project has left behind is not written over: whoever opened the desk may still want it.
        Plan sound = plan.value().orElseThrow(() -> failed(files.plan(), plan.problems()));
        return Optional.of(bare.withPlan(sound).under(project, read.notes()));
    }

    private static JobFailed failed(Path file, List<Problem> problems) {
        return new JobFailed(
                JobFailed.Reason.INPUT,
                problems.stream()
                        .map(each -> each.message().contains(file.toString())
                                ? each.message()
                                : file + ": " + each.message())
                        .toList());
    }

    /** To be opened in a browser of this machine; it opens once. */
    public String address() {
        return server.address();
    }

    /** Returns when the desk is closed and everything is written. */
    public void await() {
        try {
            closed.await();
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public synchronized void close() {
        if (closed.getCount() == 0) {
            return;
        }
        server.close();
        work.close();
        parts.forEach(DeskPart::close);
        keeper.close();
        lock.close();
        closed.countDown();
    }
}
