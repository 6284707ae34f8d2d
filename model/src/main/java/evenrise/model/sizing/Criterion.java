package evenrise.model.sizing;

import evenrise.model.contract.Decimals;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Quantity;
import evenrise.model.plan.Remark;
import evenrise.model.plan.Review;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;

/**
 * One thing that is asked of a size, by a check of the electrical review.
 *
 * @param kinds of the check's remarks that count; all where empty
 * @param figure beginning of the names of the check's figures; where none is there, the check could not be made
 * @param mostPercent that such a figure may be, where no remark holds it against a limit
 * @param isNeeded whether nothing is proposed where the check could not be made
 * @param needs what the project is to state then
 * @param isUnlessNotChecked whether a figure alone is no answer where the check says that it was not made
 * @param isOfBranch whether a voltage drop in all is held against a branch only where it has a part in it
 */
record Criterion(
        String name,
        Set<String> checks,
        Set<String> kinds,
        Optional<String> figure,
        OptionalDouble mostPercent,
        String limitWhy,
        boolean isNeeded,
        String needs,
        boolean isUnlessNotChecked,
        boolean isOfBranch) {

    private static final String IN_ALL = "voltage drop in all";
    private static final String OF_BRANCH = "voltage drop of the branch";

    /** What lies before a branch may take of the drop in all, before a larger branch is no cure for it. */
    static final double MOST_BEFORE_PERCENT = 4;

    /** How one size stands. */
    record Verdict(boolean isAsked, boolean isKept, String text) {}

    static Criterion of(String name, Set<String> checks, Set<String> kinds) {
        return new Criterion(
                name, checks, kinds, Optional.empty(), OptionalDouble.empty(), "", false, "", false, false);
    }

    Criterion shownBy(String names) {
        return new Criterion(
                name,
                checks,
                kinds,
                Optional.of(names),
                mostPercent,
                limitWhy,
                isNeeded,
                needs,
                isUnlessNotChecked,
                isOfBranch);
    }

    Criterion needed(String what) {
        return new Criterion(
                name, checks, kinds, figure, mostPercent, limitWhy, true, what, isUnlessNotChecked, isOfBranch);
    }

    Criterion atMost(double percent, String why) {
        return new Criterion(
                name,
                checks,
                kinds,
                figure,
                OptionalDouble.of(percent),
                why,
                isNeeded,
                needs,
                isUnlessNotChecked,
                isOfBranch);
    }

    Criterion unlessNotChecked() {
        return new Criterion(name, checks, kinds, figure, mostPercent, limitWhy, isNeeded, needs, true, isOfBranch);
    }

    Criterion ofBranch() {
        return new Criterion(
                name, checks, kinds, figure, mostPercent, limitWhy, isNeeded, needs, isUnlessNotChecked, true);
    }

    /** Whether so little is left for the branch that its size is not what is wrong. */
    private boolean isLostBefore(Remark remark, Review review) {
        OptionalDouble all = figure(remark.place(), IN_ALL, review);
        OptionalDouble branch = figure(remark.place(), OF_BRANCH, review);
        return isOfBranch
                && all.isPresent()
                && branch.isPresent()
                && remark.figure().equals(all)
                && all.getAsDouble() - branch.getAsDouble() > MOST_BEFORE_PERCENT;
    }

    private static OptionalDouble figure(String place, String name, Review review) {
        return review.quantities().stream()
                .filter(each -> each.place().equals(place) && each.name().equals(name))
                .mapToDouble(Quantity::value)
                .findFirst();
    }

    private boolean isLeftOut(String place, Review review) {
        return isUnlessNotChecked
                && review.remarks().stream()
                        .filter(each -> each.grade() == Grade.NOT_CHECKED && checks.contains(each.check()))
                        .anyMatch(each -> each.subjects().stream()
                                .anyMatch(subject -> subject.id().equals(place)));
    }

    Verdict of(String place, Review review) {
        Optional<Remark> against = review.remarks().stream()
                .filter(each -> each.place().equals(place) && checks.contains(each.check()))
                .filter(each -> each.grade() == Grade.BREAKS || each.grade() == Grade.EXCEEDS_RECOMMENDATION)
                .filter(each -> kinds.isEmpty() || kinds.contains(each.kind()))
                .filter(each -> !isLostBefore(each, review))
                .findFirst();
        if (against.isPresent()) {
            return new Verdict(true, false, statement(against.get()));
        }
        if (figure.isEmpty()) {
            return new Verdict(true, true, "");
        }
        List<Quantity> figures = review.quantities().stream()
                .filter(each -> each.place().equals(place) && each.name().startsWith(figure.get()))
                .toList();
        if (figures.isEmpty() || isLeftOut(place, review)) {
            return new Verdict(false, !isNeeded, "");
        }
        double greatest = figures.stream().mapToDouble(Quantity::value).max().orElseThrow();
        boolean isKept = mostPercent.isEmpty() || greatest <= mostPercent.getAsDouble() + 1e-9;
        return new Verdict(
                true,
                isKept,
                figures.stream()
                                .filter(each -> mostPercent.isEmpty() || each.value() == greatest)
                                .limit(2)
                                .map(Criterion::text)
                                .collect(Collectors.joining("; "))
                        + (mostPercent.isPresent()
                                ? "; at most " + Decimals.toThousandths(mostPercent.getAsDouble()) + " % " + limitWhy
                                : ""));
    }

    /** Without its cure, which is what is proposed here; with its clause. */
    private static String statement(Remark remark) {
        String cure = " Maybe " + remark.cure() + ".";
        String message = remark.message().endsWith(cure)
                ? remark.message().substring(0, remark.message().length() - cure.length())
                : remark.message();
        String bare = message.endsWith(".") ? message.substring(0, message.length() - 1) : message;
        return bare + (remark.clause().isEmpty() ? "" : " (" + remark.clause() + ")");
    }

    private static String text(Quantity figure) {
        return figure.name() + " " + Decimals.fixed(figure.value(), 2)
                + (figure.unit().isEmpty() ? "" : " " + figure.unit())
                + figure.how().map(how -> ": " + how).orElse("");
    }
}
