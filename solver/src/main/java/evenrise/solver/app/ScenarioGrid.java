package evenrise.solver.app;

import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.compare.ScenarioPlanner;
import evenrise.solver.compare.ScenarioSearch;
import evenrise.solver.grid.GridAnswer;
import evenrise.solver.grid.GridJob;
import evenrise.solver.grid.StopSignal;
import evenrise.solver.grid.WorkGrid;
import evenrise.solver.portfolio.ScenarioTask;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;

/** Plans scenarios on other machines. */
final class ScenarioGrid implements ScenarioPlanner {
    private final GridAccess access;
    private final Consumer<String> note;
    private final StopSignal stop = new StopSignal();

    ScenarioGrid(GridAccess access, Consumer<String> note) {
        this.access = access;
        this.note = note;
    }

    /** @throws JobFailed where some could not be planned, after all others have landed, or where the workers are lost */
    @Override
    public void run(List<Order> orders, Landing landing) {
        if (orders.isEmpty() || stop.hasCome()) {
            return;
        }
        Map<String, List<Integer>> numbers = new HashMap<>();
        List<GridJob> jobs = new ArrayList<>();
        for (int i = 0; i < orders.size() && !stop.hasCome(); i++) {
            ScenarioTask task = task(orders.get(i).sought().get());
            jobs.add(new GridJob(task.key(), orders.get(i).name(), task.bytes()));
            numbers.computeIfAbsent(task.key(), any -> new ArrayList<>()).add(i);
        }
        List<String> failures = new ArrayList<>();
        WorkGrid grid = Grids.of(Optional.of(access), 1, new ScenarioWork(), note);
        Grids.reached(() -> {
            grid.run(
                    jobs,
                    (job, answer) -> {
                        if (answer instanceof GridAnswer.Failed failed) {
                            failures.add(job.name() + ": " + failed.cause().words() + ": " + failed.words());
                        } else {
                            Plan plan = plan(((GridAnswer.Done) answer).output());
                            numbers.get(job.key()).forEach(number -> landing.land(number, plan));
                        }
                    },
                    stop);
            return grid;
        });
        if (!failures.isEmpty()) {
            throw new JobFailed(JobFailed.Reason.GRID, failures);
        }
    }

    private static ScenarioTask task(ScenarioSearch.Sought sought) {
        List<byte[]> projects = new ArrayList<>(List.of(bytes(sought.project())));
        sought.seated().forEach(each -> projects.add(bytes(each)));
        return new ScenarioTask(
                ProgramVersion.ofThisProgram(),
                sought.projectSha256(),
                projects,
                sought.seed(),
                sought.moves(),
                sought.isSoundEnough());
    }

    private static byte[] bytes(Project project) {
        return ReworkFolder.bytes(out -> ProjectFile.write(project, out, Format.JSON));
    }

    private static Plan plan(byte[] answer) {
        return PlanFile.read(answer, "an answer").value().orElseThrow();
    }

    @Override
    public void stop() {
        stop.stop();
    }
}
