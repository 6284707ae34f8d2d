package evenrise.solver.app;

import evenrise.solver.document.LabelKind;
import evenrise.solver.rendering.LabelStock;
import java.util.List;

/**
 * Labels on stock sheets that are asked for beside the other documents.
 *
 * @param stocks each a stock by its name or its sizes, for breakers, cables and leads, or for one kind: {@code
 *     cable=a4-63.5x38.1}; none where there are to be no labels
 * @param address of the page, to which codes to scan lead
 * @since 0.1.0
 */
public record LabelOrder(List<String> stocks, String address) {
    /** None. */
    public static final LabelOrder NONE = new LabelOrder(List.of(), "plan.html");

    /** Names of stock sheets that are known; any other is told in millimetres. */
    public static List<String> knownStocks() {
        return List.copyOf(LabelStock.NAMED.keySet());
    }

    /** What labels are for, by their words. */
    public static List<String> kinds() {
        return LabelKind.ALL.stream().map(LabelKind::word).toList();
    }

    public LabelOrder {
        stocks = List.copyOf(stocks);
    }
}
