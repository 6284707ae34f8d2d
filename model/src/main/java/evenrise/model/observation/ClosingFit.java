package evenrise.model.observation;

import evenrise.model.observation.ObservedStart.Finding;
import evenrise.model.project.Spread;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.DoubleUnaryOperator;

/**
 * How closing times spread about the plan, by the likelihood of what was recorded: evenly within a tolerance, or in the
 * bell that {@code scatter} knows. A recording shows a start only to the interval between its samples, any moment within it
 * as likely, which is taken into account.
 *
 * @param count of closings
 * @param spread that explains them better
 * @param toleranceSeconds of that spread, at which they are likeliest
 * @param logOdds by how much it explains them better than the other: logarithm of the ratio of likelihoods
 * @param greatestSeconds how far the furthest of them was seen from its time
 */
public record ClosingFit(int count, Spread spread, double toleranceSeconds, double logOdds, double greatestSeconds) {
    /** Of fewer closings nothing is said. */
    private static final int FEWEST = 20;

    /** A kind of spread is stated from these odds on, 20 to 1. */
    private static final double SURE = Math.log(20);

    /** Tolerances from so much of an interval on are tried, each so much more than the one before. */
    private static final double LEAST_OF_AN_INTERVAL = 0.05;

    private static final double NEXT = 1.02;

    /** Deviations that a bell has within its tolerance, where it is cut off. */
    private static final double CUT = 3;

    /** What is told for something else at work than scatter: a closing in a million. */
    private static final double OUTLIER = 1e-6;

    private record Fitted(double toleranceSeconds, double logLikelihood) {}

    /** Of loads that came on alone as planned; empty where they are too few. */
    public static Optional<ClosingFit> of(Observation seen) {
        double[] late = lateSeconds(seen).values().stream()
                .mapToDouble(Double::doubleValue)
                .toArray();
        return of(late, seen.intervalSeconds());
    }

    /** How much later than planned loads came on, by load, of those that came on alone as planned. */
    static Map<String, Double> lateSeconds(Observation seen) {
        Map<String, Double> late = new LinkedHashMap<>();
        seen.starts().stream()
                .filter(each -> each.finding() == Finding.AS_PLANNED
                        && each.expected().loads().size() == 1
                        && each.planSeconds().isPresent())
                .forEach(each -> late.put(
                        each.expected().loads().get(0),
                        each.planSeconds().orElseThrow() - each.expected().seconds()));
        return late;
    }

    /** @param late how much later than planned each closed, as it was seen */
    static Optional<ClosingFit> of(double[] late, double intervalSeconds) {
        if (late.length < FEWEST) {
            return Optional.empty();
        }
        double[] sorted = late.clone();
        Arrays.sort(sorted);
        double middle = (sorted[(sorted.length - 1) / 2] + sorted[sorted.length / 2]) / 2;
        double[] off = Arrays.stream(late).map(each -> each - middle).toArray();
        double greatest = Arrays.stream(off).map(Math::abs).max().orElseThrow();
        Fitted even = fitted(off, intervalSeconds, greatest, ClosingFit::even);
        Fitted bell = fitted(off, intervalSeconds, greatest, ClosingFit::bell);
        boolean isBell = bell.logLikelihood() > even.logLikelihood();
        return Optional.of(new ClosingFit(
                late.length,
                isBell ? Spread.NORMAL : Spread.UNIFORM,
                (isBell ? bell : even).toleranceSeconds(),
                Math.abs(bell.logLikelihood() - even.logLikelihood()),
                greatest));
    }

    /** Whether the other spread is ruled out, by odds. */
    public boolean isSure() {
        return logOdds >= SURE;
    }

    /** @param below chance that a closing is earlier than so many tolerances after its time */
    private static Fitted fitted(double[] off, double interval, double greatest, DoubleUnaryOperator below) {
        Fitted best = new Fitted(0, Double.NEGATIVE_INFINITY);
        double most = CUT * (greatest + interval);
        for (double tolerance = LEAST_OF_AN_INTERVAL * interval; tolerance <= most; tolerance *= NEXT) {
            double sum = 0;
            for (double each : off) {
                double chance = below.applyAsDouble((each + interval / 2) / tolerance)
                        - below.applyAsDouble((each - interval / 2) / tolerance);
                sum += Math.log((1 - OUTLIER) * chance / interval + OUTLIER / most);
            }
            if (sum > best.logLikelihood()) {
                best = new Fitted(tolerance, sum);
            }
        }
        return best;
    }

    private static double even(double tolerances) {
        return Math.max(0, Math.min(1, (tolerances + 1) / 2));
    }

    private static double bell(double tolerances) {
        double cut = normal(CUT);
        double within = normal(CUT * Math.max(-1, Math.min(1, tolerances)));
        return (within - (1 - cut)) / (2 * cut - 1);
    }

    /** Distribution of a normal variable: Abramowitz and Stegun, 7.1.26, off by no more than 1.5·10⁻⁷ (from memory). */
    private static double normal(double deviations) {
        double x = Math.abs(deviations) / Math.sqrt(2);
        double t = 1 / (1 + 0.3275911 * x);
        double tail = t
                * (0.254829592 + t * (-0.284496736 + t * (1.421413741 + t * (-1.453152027 + t * 1.061405429))))
                * Math.exp(-x * x);
        return deviations >= 0 ? 1 - tail / 2 : tail / 2;
    }
}
