package evenrise.model.estimate;

import java.util.OptionalDouble;

/**
 * One line of a bill of materials.
 *
 * @param unitPrice empty where the project states none
 */
public record BillLine(String item, int quantity, OptionalDouble unitPrice) {
    public OptionalDouble sum() {
        return unitPrice.isPresent() ? OptionalDouble.of(quantity * unitPrice.getAsDouble()) : unitPrice;
    }
}
