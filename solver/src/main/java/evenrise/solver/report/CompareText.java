package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Metrics;
import evenrise.solver.compare.LeastPrice;
import evenrise.solver.compare.PriceRange;
import evenrise.solver.compare.ScenarioResult;
import evenrise.solver.compare.Scenarios;
import evenrise.solver.compare.UnbeatenScenarios;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A comparison of scenarios, for a screen and as a table of values. */
public final class CompareText {
    private CompareText() {}

    public static List<String> lines(
            String project,
            String currency,
            LeastPrice least,
            Optional<PriceRange> range,
            List<Scenarios.Cell> cells,
            List<ScenarioResult> findings,
            Paint paint) {
        List<List<String>> sections = new ArrayList<>();
        sections.add(LeastPriceText.lines(project, currency, least, paint));
        range.ifPresent(each -> sections.add(PriceRangeText.lines(each, paint)));
        if (!findings.isEmpty()) {
            sections.add(front(findings, paint));
        }
        if (!cells.isEmpty()) {
            sections.add(rejected(cells, findings, paint));
        }
        sections.add(CautionText.lines(Cautions.ALL, paint));
        return Sections.joined(sections);
    }

    private static List<String> front(List<ScenarioResult> findings, Paint paint) {
        List<ScenarioResult> front = UnbeatenScenarios.of(findings);
        long sound = findings.stream().filter(ScenarioResult::isSound).count();
        Section section = new Section(paint, "Price against peak against time")
                .text(Phrase.counted(findings.size(), "plan") + ", " + sound + " of them "
                        + (sound == 1 ? "keeps" : "keep") + " every hard rule"
                        + (front.isEmpty()
                                ? "."
                                : "; " + (front.size() == 1 ? "one" : front.size())
                                        + " that no other found beats at once in price, peak and time:"));
        if (!front.isEmpty()) {
            section.table(table(front));
        }
        return section.lines();
    }

    private static Table table(List<ScenarioResult> front) {
        Table table = new Table()
                .number("No")
                .number("Price")
                .number("Peak A")
                .number("Time s")
                .number("Imbalance %")
                .number("Panels")
                .number("Boards")
                .words("Files");
        for (ScenarioResult each : front) {
            Metrics metrics = each.metrics();
            table.row(
                    Integer.toString(front.indexOf(each) + 1),
                    Decimals.fixed(each.scenario().price(), 2),
                    Decimals.fixed(metrics.peakInrushAmps(), 1),
                    Decimals.fixed(metrics.durationSeconds(), 2),
                    Decimals.fixed(metrics.supplyImbalancePercent(), 2),
                    Integer.toString(each.scenario().panels()),
                    Integer.toString(each.scenario().boards()),
                    each.scenario().key());
        }
        return table;
    }

    private static List<String> rejected(List<Scenarios.Cell> cells, List<ScenarioResult> findings, Paint paint) {
        Section section = new Section(paint, "Numbers without a sound plan");
        boolean isEmpty = true;
        for (Scenarios.Cell cell : cells) {
            if (cell.why().isPresent()) {
                section.item(count(cell.panels(), "panel") + ", " + count(cell.boards(), "board") + ": "
                        + cell.why().get() + ".");
                isEmpty = false;
            }
        }
        for (ScenarioResult each : findings) {
            if (!each.isSound()) {
                section.item(each.scenario().key() + ": " + each.why().orElseThrow() + "; maybe more moves find one.");
                isEmpty = false;
            }
        }
        return isEmpty ? section.text("None.").lines() : section.lines();
    }

    private static String count(int number, String noun) {
        return number == 0 ? "any number of " + noun + "s" : Phrase.counted(number, noun);
    }

    /** Header first; one row a finding. */
    public static List<List<String>> values(List<ScenarioResult> findings) {
        List<ScenarioResult> front = UnbeatenScenarios.of(findings);
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of(
                "scenario",
                "panels",
                "boards",
                "aim",
                "price",
                "peak_inrush_a",
                "duration_s",
                "supply_imbalance_pct",
                "hard_violations",
                "on_front"));
        for (ScenarioResult each : findings) {
            Metrics metrics = each.metrics();
            rows.add(List.of(
                    each.scenario().key(),
                    Integer.toString(each.scenario().panels()),
                    Integer.toString(each.scenario().boards()),
                    each.scenario().aim().word(),
                    Decimals.fixed(each.scenario().price(), 2),
                    Decimals.value(metrics.peakInrushAmps()),
                    Decimals.value(metrics.durationSeconds()),
                    Decimals.value(metrics.supplyImbalancePercent()),
                    Integer.toString(metrics.hardViolations()),
                    front.contains(each) ? "yes" : "no"));
        }
        return rows;
    }
}
