package evenrise.solver.app;

import evenrise.model.check.Nearest;
import evenrise.model.contract.Harmless;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.Rotation;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.rework.Measured;
import evenrise.solver.rework.NightLimits;
import evenrise.solver.rework.OrderOfWork;
import evenrise.solver.rework.WorkOrder;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** One rework from request to written folder. */
final class ReworkJob {
    private static final int[] OTHER_SIZES = {2, 4, 8, 16};

    private final PlannerSource planners;
    private final ReworkRequest asked;
    private final JobControl control;
    private final Watch watch;

    ReworkJob(PlannerSource planners, ReworkRequest asked, JobControl control, Watch watch) {
        this.planners = planners;
        this.asked = asked;
        this.control = control;
        this.watch = watch;
    }

    ReworkResult run() {
        Reading<Project> read = Inputs.project(asked.project(), watch.notes());
        Project subject = read.value().orElseThrow();
        Reading<Plan> asBuilt = Inputs.plan(asked.plan(), subject, watch.notes());
        KeptNotes.sayLeftBehind(asked.plan().name(), asBuilt.notes(), watch.notes());
        Plan built = asBuilt.value().orElseThrow();
        Optional<Measured> readings = asked.measured().map(file -> Readings.of(file, subject, built));
        ReworkFolder folder = ReworkFolder.of(asked.folder(), inputs());
        List<String> notes = new ArrayList<>();
        if (readings.isPresent()) {
            notes.add(
                    readings.get().currents().size() + " of " + subject.loads().size()
                            + " loads have measured currents; the project with them is " + ReworkFolder.MEASURED + ".");
            notes.addAll(readings.get().notes());
            read = Inputs.sound(
                    ReworkFolder.MEASURED,
                    ProjectFile.read(folder.measured(readings.get().in(subject), read.notes()), ReworkFolder.MEASURED));
        }
        Inputs.findings(read)
                .forEach(finding -> watch.notes().accept(asked.project().name() + ": " + finding));
        Effort effort = asked.effort();
        PlanningRequest request = new PlanningRequest(
                Rotation.asBuilt(read.value().orElseThrow(), built),
                Optional.of(built),
                effort.budget(),
                effort.seed(),
                effort.searches());
        return run(read.sha256(), request, notes, folder);
    }

    private List<Source> inputs() {
        List<Source> inputs = new ArrayList<>(List.of(asked.project(), asked.plan()));
        asked.measured().map(Source::file).ifPresent(inputs::add);
        asked.target().ifPresent(inputs::add);
        return inputs;
    }

    private ReworkResult run(String sha256, PlanningRequest request, List<String> notes, ReworkFolder folder) {
        Project project = request.project();
        Plan built = request.from().orElseThrow();
        NightLimits night = night(project, built);
        ReworkSearch search = new ReworkSearch(planners, asked, control, watch);
        ReworkSearch.Found found = asked.target().isPresent()
                ? search.given(sha256, request, target(project))
                : search.search(sha256, request, night, folder);
        watch.at(Stage.ORDERING);
        OrderOfWork work = new OrderOfWork(project, built, found.chosen().plan(), night);
        WorkOrder order = work.withAtLeast(asked.deadAtOnce());
        watch.at(Stage.WRITING);
        folder.write(project, built, found.front(), found.chosen(), order);
        watch.at(Stage.ORDERING);
        return new ReworkResult(
                project,
                notes,
                found.front(),
                found.chosen(),
                found.evaluation(),
                order,
                others(work, order),
                night,
                control.cancellation().isCancelled());
    }

    private Plan target(Project project) {
        Source file = asked.target().orElseThrow();
        return Inputs.plan(file, project, watch.notes()).value().orElseThrow();
    }

    private NightLimits night(Project project, Plan built) {
        NightOptions options = asked.night();
        Set<String> known = new TreeSet<>();
        project.loads().forEach(load -> known.add(load.id()));
        project.shutdownGroups().forEach(group -> known.add(group.id()));
        project.panels().forEach(panel -> known.add(panel.id()));
        for (String id : options.stayLive()) {
            if (!known.contains(id)) {
                throw new JobFailed(
                        JobFailed.Reason.INPUT,
                        "'" + Harmless.shown(id) + "' is to stay live, but is no load, shutdown group or panel of the"
                                + " project."
                                + Nearest.to(id, known)
                                        .map(it -> " Maybe it is '" + it + "'.")
                                        .orElse(""));
            }
        }
        return new NightLimits(
                NightLimits.loads(new ProjectIndex(project), built, options.stayLive()),
                options.mostOut(),
                options.windowsMinutes());
    }

    private static List<WorkOrder> others(OrderOfWork work, WorkOrder order) {
        List<WorkOrder> others = new ArrayList<>();
        WorkOrder last = order;
        for (int size : OTHER_SIZES) {
            if (size > last.cost().mostLockedOut() && last.stages().size() > 1) {
                WorkOrder next = work.withAtLeast(size);
                if (next.cost().outages() < last.cost().outages()
                        || next.cost().stages() < last.cost().stages()) {
                    others.add(next);
                    last = next;
                }
            }
        }
        return others;
    }
}
