package evenrise.model.check;

import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.function.BiConsumer;
import java.util.function.Consumer;

/** Finds where the parts of a project contradict each other. What a record checks of itself is not repeated. */
public final class ProjectChecks {
    private static final List<BiConsumer<ProjectParts, Consumer<Objection>>> CHECKS = List.of(
            Identity::check,
            References::check,
            Circles::check,
            Relations::check,
            Feeding::check,
            Transfers::check,
            ControlSupplies::check,
            BoardTypeChecks::check,
            Systems::check,
            Scenes::check,
            NamedInDefaults::check,
            Contactors::check,
            SlotNumbers::check,
            FixedPlaces::check,
            Cables::check,
            CatalogueChecks::check,
            QuantityRanges::check,
            Trips::check);

    private ProjectChecks() {}

    /** Every contradiction: errors, in the order of the checks. */
    public static List<Objection> errors(Project project) {
        return errors(project, Set.of());
    }

    /** @param unread pointers to what could not be read, so that a stand-in took its place */
    public static List<Objection> errors(Project project, Set<String> unread) {
        List<Objection> found = new ArrayList<>();
        ProjectParts parts = new ProjectParts(project, unread);
        CHECKS.forEach(check -> check.accept(parts, found::add));
        return found;
    }
}
