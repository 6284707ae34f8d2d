package evenrise.model.electrical.breaker;

import evenrise.model.project.Practice;
import java.util.OptionalDouble;

/**
 * The rating of a branch breaker by what it carries, never by an inrush: a breaker also protects outlet, cord and cable
 * (NEC 210.20(A), 210.21(B), 240.5; IEC 60364-4-43 clause 433.1), and an inrush that trips it is a matter of its curve.
 * Motors and transformers alone may have more, by tables of their own.
 */
public final class BranchRating {
    /** NEC table 430.52(C)(1), inverse-time breakers of single-phase and squirrel-cage motors; read in one copy. */
    public static final double MOTOR_RATIO = 2.5;

    /** NEC table 450.3(B), primary protection alone, 9 A and more; read in three copies, as the next two. */
    private static final double TRANSFORMER_RATIO = 1.25;

    private static final double SMALL_TRANSFORMER_RATIO = 1.67;
    private static final double TINY_TRANSFORMER_RATIO = 3;

    /** NEC table 450.3(B), primary protection where the secondary has its own. */
    public static final double TRANSFORMER_WITH_SECONDARY_RATIO = 2.5;

    private static final double SMALL_BELOW_AMPS = 9;
    private static final double TINY_BELOW_AMPS = 2;

    private BranchRating() {}

    /**
     * The least standard rating of which {@code usablePart} carries the current; empty above the last.
     *
     * @param usablePart 0.8 for loads of three hours or more by NEC 210.20(A), at most 1 by IEC 60364-4-43 clause 433.1
     */
    public static OptionalDouble carrying(Practice practice, double amps, double usablePart) {
        return StandardRatings.atLeast(practice, amps / usablePart - 1e-9);
    }

    /**
     * The most that NEC 430.52(C)(1) allows an inverse-time breaker at first: 250 % of the full-load current, and the next
     * standard rating where that is none (exception 1).
     */
    public static OptionalDouble ofMotor(double fullLoadAmps) {
        return StandardRatings.atLeast(Practice.NEC, MOTOR_RATIO * fullLoadAmps - 1e-9);
    }

    /**
     * The most that NEC table 450.3(B) allows on the primary where the secondary has no protection: 125 % and the next
     * standard rating from 9 A, else 167 %, or 300 % below 2 A, without going up. Empty where no standard rating is so low.
     */
    public static OptionalDouble ofTransformer(double primaryAmps) {
        if (primaryAmps >= SMALL_BELOW_AMPS) {
            return StandardRatings.atLeast(Practice.NEC, TRANSFORMER_RATIO * primaryAmps - 1e-9);
        }
        double ratio = primaryAmps < TINY_BELOW_AMPS ? TINY_TRANSFORMER_RATIO : SMALL_TRANSFORMER_RATIO;
        return StandardRatings.atMost(Practice.NEC, ratio * primaryAmps + 1e-9);
    }
}
