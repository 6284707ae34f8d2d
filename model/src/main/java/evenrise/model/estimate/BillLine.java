package evenrise.model.estimate;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Optional;

/**
 * One line of a bill of materials. Prices are decimals as the file has them.
 *
 * @param quantity of things, or metres where the item says so
 * @param unitPrice empty where the project states none
 * @param unitHours of work by hours; 0 of what has none
 */
public record BillLine(
        String item, CostKind kind, BigDecimal quantity, Optional<BigDecimal> unitPrice, BigDecimal unitHours) {
    /** Money has so many decimals. */
    static final int DECIMALS = 2;

    /** Of things to buy. */
    static BillLine material(String item, BigDecimal quantity, Optional<BigDecimal> unitPrice) {
        return new BillLine(item, CostKind.MATERIAL, quantity, unitPrice, BigDecimal.ZERO);
    }

    /** To the cent: what is printed adds up. */
    public Optional<BigDecimal> sum() {
        return unitPrice.map(each -> quantity.multiply(each).setScale(DECIMALS, RoundingMode.HALF_UP));
    }

    public BigDecimal hours() {
        return quantity.multiply(unitHours);
    }

    BillLine more(BigDecimal amount) {
        return new BillLine(item, kind, quantity.add(amount), unitPrice, unitHours);
    }
}
