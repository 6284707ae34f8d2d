package evenrise.model.rules;

import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/**
 * Which processing a load needs on while it is on itself: an amplifier all of it, unless it states groups; whoever states
 * groups that of these, of its own and of none. Where there are systems, that of its own and of those that its system
 * needs, directly or not, and of groups that it names. It decides what emergencies and partial commands take along; the sequence
 * has all processing first whatever is needed.
 */
public final class Needs {
    private final List<Load> processing;
    private final Map<Reach, List<Load>> lists = new HashMap<>();
    private final ProjectIndex index;
    private final Map<String, Set<String>> known = new HashMap<>();

    /** Whose processing: of these groups, or of all; and of the systems that one knows. */
    private record Reach(Optional<List<Optional<String>>> groups, Optional<String> system) {}

    public Needs(Project project) {
        index = new ProjectIndex(project);
        project.systems().forEach(each -> known.put(each.id(), Clocks.needed(each.id(), project.systems())));
        processing = project.loads().stream()
                .filter(each -> each.switched() && each.role() == Role.PROCESSING)
                .toList();
    }

    /** In the project's order; the same list for all that need the same. */
    public List<Load> of(Load load) {
        if (!load.switched() || load.role() == Role.PROCESSING) {
            return List.of();
        }
        Optional<String> system = system(load);
        if (load.needsGroups().isEmpty()) {
            return load.role() == Role.AMPLIFIER ? within(new Reach(Optional.empty(), system)) : List.of();
        }
        List<Optional<String>> groups = Stream.concat(
                        Stream.of(Optional.<String>empty(), group(load)),
                        load.needsGroups().get().stream().map(Optional::of))
                .distinct()
                .toList();
        return within(new Reach(Optional.of(groups), system));
    }

    private List<Load> within(Reach reach) {
        return lists.computeIfAbsent(
                reach,
                any -> processing.stream()
                        .filter(each ->
                                reach.groups().isEmpty() || reach.groups().get().contains(group(each)))
                        .filter(each -> isKnown(reach, each))
                        .toList());
    }

    /** Processing of a group that is named is needed wherever it is; any other where its system is needed. */
    private boolean isKnown(Reach reach, Load each) {
        boolean isNamed = reach.groups().isPresent() && group(each).isPresent();
        return isNamed
                || reach.system().isEmpty()
                || system(each)
                        .filter(it -> known.getOrDefault(reach.system().get(), Set.of())
                                .contains(it))
                        .isPresent();
    }

    private Optional<String> group(Load load) {
        return index.load(load.id()).flatMap(Load::shutdownGroup);
    }

    private Optional<String> system(Load load) {
        return index.load(load.id()).flatMap(Load::system);
    }
}
