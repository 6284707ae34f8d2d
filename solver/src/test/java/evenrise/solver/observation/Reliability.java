package evenrise.solver.observation;

import java.util.ArrayList;
import java.util.List;

/** How often statements are right beside how sure they are said to be. */
final class Reliability {
    private static final double[] EDGES = {0, 0.5, 0.8, 0.95, 0.975, 1};

    private Reliability() {}

    record Statement(double confidence, boolean isRight) {}

    /** Statements about as sure as each other. */
    record Bin(double from, double to, int count, int right, double stated) {
        /**
         * Whether so many right ones, or a number further from what is stated, come of chance in more than so many cases,
         * half of them on either side.
         */
        boolean isCalibrated(double rare) {
            return atMost(right) > rare / 2 && 1 - atMost(right - 1) > rare / 2;
        }

        /** What so many statements that are as right as stated come to, all but rare samples: the least or the greatest part. */
        double limit(boolean isLeast, double rare) {
            int some = isLeast ? 0 : count;
            while (isLeast ? atMost(some) <= rare / 2 : 1 - atMost(some - 1) <= rare / 2) {
                some += isLeast ? 1 : -1;
            }
            return (double) some / count;
        }

        /** Probability of so many right ones or fewer, where each is right with what is stated (binomial). */
        double atMost(int some) {
            double sum = 0;
            double logarithm = count * Math.log1p(-stated);
            for (int i = 0; i <= some; i++) {
                sum += Math.exp(logarithm);
                logarithm += Math.log((count - i) / (i + 1.0)) + Math.log(stated / (1 - stated));
            }
            return Math.min(1, sum);
        }
    }

    static List<Bin> bins(List<Statement> statements) {
        List<Bin> bins = new ArrayList<>();
        for (int i = 0; i + 1 < EDGES.length; i++) {
            double from = EDGES[i];
            double to = EDGES[i + 1];
            List<Statement> own = statements.stream()
                    .filter(each -> each.confidence() >= from && each.confidence() < to)
                    .toList();
            if (!own.isEmpty()) {
                bins.add(new Bin(
                        from,
                        to,
                        own.size(),
                        (int) own.stream().filter(Statement::isRight).count(),
                        own.stream()
                                .mapToDouble(Statement::confidence)
                                .average()
                                .orElseThrow()));
            }
        }
        return bins;
    }
}
