package evenrise.solver.document;

import evenrise.model.contract.Words;
import evenrise.model.plan.Grade;
import evenrise.model.plan.HeldTo;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.plan.Review;
import evenrise.model.rules.Layout;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/** Every figure of the electrical review beside its limit: the tightest first, then those that nothing limits. */
final class CheckTable {
    private static final String NOTE =
            "Every figure that the electrical review computes. Used: the part of the limit that"
                    + " is used, above 100 % where it is passed; left: what remains to it. A figure without a limit is told for"
                    + " information, or the project does not state what would limit it. Dips that may last only so long (ITI,"
                    + " SEMI F47, ride-through) are judged by depth and time together, among the electrical findings; what could"
                    + " not be checked stands there, too. Told as: how the electrical findings take it that a limit is passed."
                    + " Clauses are pointers to look up.";

    private CheckTable() {}

    static DocumentTable<Quantity> of(Layout layout, Review review) {
        List<Quantity> tightestFirst = Stream.concat(
                        review.quantities().stream()
                                .filter(each -> each.limit().isPresent())
                                .sorted(Comparator.comparingDouble((Quantity each) ->
                                                each.usedPercent().orElseThrow())
                                        .reversed()),
                        review.quantities().stream().filter(each -> each.limit().isEmpty()))
                .toList();
        return new DocumentTable<>(
                "checks",
                "Electrical checks: every figure beside its limit",
                NOTE,
                List.of(
                        Column.text("place", "Place", Quantity::place),
                        Column.text("name", "Figure", Quantity::name),
                        Column.number("value", "Value", "", Quantity::value),
                        Column.text("unit", "Unit", Quantity::unit),
                        Column.text("held", "Is to be", CheckTable::side),
                        Column.number("limit", "Limit", "", Quantity::limit, ""),
                        Column.number("used", "Used", "%", CheckTable::used, "")
                                .calculated(row -> used(row).isEmpty() ? "" : formula(row)),
                        Column.number("left", "Left", "", Quantity::left, "")
                                .calculated(row -> row.limit().isEmpty()
                                        ? ""
                                        : isAtMost(row) ? "[limit]-[value]" : "[value]-[limit]"),
                        Column.text("told", "Told as", each -> told(each, review)),
                        Column.text("clause", "Limit by", Quantity::clause),
                        Column.text("check", "Check", Quantity::check),
                        Column.text("how", "How", each -> each.how().orElse(""))),
                tightestFirst,
                row -> layout.placement(row.place()).map(placement -> placement.id()));
    }

    /** How the review takes it that a limit is passed, the gravest first; empty where it is kept. */
    private static String told(Quantity figure, Review review) {
        return figure.isPassed()
                ? review.remarks().stream()
                        .filter(each -> each.check().equals(figure.check()) && each.grade() != Grade.NOT_CHECKED)
                        .filter(each -> isAbout(each, figure))
                        .map(Remark::grade)
                        .min(Comparator.naturalOrder())
                        .map(Words::word)
                        .orElse("")
                : "";
    }

    private static boolean isAbout(Remark remark, Quantity figure) {
        return remark.place().equals(figure.place())
                || remark.clause().equals(figure.clause())
                || remark.subjects().stream().anyMatch(subject -> subject.id().equals(figure.place()));
    }

    private static boolean isAtMost(Quantity figure) {
        return figure.heldTo() == HeldTo.AT_MOST;
    }

    private static String side(Quantity figure) {
        return figure.limit().isEmpty() ? "" : isAtMost(figure) ? "at most" : "at least";
    }

    /** Empty, too, where nothing of it can be told in percent: a limit of nothing, or nothing where something is needed. */
    private static OptionalDouble used(Quantity figure) {
        OptionalDouble used = figure.usedPercent();
        return Double.isFinite(used.orElse(0)) ? used : OptionalDouble.empty();
    }

    private static String formula(Quantity figure) {
        if (used(figure).orElse(0) == 0) {
            return "";
        }
        return isAtMost(figure) ? "100*[value]/[limit]" : "100*[limit]/[value]";
    }
}
