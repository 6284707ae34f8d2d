package evenrise.model.estimate;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Lines of things of which each is bought of a kind, so that things of one kind count together where prices fall with
 * numbers. Which kind that is, list prices say: the cheapest of those that are large enough, and none without a price.
 */
final class KindLines<K> {
    private final Function<K, UnitPrices> prices;
    private final Map<String, BigDecimal> quantities = new LinkedHashMap<>();
    private final Map<String, Optional<K>> kinds = new HashMap<>();

    KindLines(Function<K, UnitPrices> prices) {
        this.prices = prices;
    }

    /** @param enough kinds that are large enough for one such thing */
    void count(String item, Stream<K> enough) {
        quantities.merge(item, BigDecimal.ONE, BigDecimal::add);
        kinds.computeIfAbsent(item, any -> cheapest(enough));
    }

    private Optional<K> cheapest(Stream<K> enough) {
        return enough.filter(kind -> listPrice(kind).isPresent())
                .min(Comparator.comparing(kind -> listPrice(kind).orElseThrow()));
    }

    private Optional<BigDecimal> listPrice(K kind) {
        return prices.apply(kind).at(1);
    }

    List<BillLine> lines() {
        Map<K, Long> counts = new HashMap<>();
        quantities.forEach((item, quantity) ->
                kinds.get(item).ifPresent(kind -> counts.merge(kind, quantity.longValue(), Long::sum)));
        List<BillLine> lines = new ArrayList<>();
        quantities.forEach((item, quantity) -> lines.add(BillLine.material(
                item,
                quantity,
                kinds.get(item).flatMap(kind -> prices.apply(kind).at(counts.get(kind))))));
        return lines;
    }
}
