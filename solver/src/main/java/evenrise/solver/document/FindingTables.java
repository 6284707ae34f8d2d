package evenrise.solver.document;

import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.plan.Review;
import evenrise.model.rules.Verdict;
import evenrise.solver.document.Grid.Column;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;

/** What is wrong, or worth knowing, about a plan. */
final class FindingTables {
    private FindingTables() {}

    static Grid rules(Verdict verdict) {
        return new Grid(
                "rules",
                "Broken rules",
                List.of(Column.text("Rule"), Column.text("What is broken")),
                verdict.violations().stream()
                        .map(each -> List.<Object>of(each.rule(), each.message()))
                        .toList());
    }

    /** What breaks a limit first; of equal grade in the order of the checks. */
    static Grid review(Review review) {
        return new Grid(
                "review",
                "Electrical findings",
                List.of(
                        Column.text("Check"),
                        Column.text("Grade"),
                        Column.text("Place"),
                        Column.text("Clause"),
                        Column.text("What was found"),
                        Column.number("Figure", ""),
                        Column.number("Limit", ""),
                        Column.text("Unit")),
                review.remarks().stream()
                        .sorted(Comparator.comparing(Remark::grade))
                        .map(remark -> List.<Object>of(
                                remark.check(),
                                grade(remark.grade()),
                                remark.place(),
                                remark.clause(),
                                remark.message(),
                                cell(remark.figure()),
                                cell(remark.limit()),
                                remark.unit()))
                        .toList());
    }

    static String grade(Grade grade) {
        return switch (grade) {
            case BREAKS -> "breaks a limit";
            case EXCEEDS_RECOMMENDATION -> "exceeds a recommendation";
            case NOTE -> "note";
            case NOT_CHECKED -> "not checked";
        };
    }

    private static Object cell(OptionalDouble figure) {
        return figure.isPresent() ? (Object) figure.getAsDouble() : "";
    }
}
