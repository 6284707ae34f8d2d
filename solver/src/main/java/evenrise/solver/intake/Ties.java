package evenrise.solver.intake;

import java.util.OptionalDouble;

/**
 * What else a list may say of how a piece is fed and switched.
 *
 * @param system that it is switched with; empty where the list says none
 * @param fedFrom panel; empty where the list says none
 * @param rack that it is mounted in; empty where the list says none
 * @param contactor that it is behind; empty where it is behind none
 * @param lineToNeutralVolts that it is made for, where the list states it so
 * @param offAfterSeconds how much later than its turn it goes off
 */
record Ties(
        String system,
        String fedFrom,
        String rack,
        String contactor,
        OptionalDouble lineToNeutralVolts,
        double offAfterSeconds) {
    static final Ties NONE = new Ties("", "", "", "", OptionalDouble.empty(), 0);

    Ties from(String panel) {
        return new Ties(system, panel, rack, contactor, lineToNeutralVolts, offAfterSeconds);
    }
}
