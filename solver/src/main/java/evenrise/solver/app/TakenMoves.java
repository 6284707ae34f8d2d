package evenrise.solver.app;

import evenrise.model.answer.HandMove;
import evenrise.model.answer.HandRefused;
import evenrise.model.handout.PlanDigest;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.LoadMove;
import evenrise.model.plan.Plan;
import evenrise.model.plan.PlanMoves;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import java.util.Map;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * The moves of a change file put down on the plan that they are for.
 *
 * @param plan with every load where the moves leave it
 * @param pinned the project with each moved load fixed there
 */
record TakenMoves(Plan plan, Project pinned) {

    /** @param earlier the plan that the page was made of */
    static TakenMoves of(Source file, Project project, String projectSha256, Plan earlier, Consumer<String> note) {
        PlanMoves moves = Inputs.told(file.name(), file.moves(), note).value().orElseThrow();
        if (!moves.planSha256().equals(PlanDigest.sha256(earlier))) {
            throw new JobFailed(
                    JobFailed.Reason.INPUT,
                    file.name() + ": its moves begin at a plan that places or sets something else than the one of"
                            + " --from. Give the plan that the page was made of.");
        }
        if (!moves.projectSha256().equals(projectSha256)) {
            note.accept(file.name() + ": the project's file is another than when the page was made. Figures may be"
                    + " others than its sender saw.");
        }
        Plan plan = putDown(file, project, earlier, moves);
        return new TakenMoves(plan, pinned(project, plan, moves));
    }

    private static Plan putDown(Source file, Project project, Plan earlier, PlanMoves moves) {
        try {
            return HandMove.after(Layout.of(project, earlier), moves.moves());
        } catch (HandRefused e) {
            throw new JobFailed(JobFailed.Reason.INPUT, file.name() + ": " + e.getMessage());
        }
    }

    private static Project pinned(Project project, Plan plan, PlanMoves moves) {
        Set<String> moved = moves.moves().stream().map(LoadMove::load).collect(Collectors.toSet());
        Map<String, FixedPlace> places = plan.assignments().stream()
                .filter(each -> moved.contains(each.load()))
                .collect(Collectors.toMap(Assignment::load, TakenMoves::place));
        Function<Load, Load> pin = load -> load.withFixed(places.getOrDefault(load.id(), load.fixed()));
        return project.withLoads(project.loads().stream().map(pin).toList());
    }

    private static FixedPlace place(Assignment at) {
        return FixedPlace.builder()
                .panel(at.panel())
                .slot(at.slot())
                .board(at.board())
                .output(at.output())
                .build();
    }
}
