package evenrise.solver.engine.state;

/**
 * How unlike the amplifiers of each board are in what they draw as they come on, kept up to date load by load. Excesses
 * count by their mean, in thousandths.
 */
final class BoardMix {
    private final CompiledProject compiled;
    private final long[] excess;
    private final int[] count;
    private final long[] sum;
    private final long[] squares;
    private long millionths;

    BoardMix(CompiledProject compiled) {
        this.compiled = compiled;
        excess = excess();
        count = new int[compiled.boardCount];
        sum = new long[compiled.boardCount];
        squares = new long[compiled.boardCount];
    }

    private long[] excess() {
        double total = 0;
        int amplifiers = 0;
        for (int load = 0; load < compiled.loadCount(); load++) {
            if (isCounted(load)) {
                total += compiled.loads[load].excessAmps();
                amplifiers++;
            }
        }
        long[] parts = new long[compiled.loadCount()];
        for (int load = 0; load < parts.length && total > 0; load++) {
            parts[load] = Math.round(1000 * compiled.loads[load].excessAmps() * amplifiers / total);
        }
        return parts;
    }

    private boolean isCounted(int load) {
        return compiled.switched[load] && compiled.role[load] == CompiledProject.AMPLIFIER;
    }

    /** A load takes an output of a board, or leaves it. */
    void add(int load, int board, int sign) {
        if (isCounted(load)) {
            millionths -= squaresOffMean(board);
            count[board] += sign;
            sum[board] += sign * excess[load];
            squares[board] += sign * excess[load] * excess[load];
            millionths += squaresOffMean(board);
        }
    }

    private long squaresOffMean(int board) {
        return count[board] == 0 ? 0 : squares[board] - sum[board] * sum[board] / count[board];
    }

    /** Sum over amplifiers of the square of what each is off the mean of its board. */
    double unlikeness() {
        return millionths / 1e6;
    }
}
