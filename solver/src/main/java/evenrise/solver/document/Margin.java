package evenrise.solver.document;

import evenrise.model.contract.Decimals;

/**
 * A figure beside what it is held against.
 *
 * @param what which figure of the place
 * @param figure never above {@code limit} where the limit is kept
 * @param unit of both
 * @param basis which rule or clause the limit comes from
 */
public record Margin(String place, String what, double figure, double limit, String unit, String basis) {
    /** Part of the limit that is used. */
    public double usedPercent() {
        return 100 * figure / limit;
    }

    /** What is left; below zero where the limit is exceeded. */
    public double left() {
        return limit - figure;
    }

    /** Length of a bar that ends at the limit. */
    public String bar() {
        return Decimals.fixed(Math.min(100, usedPercent()), 1);
    }

    public boolean isOver() {
        return figure > limit + 1e-6;
    }
}
