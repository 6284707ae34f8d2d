package evenrise.solver.report;

import evenrise.model.contract.Phrase;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Cautions;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Verdict;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** What a rule asks, where a plan breaks it, and what comes nearest to its limit, for a screen. */
public final class RuleAnswerText {
    private static final int NEAREST = 8;
    private static final int PLACES = 10;

    /** A figure beside what is allowed. */
    private record Beside(String node, double amps, double limitAmps) {
        double percent() {
            return 100 * amps / limitAmps;
        }
    }

    private RuleAnswerText() {}

    /** @param all whether every place and node is shown */
    public static List<String> lines(
            String rule, String paragraph, Layout layout, Verdict verdict, boolean all, Paint paint) {
        List<List<String>> sections = new ArrayList<>();
        Section asks = new Section(paint, "Rule " + rule);
        sentences(paragraph).forEach(asks::text);
        sections.add(asks.lines());
        sections.add(broken(rule, layout, verdict, all, paint));
        nearest(rule, layout, all, paint).ifPresent(section -> sections.add(section.lines()));
        sections.add(CautionText.lines(Cautions.ALL, paint));
        return Sections.joined(sections);
    }

    /** A paragraph for each of what is asked, allowed, why and what cures it. */
    private static List<String> sentences(String paragraph) {
        return List.of(paragraph.split("(?= (?:Allowed|Why|Likely cure|Kinds): )")).stream()
                .map(String::strip)
                .toList();
    }

    private static List<String> broken(String rule, Layout layout, Verdict verdict, boolean all, Paint paint) {
        List<BrokenRule> places = verdict.violations().stream()
                .filter(each -> each.rule().equals(rule))
                .toList();
        Section section = new Section(paint, "In this plan");
        if (places.isEmpty()) {
            return section.text(Tone.GOOD, "It is kept.").lines();
        }
        section.text(Tone.BAD, "It is broken, in " + Phrase.counted(places.size(), "place") + ".");
        BrokenRules.items(Folded.of(places, layout.project()), all ? Integer.MAX_VALUE : PLACES, section);
        return section.lines();
    }

    private static Optional<Section> nearest(String rule, Layout layout, boolean all, Paint paint) {
        List<Beside> figures =
                switch (rule) {
                    case "rating" ->
                        besides(
                                layout,
                                use -> use.runningLimitAmps() - use.runningSpareAmps(),
                                use -> OptionalDouble.of(use.runningLimitAmps()));
                    case "neutral" ->
                        besides(layout, NodeUse::neutralAmps, use -> OptionalDouble.of(use.neutralLimitAmps()));
                    case "inrush-limit" -> besides(layout, NodeUse::greatestPeakAmps, NodeUse::inrushLimitAmps);
                    default -> List.<Beside>of();
                };
        if (figures.isEmpty()) {
            return Optional.empty();
        }
        Table table = new Table().words("Node").number("A").number("Allowed, A").number("%");
        figures.stream()
                .limit(all ? figures.size() : NEAREST)
                .forEach(each -> table.row(
                        each.node(),
                        Numbers.amps(each.amps()),
                        Numbers.amps(each.limitAmps()),
                        Numbers.fixed(each.percent(), 1)));
        return Optional.of(new Section(paint, "Nearest to it").table(table));
    }

    private static List<Beside> besides(
            Layout layout, Function<NodeUse, Double> amps, Function<NodeUse, OptionalDouble> limit) {
        return NodeUse.of(layout).stream()
                .filter(use -> limit.apply(use).orElse(0) > 0)
                .map(use ->
                        new Beside(use.node(), amps.apply(use), limit.apply(use).getAsDouble()))
                .sorted(Comparator.comparingDouble(Beside::percent).reversed())
                .toList();
    }
}
