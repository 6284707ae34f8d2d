package evenrise.solver.rework;

import evenrise.model.plan.Assignment;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.ProjectIndex;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Who is off while some loads are worked on and some panels and boards are dead. */
final class Outages {
    private final Project project;
    private final ProjectIndex index;
    private final boolean isInrushLimited;
    private final Map<String, Set<String>> needing = new HashMap<>();
    /** By load, the boards that it feeds. */
    private final Map<String, Set<String>> boardsOf = new HashMap<>();

    private final Map<String, Boolean> quiet = new HashMap<>();

    Outages(ProjectIndex index) {
        this.index = index;
        this.project = index.project();
        this.isInrushLimited = NodeLimits.of(project).stream()
                .anyMatch(limit -> limit.inrushLimitAmps().isPresent());
        for (Load load : project.loads()) {
            Stream.concat(load.comesAfter().stream(), load.comesWith().stream())
                    .forEach(id -> needing.computeIfAbsent(id, any -> new LinkedHashSet<>())
                            .add(load.id()));
        }
        project.boards()
                .forEach(board -> board.fedBy()
                        .filter(id -> index.load(id).isPresent())
                        .ifPresent(id -> boardsOf.computeIfAbsent(id, any -> new TreeSet<>())
                                .add(board.id())));
    }

    /**
     * What is off at once.
     *
     * @param isByCommand whether a system goes off by its command, or all do by one
     * @param systems that go off by their commands, as they come on again; none where one command is for all
     * @param loads all without current, worked on or not
     */
    record Outage(boolean isByCommand, List<String> systems, Set<String> loads) {
        /** The commands that are given, one without a name where one is for all. */
        Set<String> commands() {
            return !isByCommand ? Set.of() : systems.isEmpty() ? Set.of("") : new TreeSet<>(systems);
        }
    }

    /**
     * All that goes off.
     *
     * @param worked loads that are worked on
     * @param seats where every load is
     * @param mayComeOnAlone whether the inrush of a load keeps every limit while all others are on
     */
    Outage of(
            Collection<String> worked, Isolation isolation, List<Assignment> seats, Predicate<String> mayComeOnAlone) {
        Set<String> off = new LinkedHashSet<>(worked);
        if (isolation.size() > 0) {
            seats.stream()
                    .filter(seat -> isolation.takesOff(index, seat.panel(), seat.board()))
                    .forEach(seat -> off.add(seat.load()));
        }
        addAllThatNeed(off, seats);
        List<Load> byCommand = byCommand(off, mayComeOnAlone);
        List<String> systems = Commands.offWith(project, byCommand);
        if (!byCommand.isEmpty()) {
            loads().filter(load -> Commands.isFor(systems, load)).map(Load::id).forEach(off::add);
        }
        return new Outage(!byCommand.isEmpty(), systems, off);
    }

    /** Each with the group and system of the one behind whose contactor it is. */
    private Stream<Load> loads() {
        return project.loads().stream().flatMap(load -> index.load(load.id()).stream());
    }

    /** With loads that are off, all that wait for one of them, and all on boards that one of them feeds. */
    private void addAllThatNeed(Set<String> off, List<Assignment> seats) {
        List.copyOf(off).forEach(load -> addNeeding(load, off));
        Set<String> unfed = off.stream()
                .flatMap(load -> boardsOf.getOrDefault(load, Set.of()).stream())
                .collect(Collectors.toSet());
        if (!unfed.isEmpty()) {
            // What feeds a board is not switched, so that nothing that hangs on one feeds another.
            seats.stream()
                    .filter(seat -> seat.board().filter(unfed::contains).isPresent())
                    .map(Assignment::load)
                    .filter(off::add)
                    .toList()
                    .forEach(load -> addNeeding(load, off));
        }
    }

    private void addNeeding(String load, Set<String> off) {
        for (String next : needing.getOrDefault(load, Set.of())) {
            if (off.add(next)) {
                addNeeding(next, off);
            }
        }
    }

    /** Loads without current that may come on by command alone, as other loads are on or since their peaks pass a limit. */
    private List<Load> byCommand(Set<String> off, Predicate<String> mayComeOnAlone) {
        List<Load> found = new ArrayList<>(off.stream()
                .filter(load -> quiet.computeIfAbsent(load, this::needsQuiet))
                .flatMap(load -> index.load(load).stream())
                .toList());
        if (!isInrushLimited || !found.isEmpty() && !project.hasClocks()) {
            return found;
        }
        List<String> systems = Commands.offWith(project, found);
        off.stream()
                .flatMap(load -> index.load(load).stream())
                .filter(load -> found.isEmpty() || !Commands.isFor(systems, load))
                .filter(load -> !mayComeOnAlone.test(load.id()))
                .toList()
                .forEach(found::add);
        return found;
    }

    /** Whether it may not come on while loads of a later role are on; what the project knows no more only goes off. */
    private boolean needsQuiet(String id) {
        Load load = index.load(id).orElse(null);
        return load != null
                && load.switched()
                && loads().anyMatch(other -> other.switched()
                        && other.role().compareTo(load.role()) > 0
                        && Commands.waitsFor(project, other, load));
    }
}
