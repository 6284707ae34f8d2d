package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Metrics;
import evenrise.solver.portfolio.Lot;
import evenrise.solver.portfolio.Outcome;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** Many plans together, for a screen and as a table of values. */
public final class PortfolioText {
    private static final int MOST_SEEDS = 12;

    private PortfolioText() {}

    /** What was planned, and how. */
    public static String facts(int there, int wanted, int earlier, int slots, int moves) {
        String open = there == wanted
                ? ""
                : " " + Phrase.counted(wanted - there, "plan") + " not come to: the same command goes on.";
        String before = earlier == 0 ? "" : ", " + earlier + " of them from earlier runs";
        return Phrase.counted(wanted, "plan") + " asked for" + before + "; " + Phrase.counted(moves, "move")
                + " each, by one search; " + slots + " side by side." + open;
    }

    public static List<String> lines(List<Lot> lots, String facts, List<String> priceRemarks, Paint paint) {
        List<List<String>> sections = new ArrayList<>();
        Section first = new Section(paint, "Portfolio");
        first.text(facts);
        first.text("Of each project and variant: plans without a break of rule or limit, then objective of those that"
                + " keep every hard rule, and figures of the best.");
        Table table = new Table()
                .words("Project")
                .words("Variant")
                .number("Sound")
                .number("Best")
                .number("Median")
                .number("Worst")
                .number("Gap %")
                .number("Peak A")
                .number("Price");
        lots.forEach(lot -> table.row(lot.sound() == 0 ? Tone.BAD : Tone.PLAIN, cells(lot)));
        first.table(table);
        priceRemarks.forEach(first::text);
        sections.add(first.lines());
        sections.addAll(remarks(lots, paint));
        sections.add(CautionText.lines(Cautions.ALL, paint));
        return Sections.joined(sections);
    }

    private static String[] cells(Lot lot) {
        Optional<Outcome.Found> best = lot.best().flatMap(Outcome::found);
        return new String[] {
            lot.project(),
            lot.variant(),
            lot.sound() + "/" + lot.outcomes().size(),
            objective(lot.best()),
            objective(lot.median()),
            objective(lot.worst()),
            best.map(each -> optional(each.gapPercent(), 2)).orElse(Numbers.NONE),
            best.map(each -> Decimals.fixed(each.metrics().peakInrushAmps(), 1)).orElse(Numbers.NONE),
            optional(lot.outcomes().get(0).price(), 2)
        };
    }

    private static String objective(Optional<Outcome> outcome) {
        return outcome.map(each -> Decimals.fixed(each.objective(), 2)).orElse(Numbers.NONE);
    }

    private static String optional(OptionalDouble value, int decimals) {
        return value.isPresent() ? Decimals.fixed(value.getAsDouble(), decimals) : Numbers.NONE;
    }

    /** What stands apart, what broke something, what could not be done, by name. */
    private static List<List<String>> remarks(List<Lot> lots, Paint paint) {
        Section apart = new Section(paint, "Stand apart from the other seeds");
        Section broken = new Section(paint, "Break something");
        Section failed = new Section(paint, "Not planned");
        for (Lot lot : lots) {
            lot.outliers()
                    .forEach(each -> apart.item(name(each) + ": objective " + Decimals.fixed(each.objective(), 2)
                            + ", median " + objective(lot.median())));
            broken(lot).ifPresent(broken::item);
            lot.failed()
                    .forEach(each ->
                            failed.item(name(each) + ": " + each.failure().orElseThrow()));
        }
        List<List<String>> sections = new ArrayList<>();
        for (Section section : List.of(apart, broken, failed)) {
            if (section.lines().size() > 1) {
                sections.add(section.lines());
            }
        }
        return sections;
    }

    /** Which seeds of a lot gave plans that break something, and what the least broken one does. */
    public static Optional<String> broken(Lot lot) {
        List<Outcome> some = lot.outcomes().stream()
                .filter(each -> each.found().isPresent() && !each.isSound())
                .toList();
        if (some.isEmpty()) {
            return Optional.empty();
        }
        Outcome least = some.stream()
                .min(Comparator.comparingInt(
                        each -> each.found().orElseThrow().assessment().hardRulesBroken()
                                + each.found().orElseThrow().assessment().limitsBroken()))
                .orElseThrow();
        String seeds = Phrase.listed(some.stream().map(Outcome::seed).toList(), MOST_SEEDS);
        return Optional.of(lot.project() + ", " + lot.variant() + ": "
                + (some.size() == lot.outcomes().size()
                        ? "every plan"
                        : some.size() + " of " + lot.outcomes().size())
                + " (seed " + seeds + "); seed " + least.seed() + " breaks the least: "
                + least.found().orElseThrow().assessment().headline());
    }

    static String name(Outcome outcome) {
        return outcome.project() + ", " + outcome.variant() + ", seed " + outcome.seed();
    }

    /** Header first; one row a plan. Numbers stand in full. */
    public static List<List<String>> values(List<Outcome> outcomes) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of(
                "project",
                "variant",
                "seed",
                "price",
                "objective",
                "gap_pct",
                "peak_inrush_a",
                "supply_imbalance_pct",
                "worst_panel_imbalance_pct",
                "duration_s",
                "hard_rules_broken",
                "limits_broken",
                "checks_not_made",
                "answer",
                "failure"));
        for (Outcome each : outcomes) {
            Optional<Outcome.Found> found = each.found();
            Optional<Metrics> metrics = found.map(Outcome.Found::metrics);
            rows.add(List.of(
                    each.project(),
                    each.variant(),
                    Integer.toString(each.seed()),
                    each.price().isPresent() ? Decimals.fixed(each.price().getAsDouble(), 2) : "",
                    metrics.map(it -> Decimals.value(it.objective())).orElse(""),
                    found.filter(it -> it.gapPercent().isPresent())
                            .map(it -> Decimals.value(it.gapPercent().getAsDouble()))
                            .orElse(""),
                    metrics.map(it -> Decimals.value(it.peakInrushAmps())).orElse(""),
                    metrics.map(it -> Decimals.value(it.supplyImbalancePercent()))
                            .orElse(""),
                    metrics.map(it -> Decimals.value(it.worstPanelImbalancePercent()))
                            .orElse(""),
                    metrics.map(it -> Decimals.value(it.durationSeconds())).orElse(""),
                    found.map(it -> Integer.toString(it.assessment().hardRulesBroken()))
                            .orElse(""),
                    found.map(it -> Integer.toString(it.assessment().limitsBroken()))
                            .orElse(""),
                    found.map(it -> Integer.toString(it.assessment().checksNotMade()))
                            .orElse(""),
                    each.key().filter(any -> found.isPresent()).orElse(""),
                    each.failure().orElse("")));
        }
        return rows;
    }
}
