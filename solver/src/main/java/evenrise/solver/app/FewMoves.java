package evenrise.solver.app;

import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * How far a plan may go from an earlier one. A move is a breaker in another place or a control lead on another output;
 * settings are dialled and do not count, nor does what the earlier plan does not have.
 *
 * @param most moves; empty where only their price counts
 * @param perMoveAmps what a move costs, in ampere-equivalents of the objective; empty for nothing
 * @since 0.1.0
 */
public record FewMoves(OptionalInt most, OptionalDouble perMoveAmps) {
    /** As many as it takes. */
    public static final FewMoves ANY = new FewMoves(OptionalInt.empty(), OptionalDouble.empty());

    public FewMoves {
        if (most.isPresent() && most.getAsInt() < 0) {
            throw new IllegalArgumentException("most is " + most.getAsInt() + ", expected at least 0");
        }
        if (perMoveAmps.isPresent() && !(perMoveAmps.getAsDouble() >= 0 && perMoveAmps.getAsDouble() <= 1e9)) {
            throw new IllegalArgumentException("perMoveAmps is " + perMoveAmps.getAsDouble() + ", expected 0 to 1e9");
        }
    }

    /** At most so many. */
    public static FewMoves most(int moves) {
        return new FewMoves(OptionalInt.of(moves), OptionalDouble.empty());
    }

    boolean isAny() {
        return most.isEmpty() && perMoveAmps.isEmpty();
    }
}
