package evenrise.solver.document;

import evenrise.model.contract.Words;
import evenrise.model.project.Role;
import java.util.Arrays;
import java.util.List;

/**
 * A load as the page plays it.
 *
 * @param phases letters
 * @param on seconds; {@link #ALWAYS_ON} for a load that is not switched, {@link #NOT_ASSIGNED} for one that is but has no
 *     output; both draw from the beginning on, as the referee counts them
 * @param system by its place among the document's; -1 for what no command of a system switches
 * @param way by which it reaches the nodes, by its place in the document's {@link PlayedParts}
 * @param settle seconds from its switch-on until what needs it may come on
 * @param drops whether an emergency switches it off
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
        double running,
        int system,
        int way,
        double settle,
        boolean drops) {
    /** In the order in which they come on. */
    public static final List<String> ROLES =
            Arrays.stream(Role.values()).map(Words::word).toList();

    static final double ALWAYS_ON = -1;
    static final double NOT_ASSIGNED = -2;
}
