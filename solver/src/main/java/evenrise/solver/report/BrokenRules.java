package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Finding;
import evenrise.model.project.Project;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Every broken hard rule, those of one kind together, with what is broken, by how much, and the likely cure. */
final class BrokenRules {
    private BrokenRules() {}

    /** The first places of each rule, equal ones folded; the rest is counted. */
    static List<String> folded(List<BrokenRule> violations, Project project, int mostEach, Paint paint) {
        return lines(violations, Folded.of(violations, project), mostEach, paint);
    }

    /** Every place by itself. */
    static List<String> all(List<BrokenRule> violations, Paint paint) {
        return lines(violations, Folded.unfolded(violations), Integer.MAX_VALUE, paint);
    }

    private static List<String> lines(
            List<BrokenRule> violations, List<Folded<BrokenRule>> folded, int mostEach, Paint paint) {
        if (violations.isEmpty()) {
            return new Section(paint, "Hard rules")
                    .text(Tone.GOOD, "No hard rule is broken.")
                    .lines();
        }
        Map<String, List<Folded<BrokenRule>>> byRule = folded.stream()
                .collect(Collectors.groupingBy(each -> each.first().rule(), LinkedHashMap::new, Collectors.toList()));
        Section section = new Section(paint, "Hard rules")
                .text(
                        Tone.BAD,
                        Phrase.counted(byRule.size(), "rule") + " broken, in "
                                + Phrase.counted(violations.size(), "place") + ".");
        byRule.forEach((rule, places) -> {
            section.text(Tone.BAD, rule + ": " + Phrase.counted(count(places), "place"));
            items(places, mostEach, section);
        });
        return section.lines();
    }

    /** One line each; of those beyond the first few, how many findings they stand for. */
    static <F extends Finding> void items(List<Folded<F>> folded, int most, Section section) {
        folded.stream().limit(most).forEach(each -> section.item(each.text()));
        if (folded.size() > most) {
            section.item("and " + count(folded.subList(most, folded.size())) + " more");
        }
    }

    static <F extends Finding> int count(List<Folded<F>> folded) {
        return folded.stream().mapToInt(each -> each.all().size()).sum();
    }
}
