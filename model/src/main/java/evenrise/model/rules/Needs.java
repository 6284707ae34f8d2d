package evenrise.model.rules;

import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Which processing a load needs on while it is on itself: an amplifier all of it, unless it states groups; whoever states
 * groups that of these, of its own and of none. It decides what emergencies and partial commands take along; the sequence
 * has all processing first whatever is needed.
 */
public final class Needs {
    private final List<Load> processing;
    private final Map<List<Optional<String>>, List<Load>> byGroups = new HashMap<>();

    public Needs(Project project) {
        processing = project.loads().stream()
                .filter(each -> each.switched() && each.role() == Role.PROCESSING)
                .toList();
    }

    /** In the project's order; the same list for all that need the same. */
    public List<Load> of(Load load) {
        if (!load.switched() || load.role() == Role.PROCESSING) {
            return List.of();
        }
        if (load.needsGroups().isEmpty()) {
            return load.role() == Role.AMPLIFIER ? processing : List.of();
        }
        List<Optional<String>> groups = Stream.concat(
                        Stream.of(Optional.<String>empty(), load.shutdownGroup()),
                        load.needsGroups().get().stream().map(Optional::of))
                .distinct()
                .toList();
        return byGroups.computeIfAbsent(
                groups,
                wanted -> processing.stream()
                        .filter(each -> wanted.contains(each.shutdownGroup()))
                        .toList());
    }
}
