package evenrise.solver.document;

import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.plan.Review;
import evenrise.model.rules.Verdict;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/** What is wrong, or worth knowing, about a plan. */
final class FindingTables {
    private FindingTables() {}

    static DocumentTable<BrokenRule> rules(Verdict verdict) {
        return DocumentTable.of(
                "rules",
                "Broken rules",
                "",
                List.of(
                        Column.text("rule", "Rule", BrokenRule::rule),
                        Column.text("broken", "What is broken", BrokenRule::message)),
                verdict.violations());
    }

    /** What breaks a limit first; of equal grade in the order of the checks. */
    static DocumentTable<Remark> review(Review review) {
        return new DocumentTable<>(
                "review",
                "Electrical findings",
                "",
                List.of(
                        Column.text("check", "Check", Remark::check),
                        Column.text("grade", "Grade", remark -> grade(remark.grade())),
                        Column.text("place", "Place", Remark::place),
                        Column.text("clause", "Clause", Remark::clause),
                        Column.text("message", "What was found", Remark::message),
                        Column.number("figure", "Figure", "", Remark::figure, ""),
                        Column.number("limit", "Limit", "", Remark::limit, ""),
                        Column.text("unit", "Unit", Remark::unit)),
                review.remarks().stream()
                        .sorted(Comparator.comparing(Remark::grade))
                        .toList(),
                remark -> Optional.of(remark.place()));
    }

    static String grade(Grade grade) {
        return switch (grade) {
            case BREAKS -> "breaks a limit";
            case EXCEEDS_RECOMMENDATION -> "exceeds a recommendation";
            case NOTE -> "note";
            case NOT_CHECKED -> "not checked";
        };
    }
}
