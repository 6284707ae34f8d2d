package evenrise.solver.browser;

import evenrise.model.evaluation.Evaluation;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.document.Document;
import evenrise.solver.document.Documents;
import evenrise.solver.document.Imprint;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Planner;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** Documents of demo projects, each planned once and briefly. */
public final class DrawnPages {
    /** A project, its plan as the referee sees it, and its documents. */
    public record Planned(Layout layout, Document document) {}

    private static final Map<String, Planned> DONE = new ConcurrentHashMap<>();

    private DrawnPages() {}

    public static Planned of(String dataset) {
        return DONE.computeIfAbsent(dataset, name -> of(project(name), 5000));
    }

    /** With a plan kept beside the tests, so that a better search does not change a picture. */
    public static Planned kept(String dataset) {
        Path plan = Path.of("src/test/resources/pictures", dataset + ".plan.json");
        return of(Layout.of(project(dataset), PlanFile.read(plan).value().orElseThrow()));
    }

    private static Project project(String dataset) {
        return ProjectFile.read(Path.of("../datasets", dataset, "project.json"))
                .value()
                .orElseThrow();
    }

    /** The same project and number of moves always give the same. */
    public static Planned of(Project project, long moves) {
        Plan plan = new Planner(
                        new PlanningRequest(project, Optional.empty(), new Budget.Moves(moves), 1, 1), any -> {})
                .plan()
                .plan();
        return of(Layout.of(project, plan));
    }

    public static Planned of(Layout layout) {
        Imprint imprint =
                new Imprint(layout.project().name(), "A", "2026-01-02", "0123456789abcdef".repeat(4), "0.0.0");
        return new Planned(
                layout,
                Documents.of(
                        imprint,
                        Evaluation.of(layout, () -> ProvenBounds.of(layout.project())),
                        Optional.empty(),
                        List.of()));
    }
}
