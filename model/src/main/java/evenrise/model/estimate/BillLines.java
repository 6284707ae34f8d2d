package evenrise.model.estimate;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Lines of things to buy while they are counted, in the order in which they first come. */
final class BillLines {
    private final Map<String, BillLine> lines = new LinkedHashMap<>();

    void count(String item, Optional<BigDecimal> unitPrice) {
        add(item, BigDecimal.ONE, unitPrice);
    }

    void add(String item, BigDecimal quantity, Optional<BigDecimal> unitPrice) {
        lines.merge(item, BillLine.material(item, quantity, unitPrice), (before, one) -> before.more(quantity));
    }

    List<BillLine> lines() {
        return List.copyOf(lines.values());
    }
}
