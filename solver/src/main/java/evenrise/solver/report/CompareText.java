package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.estimate.BillLine;
import evenrise.model.estimate.BillOfMaterials;
import evenrise.model.plan.Cautions;
import evenrise.model.plan.Metrics;
import evenrise.solver.compare.ScenarioResult;
import evenrise.solver.compare.Scenarios;
import evenrise.solver.compare.UnbeatenScenarios;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** A comparison of scenarios, for a screen and as a table of values. */
public final class CompareText {
    private CompareText() {}

    public static List<String> lines(
            String project, String currency, List<Scenarios.Cell> cells, List<ScenarioResult> findings, Paint paint) {
        List<List<String>> sections = new ArrayList<>();
        List<ScenarioResult> front = UnbeatenScenarios.of(findings);
        Section first = new Section(paint, "Comparison for " + project + ", prices in " + currency);
        Optional<ScenarioResult> cheapest = UnbeatenScenarios.cheapest(findings);
        first.text(cheapest.map(CompareText::cheapest).orElse("No scenario was found that keeps every hard rule."));
        cheapest.map(each -> BillOfMaterials.of(each.scenario().project()).unpriced())
                .filter(unpriced -> !unpriced.isEmpty())
                .ifPresent(unpriced -> first.text(
                        Tone.BAD,
                        "Without a price, and so in none of these sums: "
                                + unpriced.stream().map(BillLine::item).collect(Collectors.joining(", ")) + "."));
        first.text(
                "The project's own panels and boards are replaced: inrush limits, reserved slots and chains of theirs"
                        + " are not carried over.");
        long sound = findings.stream().filter(ScenarioResult::isSound).count();
        first.text(Phrase.counted(findings.size(), "plan") + ", " + sound + " of them keep every hard rule; "
                + (front.size() == 1 ? "one" : front.size())
                + " that no other beats at once in price, peak and time:");
        if (!front.isEmpty()) {
            first.table(table(front));
        }
        sections.add(first.lines());
        sections.add(rejected(cells, findings, paint));
        sections.add(CautionText.lines(Cautions.ALL, paint));
        return Sections.joined(sections);
    }

    private static String cheapest(ScenarioResult finding) {
        return String.format(
                Locale.ROOT,
                "Least price among the numbers compared: %.2f with %s and %s (%s).",
                finding.scenario().price(),
                Phrase.counted(finding.scenario().panels(), "panel"),
                Phrase.counted(finding.scenario().boards(), "board"),
                finding.scenario().key());
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
                section.item(Phrase.counted(cell.panels(), "panel") + ", " + Phrase.counted(cell.boards(), "board")
                        + ": impossible, " + cell.why().get());
                isEmpty = false;
            }
        }
        for (ScenarioResult each : findings) {
            if (!each.isSound()) {
                section.item(each.scenario().key() + ": " + each.why().orElseThrow() + "; maybe more moves find one");
                isEmpty = false;
            }
        }
        return isEmpty ? section.text("None.").lines() : section.lines();
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
                    each.scenario().aim().name().toLowerCase(Locale.ROOT).replace('_', '-'),
                    Decimals.fixed(each.scenario().price(), 2),
                    Double.toString(metrics.peakInrushAmps()),
                    Double.toString(metrics.durationSeconds()),
                    Double.toString(metrics.supplyImbalancePercent()),
                    Integer.toString(metrics.hardViolations()),
                    front.contains(each) ? "yes" : "no"));
        }
        return rows;
    }
}
