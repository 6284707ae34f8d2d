package evenrise.model.rules;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.PlanBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.MadeBy;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.util.List;

/** Judges a plan of which a test states only panel, slot, board and output: phases and times are filled in first. */
final class Judging {
    static final MadeBy MADE_BY = MadeBy.builder()
            .softwareVersion("test")
            .projectSha256("0")
            .seed(1)
            .threads(1)
            .movesAllowed(1)
            .build();

    /** Bounds that hold for any project. */
    static final Bounds NOTHING_PROVEN = Bounds.builder()
            .objective(0)
            .peakInrushAmps(0)
            .supplyDeviationAmps(0)
            .panelDeviationsAmps(0)
            .durationSeconds(0)
            .build();

    private Judging() {}

    /** Messages of {@code rule}, after a look that no other rule is broken. */
    static List<String> broken(String rule, ProjectBuilder project, PlanBuilder plan) {
        Project built = project.build();
        return only(rule, Referee.judge(built, finished(built, plan)));
    }

    /** The same without filling in: the plan as a hand has left it. */
    static List<String> brokenAsWritten(String rule, ProjectBuilder project, PlanBuilder plan) {
        return only(rule, Referee.judge(project.build(), plan.build()));
    }

    /** The verdict on the completed plan. */
    static Verdict verdict(ProjectBuilder project, PlanBuilder plan) {
        Project built = project.build();
        return Referee.judge(built, finished(built, plan));
    }

    static Plan finished(Project project, PlanBuilder plan) {
        return PlanFinisher.finish(project, plan.build(), MADE_BY, NOTHING_PROVEN);
    }

    private static List<String> only(String rule, Verdict verdict) {
        assertThat(verdict.violations()).extracting(BrokenRule::rule).allMatch(rule::equals);
        return verdict.violations().stream().map(BrokenRule::message).toList();
    }
}
