package evenrise.solver.report;

import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.plan.Review;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.Collectors;

/** What the electrical review says, for a screen: gravest first, and what was not checked last. */
final class ReviewText {
    private static final Map<Grade, String> WORDS = Map.of(
            Grade.BREAKS, "breaks a limit",
            Grade.EXCEEDS_RECOMMENDATION, "exceeds a recommendation",
            Grade.NOTE, "note",
            Grade.NOT_CHECKED, "not checked");

    private ReviewText() {}

    /** @param places how many remarks of one check and grade are shown */
    static List<String> lines(Review review, int places, Paint paint) {
        Section section = new Section(paint, "Electrical review");
        String practice = review.practice()
                .map(it -> "by the practice of " + it.name())
                .orElse("by no practice: the project names none (electrical.practice: nec or iec)");
        section.text(counts(review) + ", " + practice + ".");
        for (Grade grade : Grade.values()) {
            Map<String, List<Remark>> checks = review.remarks().stream()
                    .filter(remark -> remark.grade() == grade)
                    .collect(Collectors.groupingBy(Remark::check, TreeMap::new, Collectors.toList()));
            checks.forEach((check, remarks) -> {
                section.text(tone(grade), check + ", " + WORDS.get(grade) + ": " + remarks.size());
                remarks.stream().limit(places).forEach(remark -> section.item(text(remark)));
                if (remarks.size() > places) {
                    section.item("and " + (remarks.size() - places) + " more");
                }
            });
        }
        return section.lines();
    }

    /** The counts alone, and where to read more. */
    static List<String> counts(Review review, Paint paint) {
        return new Section(paint, "Electrical review")
                .text(counts(review) + ". 'evenrise audit' shows them.")
                .lines();
    }

    private static String counts(Review review) {
        return review.count(Grade.BREAKS) + " break a limit, "
                + review.count(Grade.EXCEEDS_RECOMMENDATION) + " exceed a recommendation, "
                + review.count(Grade.NOTE) + " notes, "
                + review.count(Grade.NOT_CHECKED) + " reasons for which something is not checked ("
                + review.checksMade() + " of " + (review.checksMade() + review.checksNotMade()) + " checks made)";
    }

    private static String text(Remark remark) {
        String clause = remark.clause().isEmpty() ? "" : " [" + remark.clause() + "]";
        return remark.message() + clause;
    }

    private static Tone tone(Grade grade) {
        return switch (grade) {
            case BREAKS -> Tone.BAD;
            case EXCEEDS_RECOMMENDATION -> Tone.HEADING;
            case NOTE, NOT_CHECKED -> Tone.PLAIN;
        };
    }
}
