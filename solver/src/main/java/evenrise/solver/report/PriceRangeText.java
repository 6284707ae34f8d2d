package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.project.QuantityRange;
import evenrise.solver.compare.PriceRange;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalDouble;

/** A price where quantities are open, for a screen and as tables of values. */
public final class PriceRangeText {

    private PriceRangeText() {}

    static List<String> lines(PriceRange range, Paint paint) {
        Section section = new Section(paint, "Price where quantities are open");
        section.text(sentence(range));
        Table table = new Table()
                .words(HEADER.get(0))
                .number(HEADER.get(1))
                .number(HEADER.get(2))
                .number(HEADER.get(3))
                .number(HEADER.get(4))
                .number(HEADER.get(5));
        swings(range).forEach(row -> table.row(row.toArray(String[]::new)));
        section.table(table);
        reasons(range).forEach(section::text);
        return section.text(HOW).lines();
    }

    static final List<String> HEADER = List.of(
            "What the price depends on, one at a time", "Low", "Likely", "High", "Price at low", "Price at high");

    private static final String DRAWN =
            " Quantities are drawn apart from each other, from triangles between fewest and most with the tip at what is"
                    + " likely.";

    static final String HOW_OWN =
            "Each price is the bill of the alternate's own panels and boards with the loads that were drawn, where counting"
                    + " does not rule out that they hold them. No plan was made for it: they may not hold them all the same,"
                    + " and leads between panels, which follow from a plan, are in none." + DRAWN;

    static final String HOW =
            "Each price is that of the cheapest make-up that counting does not rule out, without a plan of"
                    + " its own: the true one may be higher, and the price of one that is chosen may lie outside."
                    + DRAWN;

    /** A row for each quantity, that which the price depends on most first. */
    static List<List<String>> swings(PriceRange range) {
        return range.swings().stream()
                .map(each -> List.of(
                        each.range().name(),
                        Integer.toString(each.range().low()),
                        Integer.toString(each.range().tip()),
                        Integer.toString(each.range().high()),
                        money(each.atLow(), range),
                        money(each.atHigh(), range)))
                .toList();
    }

    /** Why some ends have no price. */
    static List<String> reasons(PriceRange range) {
        return range.swings().stream()
                .filter(each -> each.atLow().isEmpty() || each.atHigh().isEmpty())
                .map(each -> each.range().name() + ", " + none(range) + " at its "
                        + (each.atHigh().isEmpty() ? "most" : "fewest")
                        + each.why().map(why -> ": " + why).orElse("") + ".")
                .toList();
    }

    static String sentence(PriceRange range) {
        String without = range.without() == 0
                ? ""
                : " " + Phrase.counted(range.without(), "draw")
                        + (range.isOfOwnMakeUp() ? ", more than this make-up holds, " : " without any make-up ")
                        + (range.without() == 1 ? "counts" : "count") + " as dearer than all others.";
        return "At likely quantities " + money(range.likely(), range) + ". Of "
                + Phrase.counted(range.draws().size(), "draw") + " a tenth costs at most "
                + money(range.percentile(10), range)
                + " (P10), half at most " + money(range.percentile(50), range) + " (P50), nine tenths at most "
                + money(range.percentile(90), range) + " (P90)." + without
                + (range.wasStopped() ? " Stopped before all were drawn." : "");
    }

    /** One row a draw: its quantities and its price. */
    public static List<List<String>> draws(PriceRange range) {
        List<List<String>> rows = new ArrayList<>();
        List<String> header = new ArrayList<>(List.of("draw"));
        range.ranges().stream().map(QuantityRange::name).forEach(header::add);
        header.add("price");
        rows.add(header);
        for (PriceRange.Draw each : range.draws()) {
            List<String> row = new ArrayList<>(List.of(Integer.toString(rows.size())));
            each.counts().forEach(count -> row.add(Integer.toString(count)));
            row.add(each.price().isPresent() ? money(each.price(), range) : "");
            rows.add(row);
        }
        return rows;
    }

    private static String money(OptionalDouble price, PriceRange range) {
        return price.isPresent() ? Decimals.fixed(price.getAsDouble(), 2) : none(range);
    }

    static String none(PriceRange range) {
        return range.isOfOwnMakeUp() ? "does not fit" : "no make-up";
    }
}
