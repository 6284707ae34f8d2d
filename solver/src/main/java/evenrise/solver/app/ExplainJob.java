package evenrise.solver.app;

import evenrise.model.answer.Alternatives;
import evenrise.model.answer.PeakAnswer;
import evenrise.model.plan.Plan;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.solver.report.PeakAnswerText;
import evenrise.solver.report.RuleAnswerText;
import java.util.List;
import java.util.Locale;
import java.util.Optional;

/** Questions about a plan. */
final class ExplainJob {
    private static final int LOADS_AT_THE_PEAK = 10;
    private static final int NEAR = 5;

    private final Watch watch;

    ExplainJob(Watch watch) {
        this.watch = watch;
    }

    ExplainResult load(ExplainRequest request) {
        AuditJob.Subject subject = AuditJob.Subject.of(request.project(), request.plan(), watch.notes());
        Layout layout = subject.layout();
        if (layout.placement(request.load()).isEmpty()) {
            throw new JobFailed(JobFailed.Reason.REQUEST, missing(request.load(), layout));
        }
        Optional<Plan> earlier =
                request.from().map(source -> Inputs.earlierPlan(source, subject.project(), watch.notes()));
        watch.at(Stage.JUDGING);
        return new ExplainResult(
                layout, new Alternatives(layout, earlier).answer(request.load(), request.everyExchange()));
    }

    Listing peak(AuditRequest request) {
        AuditJob.Subject subject = AuditJob.Subject.of(request.project(), request.plan(), watch.notes());
        Optional<Plan> earlier =
                request.from().map(source -> Inputs.earlierPlan(source, subject.project(), watch.notes()));
        watch.at(Stage.JUDGING);
        Alternatives alternatives = new Alternatives(subject.layout(), earlier);
        PeakAnswer answer = alternatives.peak(LOADS_AT_THE_PEAK);
        return style -> PeakAnswerText.lines(answer, alternatives.layout(), alternatives.verdict(), style.paint());
    }

    /** What a rule asks, and how the plan keeps it. */
    Listing rule(AuditRequest request, String rule) {
        String paragraph = RuleBook.paragraph(rule)
                .orElseThrow(() -> new JobFailed(
                        JobFailed.Reason.REQUEST,
                        "no rule is called '" + rule + "'. Rules: " + String.join(", ", RuleBook.rules()) + "."));
        AuditJob.Subject subject = AuditJob.Subject.of(request.project(), request.plan(), watch.notes());
        watch.at(Stage.JUDGING);
        Verdict verdict = Referee.judge(subject.layout());
        return style -> RuleAnswerText.lines(rule, paragraph, subject.layout(), verdict, style.isFull(), style.paint());
    }

    private static String missing(String load, Layout layout) {
        if (layout.index().load(load).isPresent()) {
            return "the plan places load '" + load + "' nowhere. Maybe plan the project anew.";
        }
        String asked = load.toLowerCase(Locale.ROOT);
        List<String> near = layout.project().loads().stream()
                .filter(each -> each.id().toLowerCase(Locale.ROOT).contains(asked)
                        || each.name().toLowerCase(Locale.ROOT).contains(asked))
                .map(each -> "'" + each.id() + "'")
                .limit(NEAR)
                .toList();
        return "the project has no load '" + load + "'."
                + (near.isEmpty() ? "" : " Maybe it is " + String.join(" or ", near) + ".");
    }
}
