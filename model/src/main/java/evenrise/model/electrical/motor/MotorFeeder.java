package evenrise.model.electrical.motor;

import evenrise.model.electrical.breaker.StandardRatings;
import evenrise.model.project.Practice;
import java.util.ArrayList;
import java.util.List;

/**
 * One line conductor of a feeder with motors by NEC 430.24 and 430.62, other loads with it by 430.63. Currents add as
 * numbers.
 */
public final class MotorFeeder {
    private final List<Double> fullLoads = new ArrayList<>();
    private double largestBranchAmps;
    private double largestBranchOwnAmps;
    private double others;
    private double othersAtTheirRating;
    private boolean hasUnknown;

    /**
     * A motor.
     *
     * @param branchDeviceAmps the largest that table 430.52 allows its branch, not the one that is built in
     */
    public void addMotor(double fullLoadAmps, double branchDeviceAmps) {
        fullLoads.add(fullLoadAmps);
        boolean isLarger = branchDeviceAmps > largestBranchAmps
                || branchDeviceAmps == largestBranchAmps && fullLoadAmps < largestBranchOwnAmps;
        if (isLarger) {
            largestBranchAmps = branchDeviceAmps;
            largestBranchOwnAmps = fullLoadAmps;
        }
    }

    /** @param sizingAmps 125 % of what is continuous, unless the device carries its whole rating */
    public void addOther(double amps, double sizingAmps) {
        others += amps;
        othersAtTheirRating += sizingAmps;
    }

    /** A motor of which too little is known. */
    public void addUnknown() {
        hasUnknown = true;
    }

    /** Whether the figures leave a motor out. */
    public boolean hasUnknown() {
        return hasUnknown;
    }

    /** NEC 215.3: least rating of the device, its motors at full load, the other loads with their allowance. */
    public double ratingAmps() {
        return othersAtTheirRating + motorAmps();
    }

    /** NEC 430.24: least ampacity, 125 % of the largest motor, the others, and the other loads with their allowance. */
    public double conductorAmps() {
        return correctedConductorAmps() - others + othersAtTheirRating;
    }

    /** The same without what other loads have for running on; no correction for air or grouping excuses the rest. */
    public double correctedConductorAmps() {
        double largest =
                fullLoads.stream().mapToDouble(Double::doubleValue).max().orElse(0);
        return others + motorAmps() + (MotorBranch.CONDUCTOR_RATIO - 1) * largest;
    }

    /**
     * NEC 430.62(A) and 430.63: the largest branch device, the other motors and the other loads; the device is the standard
     * rating that does not exceed it.
     */
    public double deviceAmps() {
        return largestBranchAmps + motorAmps() - largestBranchOwnAmps + othersAtTheirRating;
    }

    /** The standard rating below {@link #deviceAmps}; that sum itself where it is below every standard rating. */
    public double standardDeviceAmps() {
        return StandardRatings.atMost(Practice.NEC, deviceAmps()).orElse(deviceAmps());
    }

    private double motorAmps() {
        return fullLoads.stream().mapToDouble(Double::doubleValue).sum();
    }
}
