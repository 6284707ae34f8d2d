package evenrise.model.project;

import java.util.List;

/**
 * What became of one field of one default.
 *
 * @param entry of {@code defaults}, from 1
 * @param meant which loads it is for, in words
 * @param field as a load has it, {@code circuit.cable.size}
 * @param value as people read it
 * @param takenBy loads that have it from there
 * @param statedBy loads meant that state it themselves
 * @param laterFor loads meant that take it from a later entry
 * @param incompleteFor loads meant that lack what would make the object whole that it is part of, and go without
 */
public record TakenDefault(
        int entry,
        String meant,
        String field,
        String value,
        List<String> takenBy,
        List<String> statedBy,
        List<String> laterFor,
        List<String> incompleteFor) {
    public TakenDefault {
        takenBy = List.copyOf(takenBy);
        statedBy = List.copyOf(statedBy);
        laterFor = List.copyOf(laterFor);
        incompleteFor = List.copyOf(incompleteFor);
    }
}
