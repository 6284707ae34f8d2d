package evenrise.solver.app;

import evenrise.model.check.Nearest;
import evenrise.model.contract.Harmless;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.project.TitleBlock;
import evenrise.model.rules.ProjectIndex;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.report.WorkSheets;
import evenrise.solver.rework.BuiltPlant;
import evenrise.solver.rework.NightLimits;
import evenrise.solver.rework.OrderChoice;
import evenrise.solver.rework.OtherOrders;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;

/** One rework from request to written folder. */
final class ReworkJob {
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
        ReworkStart start = new ReworkStart(asked, watch.notes());
        ReworkFolder folder = ReworkFolder.of(asked.folder(), inputs(asked));
        start.files().forEach(folder::add);
        if (asked.resumes() && asked.target().isPresent()) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "towards a plan that is given nothing is searched for. Give --to or --resume, not both.");
        }
        if (asked.resumes() && asked.manySeeds().isPresent()) {
            throw new JobFailed(
                    JobFailed.Reason.REQUEST,
                    "searches by many seeds or on other machines go on where they ended, without --resume.");
        }
        TitleBlock title = titleBlock();
        NightLimits night = night(start.plant());
        Optional<ReworkCheckpoint> kept =
                asked.target().isPresent() || asked.manySeeds().isPresent()
                        ? Optional.empty()
                        : Optional.of(new ReworkCheckpoint(asked, start, watch.notes()));
        ReworkDraft draft = searched(start, title, night, kept);
        watch.at(Stage.ORDERING);
        ReworkSearch.Found found = draft.found();
        OrderChoice choice = draft.choice(found.chosen());
        WorkSheets sheets = draft.sheets(choice.order());
        watch.at(Stage.WRITING);
        folder.write(found.front(), found.chosen(), sheets, draft.imprint());
        kept.ifPresent(it -> it.ends(control.cancellation().isCancelled()));
        watch.at(Stage.ORDERING);
        return new ReworkResult(
                start.project(),
                start.notes(),
                found.front(),
                found.chosen(),
                found.evaluation(),
                sheets,
                OtherOrders.of(choice),
                draft.night(),
                control.cancellation().isCancelled());
    }

    /** The search alone; nothing is written. */
    ReworkDraft draft() {
        ReworkStart start = new ReworkStart(asked, watch.notes());
        return searched(start, titleBlock(), night(start.plant()), Optional.empty());
    }

    private ReworkDraft searched(
            ReworkStart start, TitleBlock title, NightLimits night, Optional<ReworkCheckpoint> kept) {
        Effort effort = asked.manySeeds()
                .map(manySeeds -> manySeeds.ofEach(asked.effort()))
                .orElse(asked.effort());
        PlanningRequest request = new PlanningRequest(
                start.project(), Optional.of(start.built()), effort.budget(), effort.seed(), effort.searches());
        BuiltPlant plant = start.plant();
        ReworkSearch search = new ReworkSearch(planners, asked, control, watch);
        ReworkSearch.Found found = asked.target().isPresent()
                ? search.given(start.sha256(), request, plant, start.judged(target(start.project())))
                : search.search(start.sha256(), request, plant, night, kept);
        return new ReworkDraft(
                asked, start, found, night, title, control.cancellation().isCancelled());
    }

    static List<Source> inputs(ReworkRequest asked) {
        List<Source> inputs = new ArrayList<>(List.of(asked.project(), asked.plan()));
        asked.measured().map(Source::file).ifPresent(inputs::add);
        asked.target().ifPresent(inputs::add);
        asked.sheets().titleBlock().ifPresent(inputs::add);
        asked.was().ifPresent(inputs::add);
        asked.spares().table().map(Source::file).ifPresent(inputs::add);
        return inputs;
    }

    private TitleBlock titleBlock() {
        return asked.sheets()
                .titleBlock()
                .map(source -> Inputs.told(source.name(), source.titleBlock(), watch.notes())
                        .value()
                        .orElseThrow())
                .orElse(TitleBlock.NONE);
    }

    private Plan target(Project project) {
        Source file = asked.target().orElseThrow();
        return Inputs.plan(file, project, watch.notes()).value().orElseThrow();
    }

    private NightLimits night(BuiltPlant plant) {
        Project project = plant.project();
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
                NightLimits.loads(new ProjectIndex(project), plant.plan(), options.stayLive()),
                options.mostOut(),
                options.windowsMinutes());
    }
}
