package evenrise.solver.bounds;

import evenrise.model.ARandomProject;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** A project and its plan with every time multiplied: the same peaks, but times that have no common divisor. */
final class Stretched {
    private final double factor;

    private Stretched(double factor) {
        this.factor = factor;
    }

    static ARandomProject.Planted by(double factor, ARandomProject.Planted planted) {
        Stretched it = new Stretched(factor);
        return new ARandomProject.Planted(it.project(planted.project()), it.plan(planted.plan()));
    }

    private Project project(Project project) {
        return new Project(
                project.format(),
                project.name(),
                project.supply(),
                project.timingToleranceSeconds() * factor,
                project.maxDurationSeconds().isPresent()
                        ? OptionalDouble.of(project.maxDurationSeconds().getAsDouble() * factor)
                        : OptionalDouble.empty(),
                project.panels(),
                project.boardTypes().stream().map(this::type).toList(),
                project.boards(),
                project.shutdownGroups(),
                project.loads().stream().map(this::load).toList(),
                project.objective());
    }

    private BoardType type(BoardType type) {
        return new BoardType(
                type.id(),
                type.outputs(),
                type.startDelaySeconds().stream().map(each -> each * factor).toList(),
                type.stepSeconds().stream().map(each -> each * factor).toList(),
                type.price());
    }

    private Load load(Load load) {
        return new Load(
                load.id(),
                load.name(),
                load.role(),
                load.poles(),
                load.breakerAmps(),
                load.curve(),
                load.switched(),
                load.runningAmps(),
                load.idleAmps(),
                load.powerFactor(),
                load.thirdHarmonic(),
                load.inrushPeakAmps(),
                load.inrushHalfMillis() * factor,
                load.settleSeconds() * factor,
                load.shutdownGroup(),
                load.comesAfter(),
                load.panels(),
                load.apartFrom(),
                load.samePhaseAs(),
                load.fixed());
    }

    private Plan plan(Plan plan) {
        List<BoardSetting> settings = plan.boards().stream()
                .map(each ->
                        new BoardSetting(each.id(), each.startDelaySeconds() * factor, each.stepSeconds() * factor))
                .toList();
        return new Plan(
                plan.format(),
                plan.cautions(),
                settings,
                plan.assignments(),
                Optional.empty(),
                List.of(),
                Optional.empty());
    }
}
