package evenrise.solver.exact;

/** Thrown where order and outputs leave a load no time to come on within the longest duration that is asked for. */
final class NoTime extends Unfit {
    private static final long serialVersionUID = 1;

    NoTime(String reason) {
        super(reason);
    }
}
