package evenrise.model.estimate;

import evenrise.model.project.AddedPercentage;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A price from material and labour on: percentages in their order, each to the cent of its base, and the total.
 *
 * @param added one for each percentage
 */
public record PriceBuildUp(BigDecimal material, BigDecimal labour, List<Added> added) {
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);
    private static final BigDecimal HALF_A_CENT = new BigDecimal("0.005");

    /** What a percentage comes to. */
    public record Added(AddedPercentage percentage, BigDecimal amount) {}

    public PriceBuildUp {
        added = List.copyOf(added);
    }

    /** Of what has a price. */
    public static PriceBuildUp of(List<BillLine> lines, List<AddedPercentage> percentages) {
        BigDecimal material = zero();
        BigDecimal labour = zero();
        for (BillLine line : lines) {
            Optional<BigDecimal> sum = line.sum();
            if (sum.isPresent() && line.kind() == CostKind.MATERIAL) {
                material = material.add(sum.get());
            } else if (sum.isPresent()) {
                labour = labour.add(sum.get());
            }
        }
        return of(material, labour, percentages);
    }

    public static PriceBuildUp of(BigDecimal material, BigDecimal labour, List<AddedPercentage> percentages) {
        List<Added> added = new ArrayList<>();
        BigDecimal above = material.add(labour);
        for (AddedPercentage each : percentages) {
            BigDecimal base =
                    switch (each.of()) {
                        case MATERIAL -> material;
                        case LABOUR -> labour;
                        case MATERIAL_AND_LABOUR -> material.add(labour);
                        case ALL_ABOVE -> above;
                    };
            BigDecimal amount = base.multiply(part(each)).setScale(BillLine.DECIMALS, RoundingMode.HALF_UP);
            added.add(new Added(each, amount));
            above = above.add(amount);
        }
        return new PriceBuildUp(material, labour, added);
    }

    public BigDecimal total() {
        return added.stream().map(Added::amount).reduce(material.add(labour), BigDecimal::add);
    }

    /**
     * What a unit of material and a unit of labour come to in the total, but for rounding: percentages are parts of their
     * bases, so the total is the sum of both.
     */
    public static double factor(CostKind kind, List<AddedPercentage> percentages) {
        double all = 1;
        for (AddedPercentage each : percentages) {
            double base =
                    switch (each.of()) {
                        case MATERIAL -> kind == CostKind.MATERIAL ? 1 : 0;
                        case LABOUR -> kind == CostKind.LABOUR ? 1 : 0;
                        case MATERIAL_AND_LABOUR -> 1;
                        case ALL_ABOVE -> all;
                    };
            all += base * each.percent() / 100;
        }
        return all;
    }

    /** By how much cents that are rounded off may move the total at most, where so many lines are rounded. */
    public static double mostRounded(int lines, List<AddedPercentage> percentages) {
        BigDecimal most = HALF_A_CENT.multiply(BigDecimal.valueOf(lines));
        for (AddedPercentage each : percentages) {
            most = most.add(most.multiply(part(each))).add(HALF_A_CENT);
        }
        return most.doubleValue();
    }

    private static BigDecimal part(AddedPercentage percentage) {
        return BigDecimal.valueOf(percentage.percent()).divide(HUNDRED);
    }

    private static BigDecimal zero() {
        return BigDecimal.ZERO.setScale(BillLine.DECIMALS);
    }
}
