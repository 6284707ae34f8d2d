package evenrise.solver.report;

import evenrise.model.answer.Alternative;
import evenrise.model.answer.LoadAnswer;
import evenrise.model.answer.PlanChange.Way;
import evenrise.model.contract.Phrase;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Cautions;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Phase;
import evenrise.model.rules.Placement;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** Why a load is where it is, for a screen: what every other place would break or cost. */
public final class ExplanationText {
    private static final int BEST = 3;
    private static final int PLACES = 15;
    private static final int MESSAGES = 3;
    /** Times nearer than this are the same. */
    private static final double SAME_SECONDS = 0.0005;

    private ExplanationText() {}

    /** @param all whether every place is shown, not the best of each panel, board and so on */
    public static List<String> lines(LoadAnswer answer, boolean all, Paint paint) {
        List<List<String>> sections = new ArrayList<>();
        sections.add(now(answer, paint));
        sections.add(best(answer.alternatives(), paint));
        answer.load().onSeconds().ifPresent(on -> sections.add(earlier(answer.alternatives(), on, paint)));
        sections.add(each(answer, all, paint));
        sections.add(CautionText.lines(Cautions.ALL, paint));
        return Sections.joined(sections);
    }

    private static List<String> now(LoadAnswer answer, Paint paint) {
        Placement load = answer.load();
        Section section = new Section(paint, "Load " + load.id())
                .text((load.load().name().isEmpty() ? "" : load.load().name() + ". ") + "Panel "
                        + load.assignment().panel() + " slot "
                        + load.assignment().slot() + ", phase " + phases(load.phases()) + "; " + switching(load) + ".");
        if (!load.load().fixed().equals(FixedPlace.NONE)) {
            section.text("The project fixes where it is, all of it or in part.");
        }
        answer.broken().stream().limit(MESSAGES).forEach(each -> section.item(each.message()));
        return section.lines();
    }

    private static String switching(Placement load) {
        if (load.board().isPresent()) {
            return "output " + load.assignment().output().orElseThrow() + " of board "
                    + load.board().get().id() + ", on at " + Numbers.seconds(load.onSeconds()) + " s";
        }
        return load.load()
                .comesWith()
                .map(lead -> "behind the contactor of " + lead)
                .orElse(load.load().switched() ? "without an output" : "not switched");
    }

    private static List<String> best(List<Alternative> alternatives, Paint paint) {
        long sound = alternatives.stream().filter(Alternative::isSound).count();
        Section section = new Section(
                paint,
                "Other places: " + Phrase.counted(alternatives.size(), "change") + " tried, " + sound
                        + " of them without a rule more that is broken");
        if (sound == 0) {
            return section.text("None keeps every rule that is kept now. Nearest to it:")
                    .table(table(alternatives.subList(0, Math.min(BEST, alternatives.size()))))
                    .lines();
        }
        double least = alternatives.get(0).objectiveChange();
        section.text(
                least < 0
                        ? "The best of them is better than this plan; 'evenrise plan --from' goes on from here."
                        : "None of them is better than where it is. The best:");
        return section.table(table(alternatives.stream()
                        .filter(Alternative::isSound)
                        .limit(BEST)
                        .toList()))
                .lines();
    }

    /** Why it does not come on earlier. */
    private static List<String> earlier(List<Alternative> alternatives, double on, Paint paint) {
        Section section = new Section(paint, "Why not earlier");
        List<Alternative> earlier = alternatives.stream()
                .filter(each -> each.onSeconds().isPresent() && each.onSeconds().getAsDouble() < on - SAME_SECONDS)
                .toList();
        if (earlier.isEmpty()) {
            return section.text("No single change brings it on earlier.").lines();
        }
        List<Alternative> sound = earlier.stream().filter(Alternative::isSound).toList();
        if (sound.isEmpty()) {
            section.text("Each of the " + Phrase.counted(earlier.size(), "change")
                    + " that brings it on earlier breaks a rule:");
            reasons(earlier).forEach(section::item);
            return section.lines();
        }
        Alternative cheapest = sound.get(0);
        Alternative first = sound.stream()
                .min(Comparator.comparingDouble(each -> each.onSeconds().getAsDouble()))
                .orElseThrow();
        section.text(Phrase.counted(earlier.size(), "change") + " would bring it on earlier, " + sound.size()
                + " without breaking a rule. " + worded("The cheapest", cheapest)
                + (first == cheapest ? "" : " " + worded("The earliest", first)));
        if (cheapest.objectiveChange() < 0) {
            section.text("That is better than this plan.");
        }
        if (sound.size() < earlier.size()) {
            section.text("What the others break:");
            reasons(earlier).forEach(section::item);
        }
        return section.lines();
    }

