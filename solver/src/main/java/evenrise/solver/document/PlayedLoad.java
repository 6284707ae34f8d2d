package evenrise.solver.document;

/**
 * A load as the page plays it.
 *
 * @param phases letters
 * @param on seconds; negative for a load that is always on
 * @param half seconds in which the excess halves
 */
public record PlayedLoad(
        String id,
        String name,
        String role,
        String group,
        String panel,
        String slots,
        String phases,
        String board,
        double on,
        double base,
        double excess,
        double half,
        double running) {}
