package evenrise.solver.app;

import evenrise.model.file.Format;
import evenrise.model.file.PlanFile;
import evenrise.model.file.ProjectFile;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.grid.GridJob;
import evenrise.solver.grid.StopSignal;
import evenrise.solver.grid.WorkGrid;
import evenrise.solver.portfolio.PlansFound;
import evenrise.solver.portfolio.ReworkTask;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** Searches around a plan as built by many seeds, here or on other machines; what they find comes together. */
final class ReworkSeeds {
    private static final String ANSWERS = "answers";
    private static final String ENDING = ".plans";
    private static final KeptAnswers.Words<PlansFound> WORDS =
            new KeptAnswers.Words<>("search", found -> found.plans().size() + " plans near the one as built");

    private final PlannerSource planners;
    private final ReworkRequest asked;
    private final ManySeeds manySeeds;
    private final JobControl control;
    private final Watch watch;

    ReworkSeeds(PlannerSource planners, ReworkRequest asked, ManySeeds manySeeds, JobControl control, Watch watch) {
        this.planners = planners;
        this.asked = asked;
        this.manySeeds = manySeeds;
        this.control = control;
        this.watch = watch;
    }

    /** The same as each seed alone would find, one after another. */
    AroundBuilt.Found search(PlanningRequest request, Project held, Plan built) {
        byte[] project = bytes(request.project());
        byte[] heldBytes = bytes(held);
        byte[] from = bytes(request.from().orElseThrow());
        byte[] builtBytes = bytes(built);
        long moves = ManySeeds.moves(asked.effort());
        List<GridJob> jobs = new ArrayList<>();
        for (long seed : manySeeds.seedsOf(asked.effort())) {
            ReworkTask each =
                    new ReworkTask(ProgramVersion.ofThisProgram(), project, heldBytes, from, builtBytes, seed, moves);
            jobs.add(new GridJob(each.key(), "seed " + seed, each.bytes()));
        }
        QuietLibraries.hush();
        try (KeptAnswers<PlansFound> answers =
                KeptAnswers.in(asked.folder().resolve(ANSWERS), ENDING, PlansFound::of)) {
            List<PlansFound> found = found(answers, jobs);
            if (answers.landed() == jobs.size()) {
                answers.clear();
            }
            return together(found, request, built);
        }
    }

    private List<PlansFound> found(KeptAnswers<PlansFound> answers, List<GridJob> jobs) {
        StopSignal stop = new StopSignal();
        List<GridJob> open = answers.open(jobs);
        control.cancellation().whenCancelled(stop::stop);
        watch.at(Stage.SEARCHING);
        WorkGrid grid =
                Grids.of(manySeeds.grid(), ManySeeds.slots(asked.effort()), new ReworkWork(planners), watch.notes());
        answers.run(grid, open, stop, WORDS, watch::part);
        answers.failures(jobs).forEach(why -> watch.notes().accept(why + ". The same command tries it again."));
        if (answers.landed() == 0 && !control.cancellation().isCancelled()) {
            throw new JobFailed(JobFailed.Reason.INPUT, "no search around the plan as built has ended.");
        }
        return jobs.stream().flatMap(job -> answers.found(job.key()).stream()).toList();
    }

    /** Proven is what any of them has proven: it holds for all. */
    private static AroundBuilt.Found together(List<PlansFound> found, PlanningRequest request, Plan built) {
        List<Plan> plans = new ArrayList<>(List.of(built));
        found.stream()
                .flatMap(each -> each.plans().stream())
                .map(bytes -> PlanFile.read(bytes, "an answer").value().orElseThrow())
                .filter(plan -> !plans.contains(plan))
                .forEach(plans::add);
        long moves = found.stream().mapToLong(PlansFound::moves).sum();
        double proven =
                found.stream().mapToDouble(PlansFound::provenObjective).max().orElse(0);
        return new AroundBuilt.Found(
                new PlanningOutcome(built, moves, 0, OptionalDouble.empty(), proven), plans, moves);
    }

    private static byte[] bytes(Plan plan) {
        return ReworkFolder.bytes(out -> PlanFile.write(plan, out, Format.JSON));
    }

    private static byte[] bytes(Project project) {
        return ReworkFolder.bytes(out -> ProjectFile.write(project, out, Format.JSON));
    }
}
