package evenrise.solver.app;

import evenrise.model.contract.Phrase;
import evenrise.solver.rework.BuiltPlant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;

/** Says what has gone from a plant, or has another breaker, since its plan was built. */
final class GearNotes {
    private static final int MOST_NAMED = 12;

    private GearNotes() {}

    /** For the screen, with what may be done about it. */
    static List<String> withHints(BuiltPlant plant) {
        List<String> notes = new ArrayList<>(of(plant));
        if (!plant.unknown().isEmpty()) {
            notes.add("--was PROJECT gives the project as it was, which says what gear draws that is gone.");
        }
        return notes;
    }

    static List<String> of(BuiltPlant plant) {
        List<String> notes = new ArrayList<>();
        List<String> gone = plant.gone().stream()
                .filter(id -> !plant.replacing().containsKey(id))
                .toList();
        if (!gone.isEmpty()) {
            notes.add("In the plan as built and not in the project, so gone: " + named(gone)
                    + ". Until the breaker is out, it is taken for live; the order of work takes it out"
                    + (plant.leavesSpares()
                            ? ", or leaves it as a spare, without conductors, where nobody needs its slot."
                            : "."));
        }
        if (!plant.spares().isEmpty()) {
            notes.add("Spare breakers: "
                    + named(plant.spares().stream()
                            .map(spare -> spare.panel() + " " + spare.slot())
                            .toList())
                    + ". Each stays, feeds a new load whose poles, rating and curve it has, or comes out where its slot is"
                    + " wanted.");
        }
        if (!plant.replacing().isEmpty()) {
            notes.add("Of another breaker than the plan as built has, so replaced: "
                    + named(List.copyOf(plant.replacing().values()))
                    + ". The old breaker comes out, a new one goes in.");
        }
        Set<String> unknown = plant.unknown();
        if (!unknown.isEmpty()) {
            notes.add("What " + named(List.copyOf(unknown))
                    + " draws is stated nowhere, and is in no figure: until it is out, its lines carry more than is shown."
                    + " It is taken out before anything goes to other lines.");
        }
        return notes;
    }

    private static String named(List<String> ids) {
        return Phrase.quoted(ids, MOST_NAMED);
    }
}
