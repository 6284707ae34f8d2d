package evenrise.solver.app;

import evenrise.model.contract.Harmless;
import evenrise.model.file.ProjectFile;
import evenrise.model.file.Reading;
import evenrise.model.file.SideNotes;
import evenrise.model.project.Project;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.function.Consumer;

/** What people have noted in files of ours stays when they are written anew; what cannot stay is said. */
final class KeptNotes {
    private static final int NAMED = 3;

    private KeptNotes() {}

    /** The notes of the project that {@code target} holds, to be written with the one that takes its place. */
    static SideNotes ofReplaced(Path target, Project next, Consumer<String> note) {
        if (!Files.isRegularFile(target)) {
            return SideNotes.NONE;
        }
        Reading<Project> earlier = ProjectFile.read(target);
        if (earlier.value().isEmpty()) {
            note.accept(shown(target) + ": what stood there could not be read as a project; notes that it may have had"
                    + " are not kept.");
            return SideNotes.NONE;
        }
        SideNotes notes = earlier.notes().free();
        sayLost(shown(target), notes.withoutPlaceIn(next), "what they are about is no longer in the project", note);
        if (notes.places().size() < earlier.notes().places().size()) {
            note.accept(shown(target) + ": fields of a newer version of the format are not kept.");
        }
        return notes;
    }

    /** A plan made from an earlier one begins without its notes. */
    static void sayLeftBehind(String name, SideNotes ofPlan, Consumer<String> note) {
        sayLost(name, ofPlan.places(), "what was noted of the earlier plan need not be true of the new one", note);
    }

    private static void sayLost(String name, List<String> places, String why, Consumer<String> note) {
        if (!places.isEmpty()) {
            String more = places.size() > NAMED ? " and " + (places.size() - NAMED) + " more" : "";
            note.accept(name + ": notes and fields of your own are not kept at "
                    + String.join(", ", places.subList(0, Math.min(NAMED, places.size()))) + more + ": " + why + ".");
        }
    }

    private static String shown(Path file) {
        return Harmless.shown(file.toString());
    }
}
