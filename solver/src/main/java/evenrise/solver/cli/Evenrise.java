package evenrise.solver.cli;

/** The command line's way in. */
public final class Evenrise {
    private Evenrise() {}

    public static void main(String[] arguments) {
        throw new UnsupportedOperationException("being written");
    }
}
