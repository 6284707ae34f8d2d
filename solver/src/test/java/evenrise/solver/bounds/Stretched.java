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
        return project.with()
                .timingToleranceSeconds(project.timingToleranceSeconds() * factor)
                .maxDurationSeconds(
                        project.maxDurationSeconds().isPresent()
                                ? OptionalDouble.of(project.maxDurationSeconds().getAsDouble() * factor)
                                : OptionalDouble.empty())
                .boardTypes(project.boardTypes().stream().map(this::type).toList())
                .loads(project.loads().stream().map(this::load).toList())
                .build();
    }

    private BoardType type(BoardType type) {
        return type.with()
                .startDelaySeconds(type.startDelaySeconds().stream()
                        .map(each -> each * factor)
                        .toList())
                .stepSeconds(
                        type.stepSeconds().stream().map(each -> each * factor).toList())
                .build();
    }

    private Load load(Load load) {
        return load.with()
                .inrushHalfMillis(load.inrushHalfMillis() * factor)
                .settleSeconds(load.settleSeconds() * factor)
                .build();
    }

    private Plan plan(Plan plan) {
        List<BoardSetting> settings = plan.boards().stream()
                .map(each -> new BoardSetting(each.id(), each.delaySeconds() * factor, each.betweenSeconds() * factor))
                .toList();
        return plan.with()
                .boards(settings)
                .metrics(Optional.empty())
                .violations(List.of())
                .madeBy(Optional.empty())
                .build();
    }
}
