package evenrise.solver.script.contract;

/** In a page: what is judged there was held against the contract before it was mailed. */
public final class Contract {
    private Contract() {}

    public static void check(Class<? extends Record> type, Object... values) {
        // Nothing is asked: see above.
    }
}