    private static String worded(String which, Alternative each) {
        return which + " (" + ChangeWords.of(each) + "): on at " + Numbers.seconds(each.onSeconds()) + " s, "
                + ChangeWords.signed(each.objectiveChange()) + " in the objective, "
                + ChangeWords.signed(each.peakChangeAmps()) + " A of peak.";
    }

    /** Each rule once, that of most changes first, with what it says of one of them. */
    private static List<String> reasons(List<Alternative> alternatives) {
        Map<String, List<BrokenRule>> byRule = alternatives.stream()
                .flatMap(each -> each.breaks().stream())
                .collect(Collectors.groupingBy(BrokenRule::rule, LinkedHashMap::new, Collectors.toList()));
        return byRule.entrySet().stream()
                .sorted(Comparator.comparingInt(entry -> -entry.getValue().size()))
                .limit(MESSAGES)
                .map(entry -> entry.getKey() + ": " + entry.getValue().get(0).message())
                .toList();
    }

    private static List<String> each(LoadAnswer answer, boolean all, Paint paint) {
        List<Alternative> alternatives = answer.alternatives();
        Section section = new Section(paint, all ? "Every place" : "Each other place, at its best");
        List<Alternative> shown = all ? alternatives : atTheirBest(alternatives);
        section.table(table(shown.subList(0, all ? shown.size() : Math.min(PLACES, shown.size()))));
        if (!all && (shown.size() > PLACES || shown.size() < alternatives.size())) {
            section.text("--all shows all " + alternatives.size() + ".");
        }
        if (!answer.everyExchange()) {
            section.text("Exchanges with loads that are neither in its panel nor on its board were not tried;"
                    + " --all tries them.");
        }
        section.text("A slot, output or place of another load is an exchange with it; in brackets, how many slots"
                + " there are that differ in nothing but their number. Each is the whole plan judged anew: cost is the"
                + " difference in the objective, which is what the plan's figures weigh, and below zero where the change"
                + " is better. One change at a time; several together may do what none does.");
        return section.lines();
    }

    /** The best of each panel and phase, each board, each kind of exchange. */
    private static List<Alternative> atTheirBest(List<Alternative> alternatives) {
        Map<Object, Alternative> best = new LinkedHashMap<>();
        for (Alternative each : alternatives) {
            Way way = each.change().way();
            Object key =
                    switch (way) {
                        case SLOT -> List.of(way, each.seat().panel(), each.phases());
                        case OUTPUT -> List.of(way, each.seat().board());
                        case BOTH ->
                            List.of(
                                    way,
                                    each.seat().panel(),
                                    each.phases(),
                                    each.seat().board());
                        default -> List.of(way, each.seat().panel());
                    };
            best.putIfAbsent(key, each);
        }
        return List.copyOf(best.values());
    }

    private static Table table(List<Alternative> alternatives) {
        Table table = new Table()
                .words("Change")
                .words("Panel")
                .number("Slot")
                .words("Phase")
                .words("Output")
                .number("On, s")
                .number("Peak, A")
                .number("Cost")
                .text("Breaks");
        for (Alternative each : alternatives) {
            String output = each.seat()
                    .board()
                    .map(board -> board + " " + each.seat().output().orElseThrow())
                    .orElse(Numbers.NONE);
            table.row(
                    each.isSound() ? Tone.PLAIN : Tone.FAINT,
                    ChangeWords.of(each),
                    each.seat().panel(),
                    String.valueOf(each.seat().slot()),
                    phases(each.phases()),
                    output,
                    Numbers.seconds(each.onSeconds()),
                    ChangeWords.signed(each.peakChangeAmps()),
                    ChangeWords.signed(each.objectiveChange()),
                    rules(each.breaks()));
        }
        return table;
    }

    private static String phases(Collection<Phase> phases) {
        return phases.isEmpty() ? Numbers.NONE : phases.stream().map(Enum::name).collect(Collectors.joining());
    }

    /** The first rule, and how many more. */
    private static String rules(List<BrokenRule> broken) {
        List<String> rules = broken.stream().map(BrokenRule::rule).distinct().toList();
        return rules.isEmpty() ? Numbers.NONE : rules.get(0) + (rules.size() == 1 ? "" : " +" + (rules.size() - 1));
    }
}
