package evenrise.solver.rendering;

import evenrise.model.contract.Decimals;
import evenrise.model.plan.Cautions;
import evenrise.solver.portfolio.Lot;
import evenrise.solver.portfolio.Outcome;
import evenrise.solver.report.PortfolioText;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Collectors;

/** Many plans on one self-contained page without a script: how far seeds are apart, what variants do, what went wrong. */
public final class PortfolioPage {
    private static final int MOST_NAMED = 200;

    private PortfolioPage() {}

    /** One lot in a table. */
    public record Row(
            String project,
            String variant,
            String sound,
            boolean bad,
            String best,
            String gap,
            String peak,
            String imbalance,
            String duration,
            String price,
            String strip) {}

    /** Variants of one project. */
    public record Chart(String project, String svg) {}

    public static String of(List<Lot> lots, String facts, List<String> priceRemarks) {
        LotStrip strips = new LotStrip(lots);
        String style = Templates.text("portfolio.css");
        List<String> apart = named(lots, Lot::outliers, each -> "objective " + Decimals.fixed(each.objective(), 2));
        List<String> broken =
                lots.stream().flatMap(lot -> PortfolioText.broken(lot).stream()).toList();
        List<String> failed = named(lots, Lot::failed, each -> each.failure().orElseThrow());
        return Templates.fill(
                "portfolio.peb",
                Map.ofEntries(
                        Map.entry("style", style),
                        Map.entry("styleHash", Policy.hash(style)),
                        Map.entry("facts", facts),
                        Map.entry("priceRemarks", priceRemarks),
                        Map.entry("cautions", Cautions.ALL),
                        Map.entry(
                                "rows",
                                lots.stream().map(lot -> row(lot, strips)).toList()),
                        Map.entry("scale", strips.scale()),
                        Map.entry("charts", charts(lots)),
                        Map.entry("apart", apart),
                        Map.entry("broken", broken),
                        Map.entry("failed", failed)));
    }

    private static Row row(Lot lot, LotStrip strips) {
        Optional<Outcome.Found> best = lot.best().flatMap(Outcome::found);
        return new Row(
                lot.project(),
                lot.variant(),
                lot.sound() + " of " + lot.outcomes().size(),
                lot.sound() == 0,
                best.map(each -> Decimals.fixed(each.metrics().objective(), 2)).orElse("–"),
                best.map(each -> optional(each.gapPercent(), 2)).orElse("–"),
                best.map(each -> Decimals.fixed(each.metrics().peakInrushAmps(), 1))
                        .orElse("–"),
                best.map(each -> Decimals.fixed(each.metrics().supplyImbalancePercent(), 2))
                        .orElse("–"),
                best.map(each -> Decimals.fixed(each.metrics().durationSeconds(), 2))
                        .orElse("–"),
                optional(lot.outcomes().get(0).price(), 2),
                strips.svg(lot));
    }

    private static String optional(OptionalDouble value, int decimals) {
        return value.isPresent() ? Decimals.fixed(value.getAsDouble(), decimals) : "–";
    }

    /** Of projects with several variants. */
    private static List<Chart> charts(List<Lot> lots) {
        Map<String, List<Lot>> byProject =
                lots.stream().collect(Collectors.groupingBy(Lot::project, LinkedHashMap::new, Collectors.toList()));
        return byProject.entrySet().stream()
                .filter(each -> each.getValue().stream()
                                .filter(lot -> lot.best().isPresent())
                                .count()
                        > 1)
                .map(each -> new Chart(each.getKey(), VariantChart.svg(each.getKey(), each.getValue())))
                .toList();
    }

    private interface Words {
        String of(Outcome outcome);
    }

    private interface Some {
        List<Outcome> of(Lot lot);
    }

    private static List<String> named(List<Lot> lots, Some some, Words words) {
        List<String> all = lots.stream()
                .flatMap(lot -> some.of(lot).stream())
                .map(each -> each.project() + ", " + each.variant() + ", seed " + each.seed() + ": " + words.of(each))
                .toList();
        List<String> named = new ArrayList<>(all.subList(0, Math.min(MOST_NAMED, all.size())));
        if (all.size() > MOST_NAMED) {
            named.add("and " + (all.size() - MOST_NAMED) + " more: see portfolio.csv");
        }
        return named;
    }
}
