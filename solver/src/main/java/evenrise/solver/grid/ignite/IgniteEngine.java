package evenrise.solver.grid.ignite;

import evenrise.solver.grid.GridEngine;
import evenrise.solver.grid.GridSite;
import evenrise.solver.grid.GridWork;
import evenrise.solver.grid.StopSignal;
import evenrise.solver.grid.WorkGrid;
import java.util.function.Consumer;

/** Ignite as the engine. */
public final class IgniteEngine implements GridEngine {
    @Override
    public WorkGrid driver(GridSite site, Consumer<String> said) {
        return new IgniteGrid(site, said);
    }

    @Override
    public void work(GridSite site, WorkerPost post, GridWork work, Consumer<String> said, StopSignal stop) {
        new IgniteWorker(site, post, work, said, stop).run();
    }
}
