package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Harmless;
import evenrise.solver.compare.PriceRange;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * How drawn prices are spread, with P10, P50 and P90, and below it on the same axis what the price is with one quantity at a
 * time at its fewest and its most; as an SVG without a title or cautions of its own, to stand in a page that has them.
 */
public final class PriceRangeChart {
    private static final int WIDTH = 820;
    private static final int LEFT = 210;
    private static final int RIGHT = 30;
    private static final int TOP = 34;
    private static final int SPREAD = 120;
    private static final int BAR = 24;
    private static final int BINS = 30;
    private static final int MOST_BARS = 12;
    private static final int LONGEST = 30;

    private final PriceRange range;
    private final List<PriceRange.Swing> swings;
    private final double[] prices;
    private final Axis axis;
    private final StringBuilder svg = new StringBuilder();

    private PriceRangeChart(PriceRange range) {
        this.range = range;
        this.swings = range.swings().stream().limit(MOST_BARS).toList();
        this.prices = range.draws().stream()
                .flatMapToDouble(draw -> draw.price().stream())
                .sorted()
                .toArray();
        double least = prices[0];
        double most = prices[prices.length - 1];
        for (PriceRange.Swing each : swings) {
            for (OptionalDouble end : List.of(each.atLow(), each.atHigh())) {
                least = Math.min(least, end.orElse(least));
                most = Math.max(most, end.orElse(most));
            }
        }
        this.axis = Axis.around(least, most);
    }

    /** Empty where no draw has a price. */
    public static Optional<String> svg(PriceRange range, String currency) {
        return range.draws().stream().allMatch(draw -> draw.price().isEmpty())
                ? Optional.empty()
                : Optional.of(new PriceRangeChart(range).draw(currency));
    }

    private String draw(String currency) {
        int base = TOP + SPREAD;
        int bars = base + 46;
        int height = bars + swings.size() * BAR + 14;
        add(
                "<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 %d %d\" width=\"%d\" height=\"%d\""
                        + " font-family=\"sans-serif\" font-size=\"12\" role=\"img\">",
                WIDTH, height, WIDTH, height);
        add("<title>Drawn prices and what they depend on</title>");
        add("<rect width=\"%d\" height=\"%d\" fill=\"#fff\"/>", WIDTH, height);
        for (double tick : axis.ticks()) {
            add(
                    "<line x1=\"%.1f\" x2=\"%.1f\" y1=\"%d\" y2=\"%d\" stroke=\"#e3e3e3\"/>",
                    x(tick), x(tick), TOP, height - 8);
            text(x(tick), base + 16, "middle", "#333", axis.label(tick));
        }
        text(LEFT - 34, base + 16, "end", "#333", "price" + (currency.isEmpty() ? "" : ", " + currency));
        spread(base);
        percentile(10, base);
        percentile(50, base);
        percentile(90, base);
        for (int i = 0; i < swings.size(); i++) {
            bar(swings.get(i), bars + i * BAR);
        }
        return svg.append("</svg>").toString();
    }

    /** Draws by price, as columns. */
    private void spread(int base) {
        double from = axis.from();
        double step = axis.step() * axis.steps() / BINS;
        int[] counts = new int[BINS];
        for (double price : prices) {
            counts[Math.max(0, Math.min(BINS - 1, (int) ((price - from) / step)))]++;
        }
        int most = 1;
        for (int count : counts) {
            most = Math.max(most, count);
        }
        for (int bin = 0; bin < BINS; bin++) {
            double tall = (double) SPREAD * counts[bin] / most;
            if (counts[bin] > 0) {
                add(
                        "<rect x=\"%.1f\" y=\"%.1f\" width=\"%.1f\" height=\"%.1f\" fill=\"#8fb7c9\"><title>%d of %d draws</title></rect>",
                        x(from + bin * step) + 0.5,
                        base - tall,
                        x(from + step) - x(from) - 1,
                        tall,
                        counts[bin],
                        range.draws().size());
            }
        }
        add("<line x1=\"%d\" x2=\"%d\" y1=\"%d\" y2=\"%d\" stroke=\"#333\"/>", LEFT, WIDTH - RIGHT, base, base);
        text(LEFT - 10, TOP + 14, "end", "#333", prices.length + " drawn prices");
    }

    private void percentile(int percent, int base) {
        range.percentile(percent).ifPresent(price -> {
            double x = x(price);
            add(
                    "<line x1=\"%.1f\" x2=\"%.1f\" y1=\"%d\" y2=\"%d\" stroke=\"#14506e\" stroke-width=\"1.6\"%s/>",
                    x, x, TOP - 6, base, percent == 50 ? "" : " stroke-dasharray=\"5 3\"");
            int row = percent == 50 ? TOP - 24 : TOP - 10;
            text(x, row, percent == 10 ? "end" : percent == 90 ? "start" : "middle", "#14506e", "P" + percent);
        });
    }

    private void bar(PriceRange.Swing swing, int y) {
        text(LEFT - 10, y + 13, "end", "#111", DisplayWidth.cut(swing.range().name(), LONGEST));
        range.likely().ifPresent(likely -> {
            for (OptionalDouble end : List.of(swing.atLow(), swing.atHigh())) {
                end.ifPresent(price -> add(
                        "<rect x=\"%.1f\" y=\"%d\" width=\"%.1f\" height=\"%d\" fill=\"%s\"><title>%s</title></rect>",
                        Math.min(x(price), x(likely)),
                        y + 2,
                        Math.max(0.8, Math.abs(x(price) - x(likely))),
                        BAR - 8,
                        end == swing.atLow() ? "#c7dbe4" : "#1d6f9b",
                        Decimals.fixed(price, 2)));
            }
            add(
                    "<line x1=\"%.1f\" x2=\"%.1f\" y1=\"%d\" y2=\"%d\" stroke=\"#111\"/>",
                    x(likely), x(likely), y, y + BAR - 4);
        });
        ends(swing, y + 13);
    }

    /** Quantities at the ends, outside the bar. */
    private void ends(PriceRange.Swing swing, int y) {
        double low = swing.atLow().orElse(range.likely().orElse(axis.from()));
        double high = swing.atHigh().orElse(range.likely().orElse(axis.from()));
        text(
                x(Math.min(low, high)) - 5,
                y,
                "end",
                "#333",
                Integer.toString(swing.range().low()));
        text(
                x(Math.max(low, high)) + 5,
                y,
                "start",
                "#333",
                swing.range().high() + (swing.atHigh().isEmpty() ? ": " + PriceRangeText.none(range) : ""));
    }

    private void text(double x, double y, String anchor, String colour, String words) {
        add(
                "<text x=\"%.1f\" y=\"%.1f\" text-anchor=\"%s\" fill=\"%s\">%s</text>",
                x, y, anchor, colour, Harmless.xml(words));
    }

    private double x(double price) {
        return LEFT + (WIDTH - LEFT - RIGHT) * axis.part(price);
    }

    private void add(String format, Object... values) {
        svg.append(String.format(Locale.ROOT, format, values));
    }
}
