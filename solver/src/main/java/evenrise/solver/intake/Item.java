package evenrise.solver.intake;

import evenrise.model.project.Role;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;

/**
 * One row of a list: so many equal pieces.
 *
 * @param place where the list has it
 * @param room with the rack, where there is one
 * @param zone shutdown zone; empty where there is none
 * @param feed of a redundant piece, A or B; empty for others
 * @param outletAmps rating of the outlet or plug, where the list states it
 * @param amps running line current of one piece
 * @param inrushPeakAmps instantaneous, of one piece
 * @param horsepower on the shaft of a motor, where the list states it
 * @param guessed keys of a load's fields that the list does not state
 * @param clauses to look up for life-safety equipment; empty for others
 * @param ties what else the list says of how it is fed and switched
 * @param label what drawings call it, and remarks
 * @param circuit what the list says of its circuit and breaker
 * @param open where the list does not say exactly how many there are
 * @param isFurther whether it is a further supply of pieces that another item counts
 */
record Item(
        String place,
        int quantity,
        String name,
        String room,
        Role role,
        String zone,
        String feed,
        Gear gear,
        Service service,
        OptionalDouble outletAmps,
        int poles,
        double amps,
        double idleAmps,
        double inrushPeakAmps,
        double powerFactor,
        OptionalDouble horsepower,
        Set<String> guessed,
        String clauses,
        Ties ties,
        Label label,
        ListedCircuit circuit,
        Optional<OpenCount> open,
        boolean isFurther) {

    /**
     * What pieces must share to be on one breaker.
     *
     * @param openRow place of the row, where it does not say exactly how many there are: more or fewer of them change no
     *     breaker of others then; empty for others
     */
    record Kind(
            String room,
            Role role,
            String zone,
            String feed,
            int poles,
            boolean isSwitched,
            OptionalDouble outletAmps,
            Ties ties,
            String openRow) {}

    /** One of so many breakers that feed each piece in equal parts. */
    Item part(int breakers, int index) {
        String note = "breaker " + (index + 1) + " of " + breakers + " that feed it";
        ListedCircuit own = new ListedCircuit(CircuitNames.NONE, circuit.breaker());
        return supply(feed, breakers, ties, note, own, index > 0);
    }

    /** One of two feeds, each of which carries all. */
    Item feed(String letter, String panel, CircuitNames names, boolean further) {
        String note = "feed " + letter + " of two, each of which carries all";
        return supply(letter, 1, ties.from(panel), note, new ListedCircuit(names, circuit.breaker()), further);
    }

    private Item supply(String letter, int parts, Ties tied, String note, ListedCircuit listed, boolean further) {
        return new Item(
                place,
                quantity,
                name,
                room,
                role,
                zone,
                letter,
                gear,
                service,
                outletAmps,
                poles,
                amps / parts,
                idleAmps / parts,
                inrushPeakAmps / parts,
                powerFactor,
                horsepower,
                guessed,
                clauses,
                tied,
                label.noted(note),
                listed,
                open,
                further);
    }

    Kind kind() {
        return new Kind(
                room, role, zone, feed, poles, service.isSwitched(), outletAmps, ties, open.isPresent() ? place : "");
    }
}
