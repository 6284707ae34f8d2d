package evenrise.solver.app;

import evenrise.solver.grid.GridEngine;
import evenrise.solver.grid.GridHosts;
import evenrise.solver.grid.GridLog;
import evenrise.solver.grid.GridSite;
import evenrise.solver.grid.GridUnavailable;
import evenrise.solver.grid.GridWork;
import evenrise.solver.grid.LocalGrid;
import evenrise.solver.grid.SiteKeys;
import evenrise.solver.grid.WorkGrid;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.function.Consumer;
import java.util.function.Supplier;

/** Slots for jobs: this process's own, or those of others. */
final class Grids {
    private Grids() {}

    /** @param slots of this process, where nobody else takes part */
    static WorkGrid of(Optional<GridAccess> access, int slots, GridWork work, Consumer<String> note) {
        return access.map(each -> reached(() -> engine().driver(site(each), note)))
                .orElseGet(() -> new LocalGrid(work, slots));
    }

    static GridEngine engine() {
        return ServiceLoader.load(GridEngine.class)
                .findFirst()
                .orElseThrow(() -> new JobFailed(
                        JobFailed.Reason.GRID,
                        "this package is without the part that joins other machines (evenrise-grid)."));
    }

    static GridSite site(GridAccess access) {
        GridHosts hosts;
        try {
            hosts = GridHosts.of(access.hosts());
        } catch (IllegalArgumentException e) {
            throw new JobFailed(JobFailed.Reason.REQUEST, e.getMessage() + ".");
        }
        Optional<GridLog> log = access.log()
                .map(each -> new GridLog(
                        each.file(), GridLog.Level.valueOf(each.level().name())));
        return new GridSite(hosts, access.keys().map(SiteKeys::of), GridSoftware.ofThisProgram(), log);
    }

    /** Has what cannot be reached end the job with the words for it. */
    static <T> T reached(Supplier<T> work) {
        try {
            return work.get();
        } catch (GridUnavailable e) {
            throw new JobFailed(JobFailed.Reason.GRID, e.getMessage());
        }
    }
}
