package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.plan.Review;
import evenrise.model.project.Project;
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

    /** @param places how many remarks of one check and grade are shown, equal ones as one */
    static List<String> folded(Review review, Project project, int places, Paint paint) {
        return lines(review, Folded.of(review.remarks(), project), places, paint);
    }

    /** Every remark by itself. */
    static List<String> all(Review review, Paint paint) {
        return lines(review, Folded.unfolded(review.remarks()), Integer.MAX_VALUE, paint);
    }

    private static List<String> lines(Review review, List<Folded<Remark>> folded, int places, Paint paint) {
        Section section = new Section(paint, "Electrical review");
        String practice = review.practice()
                .map(it -> "by the practice of " + it.name())
                .orElse("by no practice: the project names none (electrical.practice: nec or iec)");
        section.text(counts(review) + ", " + practice + ".");
        for (Grade grade : Grade.values()) {
            Map<String, List<Folded<Remark>>> checks = folded.stream()
                    .filter(each -> each.first().grade() == grade)
                    .collect(Collectors.groupingBy(each -> each.first().check(), TreeMap::new, Collectors.toList()));
            checks.forEach((check, remarks) -> {
                section.text(tone(grade), check + ", " + WORDS.get(grade) + ": " + BrokenRules.count(remarks));
                BrokenRules.items(remarks.stream().map(ReviewText::withClause).toList(), places, section);
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
                + Phrase.counted(review.count(Grade.NOTE), "note") + ", "
                + Phrase.counted(review.count(Grade.NOT_CHECKED), "reason") + " for which something is not checked ("
                + review.checksMade() + " of " + (review.checksMade() + review.checksNotMade()) + " checks made)";
    }

    private static Folded<Remark> withClause(Folded<Remark> remarks) {
        String clause = remarks.first().clause();
        return clause.isEmpty() ? remarks : new Folded<>(remarks.all(), remarks.text() + " [" + clause + "]");
    }

    private static Tone tone(Grade grade) {
        return switch (grade) {
            case BREAKS -> Tone.BAD;
            case EXCEEDS_RECOMMENDATION -> Tone.HEADING;
            case NOTE, NOT_CHECKED -> Tone.PLAIN;
        };
    }
}
