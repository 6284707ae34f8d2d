package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.project.Project;
import evenrise.solver.compare.Judged;
import evenrise.solver.compare.LeastPrice;
import evenrise.solver.compare.PriceRange;
import evenrise.solver.compare.ScenarioResult;
import evenrise.solver.compare.UnbeatenScenarios;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * An estimate as a page shows it: what was found and what is not proven of it, what the price is built up of, how it moves
 * with open quantities, what else could be built, and what all of it rests on.
 *
 * @param title of the project, with the currency
 * @param parts in the order in which they are read
 * @param basis what stands with every price
 */
public record EstimateSheet(String title, List<Part> parts, List<String> basis) {
    /** Heads the list by price. */
    public static final String MAKE_UPS = "Make-ups by price";

    private static final int MAKE_UPS_SHOWN = 15;

    /** @param isBad whether it warns */
    public record Sentence(String text, boolean isBad) {}

    /**
     * A heading with what stands below it, any of it maybe empty.
     *
     * @param svg a chart
     * @param header of the table
     * @param words how many of the first columns hold words; the others hold numbers
     * @param isSummed whether its last row is the sum
     */
    public record Part(
            String heading,
            List<Sentence> sentences,
            Optional<String> svg,
            List<String> header,
            int words,
            boolean isSummed,
            List<List<String>> rows) {}

    public EstimateSheet {
        parts = List.copyOf(parts);
        basis = List.copyOf(basis);
    }

    public static EstimateSheet of(
            String project,
            String currency,
            LeastPrice least,
            Optional<PriceRange> range,
            List<ScenarioResult> findings) {
        List<Part> parts = new ArrayList<>();
        parts.add(words(
                "Least price",
                LeastPriceText.said(least).stream()
                        .map(each -> new Sentence(each.text(), each.tone() == Tone.BAD))
                        .toList()));
        least.cheapest()
                .flatMap(Judged::finding)
                .ifPresent(finding -> parts.add(bill(finding.scenario().project(), currency)));
        range.ifPresent(each -> parts.add(drawn(each, currency)));
        List<ScenarioResult> front = UnbeatenScenarios.of(findings);
        if (!front.isEmpty()) {
            parts.add(front(project, currency, findings, front));
        }
        parts.add(makeUps(least, currency));
        return new EstimateSheet("Estimate for " + project + ", prices in " + currency, parts, least.basis());
    }

    private static Part words(String heading, List<Sentence> sentences) {
        return new Part(heading, sentences, Optional.empty(), List.of(), 0, false, List.of());
    }

    private static Part bill(Project project, String currency) {
        List<List<String>> rows = new ArrayList<>();
        for (BillRow row : BillRow.of(BillOfMaterials.of(project))) {
            rows.add(List.of(
                    row.item(),
                    row.quantity().map(BillRow::plain).orElse(""),
                    row.isTotal()
                            ? ""
                            : row.unitPrice().map(EstimateSheet::money).orElse(BillRow.NO_PRICE),
                    row.sum().map(EstimateSheet::money).orElse("")));
        }
        return new Part(
                "What it is built up of",
                List.of(),
                Optional.empty(),
                List.of("Item", "Quantity", "Each, " + currency, "Sum, " + currency),
                1,
                true,
                rows);
    }

    private static Part drawn(PriceRange range, String currency) {
        List<Sentence> sentences = new ArrayList<>();
        sentences.add(new Sentence(PriceRangeText.sentence(range), false));
        PriceRangeText.reasons(range).forEach(each -> sentences.add(new Sentence(each, true)));
        sentences.add(new Sentence(PriceRangeText.HOW, false));
        return new Part(
                "Price where quantities are open",
                sentences,
                PriceRangeChart.svg(range, currency),
                PriceRangeText.HEADER,
                1,
                false,
                PriceRangeText.swings(range));
    }

    private static Part front(
            String project, String currency, List<ScenarioResult> findings, List<ScenarioResult> front) {
        List<List<String>> rows = new ArrayList<>();
        for (ScenarioResult each : front) {
            rows.add(List.of(
                    each.scenario().makeUp().panelWords() + "; "
                            + each.scenario().makeUp().boardWords(),
                    each.scenario().key(),
                    Integer.toString(rows.size() + 1),
                    Decimals.fixed(each.scenario().price(), 2),
                    Decimals.fixed(each.metrics().peakInrushAmps(), 1),
                    Decimals.fixed(each.metrics().durationSeconds(), 2)));
        }
        return new Part(
                "Price against peak against time",
                List.of(new Sentence("Plans that no other found beats at once in price, peak inrush and time.", false)),
                Optional.of(CompareChart.inner(project, currency, findings)),
                List.of("Panels; boards", "Files", "No", "Price, " + currency, "Peak inrush, A", "All on after, s"),
                2,
                false,
                rows);
    }

    private static Part makeUps(LeastPrice least, String currency) {
        List<List<String>> rows = new ArrayList<>();
        for (Judged each : least.makeUps().stream().limit(MAKE_UPS_SHOWN).toList()) {
            rows.add(List.of(
                    each.makeUp().panelWords(),
                    each.makeUp().boardWords(),
                    each.standing().word() + each.why().map(why -> ": " + why).orElse(""),
                    Decimals.fixed(each.makeUp().price(), 2)));
        }
        int more = least.makeUps().size() - rows.size();
        return new Part(
                MAKE_UPS,
                more == 0
                        ? List.of()
                        : List.of(new Sentence("The cheapest; " + more + " more are in make-ups.csv.", false)),
                Optional.empty(),
                List.of("Panels", "Boards", "What is known", "Price, " + currency),
                3,
                false,
                rows);
    }

    private static String money(BigDecimal amount) {
        return amount.setScale(Math.max(2, amount.stripTrailingZeros().scale())).toPlainString();
    }
}
