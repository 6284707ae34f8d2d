package evenrise.solver.report;

import evenrise.solver.compare.PriceRange;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Prices of alternates where quantities are open; those of which they are the same stand together.
 *
 * @param names of the alternates
 * @param sentence of P10, P50 and P90
 * @param svg how they are spread; empty where no draw has a price
 * @param reasons why some ends have no price
 */
public record DrawnPrices(String names, String sentence, Optional<String> svg, List<String> reasons) {
    /** How prices are drawn. */
    public static final String HOW = PriceRangeText.HOW_OWN;

    /** None where nothing was drawn. */
    public static List<DrawnPrices> of(List<Alternate> all) {
        Map<PriceRange, List<Alternate>> same = new LinkedHashMap<>();
        all.forEach(each -> each.range()
                .ifPresent(range ->
                        same.computeIfAbsent(range, any -> new ArrayList<>()).add(each)));
        return same.entrySet().stream()
                .map(each -> new DrawnPrices(
                        String.join(
                                ", ",
                                each.getValue().stream().map(Alternate::name).toList()),
                        PriceRangeText.sentence(each.getKey()),
                        PriceRangeChart.svg(
                                each.getKey(), each.getValue().get(0).currency().orElse("")),
                        PriceRangeText.reasons(each.getKey())))
                .toList();
    }
}
