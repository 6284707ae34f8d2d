package evenrise.solver.bounds;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aProject;

import evenrise.model.LoadBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.SupplyBuilder;
import evenrise.model.project.Project;

/** Loads whose inrush is gone at once, each on a board of its own: nothing but who sits where, and in what order, counts. */
public final class Flashes {
    private Flashes() {}

    public static LoadBuilder flash(String id, int poles, double runningAmps, double baseAmps, double excessAmps) {
        return aLoad(id)
                .poles(poles)
                .runningAmps(runningAmps)
                .idleAmps(baseAmps / Math.sqrt(2))
                .inrushPeakAmps(baseAmps + excessAmps)
                .inrushHalfMillis(0.001);
    }

    public static Project project(SupplyBuilder supply, LoadBuilder... loads) {
        ProjectBuilder project = aProject()
                .supply(supply)
                .boardTypes(aBoardType("one")
                        .outputs(1)
                        .startDelaySeconds(0, 1, 2, 3, 4, 5, 6, 7)
                        .stepSeconds(1))
                .loads(loads);
        for (int i = 1; i <= loads.length; i++) {
            project.boards(aBoard("B" + i).type("one"));
        }
        return project.build();
    }
}
