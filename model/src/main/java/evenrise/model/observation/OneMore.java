package evenrise.model.observation;

import java.util.Arrays;

/** What several of a kind say of one more: the upper end of a prediction (normal, one-sided, 95 %: mean + t·s·√(1 + 1/n)). */
public final class OneMore {
    /** Of fewer nothing is concluded. */
    public static final int FEWEST = 3;

    /** Student's t, one-sided 95 %, for 2 degrees of freedom and more; then the normal's (standard tables, from memory). */
    private static final double[] T = {
        2.920, 2.353, 2.132, 2.015, 1.943, 1.895, 1.860, 1.833, 1.812, 1.796, 1.782, 1.771, 1.761, 1.753, 1.746, 1.740,
        1.734, 1.729, 1.725, 1.721, 1.717, 1.714, 1.711, 1.708, 1.706, 1.703, 1.701, 1.699, 1.697
    };

    private static final double T_OF_MANY = 1.697;

    private OneMore() {}

    public static double mean(double[] values) {
        return Arrays.stream(values).sum() / values.length;
    }

    /**
     * What one more of them stays below with 95 %.
     *
     * @param values three and more
     */
    public static double staysBelow(double[] values) {
        double mean = mean(values);
        double squares =
                Arrays.stream(values).map(each -> (each - mean) * (each - mean)).sum();
        int n = values.length;
        double deviation = Math.sqrt(squares / (n - 1));
        double t = n - FEWEST < T.length ? T[n - FEWEST] : T_OF_MANY;
        return mean + t * deviation * Math.sqrt(1 + 1.0 / n);
    }
}
