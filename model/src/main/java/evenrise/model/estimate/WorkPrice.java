package evenrise.model.estimate;

import evenrise.model.project.Catalogue;
import evenrise.model.project.LabourHours;
import java.math.BigDecimal;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.Function;

/** What work costs: a price of its own, or hours at a rate of which a part is worked at night. */
final class WorkPrice {
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);

    private final Optional<LabourHours> hours;

    WorkPrice(Catalogue catalogue) {
        this.hours = catalogue.labourHours();
    }

    /** Without a price where neither is stated. */
    BillLine line(
            String item, BigDecimal quantity, OptionalDouble price, Function<LabourHours, OptionalDouble> stated) {
        OptionalDouble each = hours.map(stated).orElse(OptionalDouble.empty());
        return each.isPresent()
                ? line(item, quantity, BigDecimal.valueOf(each.getAsDouble()))
                : new BillLine(item, CostKind.LABOUR, quantity, decimal(price), BigDecimal.ZERO);
    }

    /** Of so many hours each. */
    BillLine line(String item, BigDecimal quantity, BigDecimal unitHours) {
        return new BillLine(item, CostKind.LABOUR, quantity, averageRate().map(unitHours::multiply), unitHours);
    }

    /** Of an hour, by day and at night as they are parted; empty where one that is needed is not stated. */
    private Optional<BigDecimal> averageRate() {
        if (hours.isEmpty()) {
            return Optional.empty();
        }
        LabourHours it = hours.get();
        BigDecimal atNight = BigDecimal.valueOf(it.nightPercent());
        if (atNight.signum() > 0 && it.nightRate().isEmpty()) {
            return Optional.empty();
        }
        BigDecimal night = BigDecimal.valueOf(it.nightRate().orElse(0)).multiply(atNight);
        return Optional.of(BigDecimal.valueOf(it.rate())
                .multiply(HUNDRED.subtract(atNight))
                .add(night)
                .divide(HUNDRED));
    }

    private static Optional<BigDecimal> decimal(OptionalDouble price) {
        return price.stream().mapToObj(BigDecimal::valueOf).findFirst();
    }
}
