package evenrise.solver.report;

import evenrise.model.plan.BrokenRule;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Every broken hard rule, those of one kind together, with what is broken, by how much, and the likely cure. */
final class BrokenRules {
    private BrokenRules() {}

    /** @param mostEach how many places of one rule are listed; the rest is counted */
    static List<String> lines(List<BrokenRule> violations, int mostEach, Paint paint) {
        if (violations.isEmpty()) {
            return new Section(paint, "Hard rules")
                    .text(Tone.GOOD, "No hard rule is broken.")
                    .lines();
        }
        Map<String, List<BrokenRule>> byRule = violations.stream()
                .collect(Collectors.groupingBy(BrokenRule::rule, LinkedHashMap::new, Collectors.toList()));
        Section section = new Section(paint, "Hard rules")
                .text(
                        Tone.BAD,
                        Numbers.counted(byRule.size(), "rule") + " broken, in "
                                + Numbers.counted(violations.size(), "place") + ".");
        byRule.forEach((rule, places) -> {
            section.text(Tone.BAD, rule + ": " + Numbers.counted(places.size(), "place"));
            places.stream().limit(mostEach).forEach(place -> section.item(place.message()));
            if (places.size() > mostEach) {
                section.item("and " + (places.size() - mostEach) + " more");
            }
        });
        return section.lines();
    }
}
