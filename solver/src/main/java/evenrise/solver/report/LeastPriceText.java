package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.estimate.BillLine;
import evenrise.model.estimate.BillOfMaterials;
import evenrise.solver.compare.Judged;
import evenrise.solver.compare.Judged.Standing;
import evenrise.solver.compare.LeastPrice;
import evenrise.solver.compare.ScenarioResult;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;

/** The least price as far as it is proven, for a screen, and every make-up by price as a table of values. */
public final class LeastPriceText {
    private LeastPriceText() {}

    static List<String> lines(String project, String currency, LeastPrice least, Paint paint) {
        Section section = new Section(paint, "Estimate for " + project + ", prices in " + currency);
        said(least).forEach(each -> section.text(each.tone(), each.text()));
        least.basis().forEach(section::text);
        return section.lines();
    }

    /** What there is to say of it, but for what prices rest on. */
    static List<SaidLines.Said> said(LeastPrice least) {
        SaidLines section = new SaidLines();
        Optional<Judged> cheapest = least.cheapest();
        if (cheapest.isPresent()) {
            found(section, least, cheapest.get());
        } else {
            section.text(Tone.BAD, "No make-up was found with a plan that keeps every hard rule.");
            if (least.undecidedFrom() < Double.POSITIVE_INFINITY) {
                section.text("None costs less than " + money(least.undecidedFrom()) + ": all below are ruled out.");
            }
        }
        looked(section, least);
        cheapest.flatMap(Judged::finding).ifPresent(finding -> {
            builtUp(section, finding);
            unpriced(section, finding);
        });
        if (!least.unpriced().isEmpty()) {
            section.text(
                    Tone.BAD,
                    "Of what differs between make-ups no price is stated of: " + String.join(", ", least.unpriced())
                            + ". A make-up with more of it looks cheaper than it is.");
        }
        if (!least.leftOut().isEmpty()) {
            section.text(
                    Tone.BAD,
                    "Not chosen, for nobody knows what it would cost: " + String.join(", ", least.leftOut()) + ".");
        }
        section.text("Panels and boards are chosen anew: their inrush limits, reserved slots and chains are not carried"
                + " over. Where panels hang, each place keeps at least one; feeders keep their length and cable.");
        return section.all();
    }

    private static void found(SaidLines section, LeastPrice least, Judged cheapest) {
        String what =
                money(cheapest.makeUp().price()) + " with " + cheapest.makeUp().panelWords() + " and "
                        + cheapest.makeUp().boardWords() + " ("
                        + cheapest.finding().orElseThrow().scenario().key() + ").";
        if (least.isProven()) {
            section.text(proven(least) + ": " + what + " Every make-up that costs less is ruled out by counting.");
        } else {
            section.text("Cheapest make-up found that stands: " + what);
            section.text(
                    Tone.BAD,
                    "Not proven to be the least: nothing below " + money(least.undecidedFrom()) + " is open, "
                            + Decimals.fixed(least.gapPercent(), 2) + " % less; between the two "
                            + open(least, Standing.UNDECIDED, "planned without a sound plan") + " and "
                            + open(least, Standing.NOT_LOOKED_AT, "not looked at") + ".");
        }
    }

    /** What a proof does not speak of. */
    private static String proven(LeastPrice least) {
        return (least.unpriced().isEmpty() ? "Least price, proven" : "Least of what has a price, proven")
                + (least.leftOut().isEmpty() ? "" : " among the types that have a price");
    }

    private static String open(LeastPrice least, Standing standing, String words) {
        List<Judged> open = least.openBelow().stream()
                .filter(each -> each.standing() == standing)
                .toList();
        return Phrase.counted(open.size(), "make-up") + " " + words
                + (open.isEmpty() ? "" : " (from " + money(open.get(0).makeUp().price()) + ")");
    }

    private static void looked(SaidLines section, LeastPrice least) {
        List<String> parts = new ArrayList<>();
        part(parts, least, Standing.SOUND, "with a sound plan");
        part(parts, least, Standing.RULED_OUT, "ruled out");
        part(parts, least, Standing.UNDECIDED, "planned without one");
        part(
                parts,
                least,
                Standing.NOT_LOOKED_AT,
                least.isProven() ? "not looked at, none of them cheaper" : "not looked at");
        section.text(Phrase.counted(least.makeUps().size(), "make-up") + " listed by price in make-ups.csv"
                + (parts.isEmpty() ? "" : ": " + String.join(", ", parts))
                + (least.wasStopped()
                        ? isAnyPlanned(least)
                                ? "; stopped before all was done. The same command goes on there, with the plans that are"
                                        + " finished."
                                : "; stopped before a plan was made: a longer --time goes further."
                        : "."));
    }

    private static boolean isAnyPlanned(LeastPrice least) {
        return least.makeUps().stream().anyMatch(each -> each.finding().isPresent());
    }

    private static void part(List<String> parts, LeastPrice least, Standing standing, String words) {
        long count = count(least, standing);
        if (count > 0) {
            parts.add(count + " " + words);
        }
    }

    private static long count(LeastPrice least, Standing standing) {
        return least.makeUps().stream()
                .filter(each -> each.standing() == standing)
                .count();
    }

    private static void builtUp(SaidLines section, ScenarioResult finding) {
        BillOfMaterials bill = BillOfMaterials.of(finding.scenario().project());
        BigDecimal leads = BillOfMaterials.of(finding.scenario().project(), Optional.of(finding.plan()))
                .total()
                .subtract(bill.total());
        section.text("It is built up of " + BillRow.sentence(bill) + ".");
        if (leads.signum() > 0) {
            section.text("Control leads between panels, as this plan has them, come to " + leads.toPlainString()
                    + " more. They follow from the plan and are in no price here.");
        }
    }

    private static void unpriced(SaidLines section, ScenarioResult finding) {
        List<BillLine> unpriced =
                BillOfMaterials.of(finding.scenario().project()).unpriced();
        if (!unpriced.isEmpty()) {
            section.text(
                    Tone.BAD,
                    "Without a price, and so in none of these sums: "
                            + unpriced.stream().map(BillLine::item).collect(Collectors.joining(", ")) + ".");
        }
    }

    /** Header first; one row a make-up. */
    public static List<List<String>> values(LeastPrice least) {
        List<List<String>> rows = new ArrayList<>();
        rows.add(List.of("number", "price", "panels", "boards", "unpriced", "standing", "why", "files"));
        for (Judged each : least.makeUps()) {
            rows.add(List.of(
                    Integer.toString(each.number()),
                    money(each.makeUp().price()),
                    each.makeUp().panelWords(),
                    each.makeUp().boardWords(),
                    each.makeUp().unpricedWords(),
                    each.standing().word(),
                    each.why().orElse(""),
                    each.finding().map(it -> it.scenario().key()).orElse("")));
        }
        return rows;
    }

    private static String money(double amount) {
        return Decimals.fixed(amount, 2);
    }
}
