package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.measured.Discrepancy;
import evenrise.model.measured.MeasuredQuantity;
import evenrise.model.measured.Visit;
import java.util.OptionalDouble;

/**
 * One difference as people read it, on screens, pages and in tables.
 *
 * @param subject load, panel, node or device, with its phase
 * @param quantity with its unit
 * @param within how far meter and model may be off; empty where there is nothing to be off
 */
public record DiscrepancyRow(
        Discrepancy.Weight weight,
        String subject,
        String quantity,
        String planned,
        String measured,
        String within,
        String cause,
        String lookAt,
        String date,
        String meter,
        String at) {
    public static DiscrepancyRow of(Discrepancy each) {
        Visit visit = each.visit();
        String unit = each.quantity().unit();
        return new DiscrepancyRow(
                each.weight(),
                each.subject() + each.phase().map(phase -> " " + phase).orElse(""),
                each.quantity().words() + (unit.isEmpty() ? "" : ", " + unit),
                number(each.planned(), each.quantity()),
                number(each.measured(), each.quantity()),
                each.tolerance() > 0 ? Decimals.fixed(each.tolerance(), decimals(each.quantity())) : "",
                each.cause(),
                each.lookAt(),
                visit.date().orElse(""),
                visit.meter().name(),
                visit.at());
    }

    private static String number(OptionalDouble value, MeasuredQuantity quantity) {
        return value.isPresent() ? Decimals.fixed(value.getAsDouble(), decimals(quantity)) : "";
    }

    private static int decimals(MeasuredQuantity quantity) {
        return switch (quantity) {
            case PEAK, VOLTAGE, LEAKAGE, TRIP_CURRENT, HALF -> 1;
            case TRIP_TIME -> 0;
            default -> 2;
        };
    }

    /** How it is to be taken, in a word. */
    public String weightWord() {
        return switch (weight) {
            case UNSAFE -> "unsafe";
            case FAULT -> "fault";
            case DIFFERS -> "differs";
            case LESS -> "less";
        };
    }
}
