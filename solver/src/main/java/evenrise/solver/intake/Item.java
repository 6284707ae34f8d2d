package evenrise.solver.intake;

import evenrise.model.project.Role;

/**
 * One row of a list: so many equal pieces.
 *
 * @param place where the list has it
 * @param room with the rack, where there is one
 * @param zone shutdown zone; empty where there is none
 * @param feed of a redundant piece, A or B; empty for others
 * @param amps running line current of one piece
 * @param inrushPeakAmps instantaneous, of one piece
 */
record Item(
        String place,
        int quantity,
        String name,
        String room,
        Role role,
        String zone,
        String feed,
        int poles,
        double amps,
        double idleAmps,
        double inrushPeakAmps,
        double powerFactor) {

    /** What pieces must share to be on one breaker. */
    record Kind(String room, Role role, String zone, String feed, int poles) {}

    Kind kind() {
        return new Kind(room, role, zone, feed, poles);
    }
}
