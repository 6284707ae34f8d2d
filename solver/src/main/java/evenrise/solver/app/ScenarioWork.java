package evenrise.solver.app;

import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.compare.ScenarioSearch;
import evenrise.solver.compare.Sweep;
import evenrise.solver.grid.GridWork;
import evenrise.solver.grid.StopSignal;
import evenrise.solver.portfolio.ScenarioTask;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Consumer;

/** Plans the scenario of a task: the bytes of the plan's file. */
final class ScenarioWork implements GridWork {
    /** What is to be said of the files, whoever asks has said. */
    private static final Consumer<String> NOBODY = any -> {};

    @Override
    public byte[] output(byte[] input, StopSignal stop) throws InvalidInput {
        try {
            ScenarioTask task = ScenarioTask.of(input);
            AskedVersion.refuseOther(task.softwareVersion());
            List<Project> projects =
                    task.projects().stream().map(ScenarioWork::project).toList();
            ScenarioSearch search = new ScenarioSearch(new ScenarioSearch.Sought(
                    task.projectSha256(),
                    projects.get(0),
                    projects.subList(1, projects.size()),
                    task.moves(),
                    task.seed(),
                    task.isSoundEnough()));
            AtomicReference<Sweep.Found> found = new AtomicReference<>();
            stop.during(() -> found.set(search.found()), search::stop);
            Plan plan = finished(found.get(), task.isSoundEnough());
            return ReworkFolder.bytes(out -> PlanFile.write(plan, out, Format.JSON));
        } catch (IOException | JobFailed e) {
            throw new InvalidInput(e.getMessage());
        }
    }

    static Plan finished(Sweep.Found found, boolean isSoundEnough) {
        return isSoundEnough ? CompareJob.tried(found) : CompareJob.finished(found);
    }

    private static Project project(byte[] bytes) {
        return Inputs.project(Source.stream(new ByteArrayInputStream(bytes), "the project"), NOBODY)
                .value()
                .orElseThrow();
    }
}
