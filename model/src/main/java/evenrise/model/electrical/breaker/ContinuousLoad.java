package evenrise.model.electrical.breaker;

/** The rating that a current needs. */
public final class ContinuousLoad {
    /** NEC 210.20(A) and 215.3: 125 % of what flows for three hours or more, unless the device carries its whole rating. */
    public static final double CONTINUOUS_RATIO = 1.25;

    private ContinuousLoad() {}

    /** Least rating in ampere by NEC practice. */
    public static double necAmps(double runningAmps, boolean isContinuous, boolean isFullyRated) {
        return isContinuous && !isFullyRated ? CONTINUOUS_RATIO * runningAmps : runningAmps;
    }
}
