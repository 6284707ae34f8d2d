package evenrise.solver.exact;

/** The project is too large for the exact model, or has figures that its whole numbers cannot hold. */
public class Unfit extends RuntimeException {
    private static final long serialVersionUID = 1;

    Unfit(String why) {
        super(why);
    }
}
