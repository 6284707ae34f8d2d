package evenrise.model.check;

import evenrise.model.contract.Words;
import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.util.List;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Whatever is referred to exists. */
final class References {
    /** The nearest name is sought for so many references only: whoever has more has one cause for most. */
    private static final int MOST_SOUGHT = 200;

    private static final Set<String> FIELDS_OF_A_LOAD = Stream.of(Load.class.getRecordComponents())
            .map(component -> Words.key(component.getName()))
            .collect(Collectors.toUnmodifiableSet());

    private final ProjectParts parts;
    private final Consumer<Objection> found;
    private int sought;

    private References(ProjectParts parts, Consumer<Objection> found) {
        this.parts = parts;
        this.found = found;
    }

    static void check(ProjectParts parts, Consumer<Objection> found) {
        new References(parts, found).check();
    }

    private void check() {
        Project project = parts.project;
        for (int i = 0; i < project.boards().size(); i++) {
            Board board = project.boards().get(i);
            String at = "/boards/" + i;
            one(at + "/type", board.type(), "board_types", parts.types.keySet());
            one(at + "/panel", board.panel(), "panels", parts.panels.keySet());
            if (!board.reaches().equals(List.of(board.panel()))) { // else said already
                all(at + "/reaches", board.reaches(), "panels", parts.panels.keySet());
            }
            board.after().ifPresent(id -> one(at + "/after", id, "boards", parts.boards.keySet()));
        }
        project.supply()
                .existingDemand()
                .ifPresent(demand -> all(
                        "/supply/existing_demand/recorded_loads",
                        demand.recordedLoads(),
                        "loads",
                        parts.loads.keySet()));
        for (int i = 0; i < project.loads().size(); i++) {
            Load load = project.loads().get(i);
            String at = "/loads/" + i;
            load.shutdownGroup()
                    .ifPresent(id -> one(at + "/shutdown_group", id, "shutdown_groups", parts.groups.keySet()));
            load.needsGroups()
                    .ifPresent(ids -> all(at + "/needs_groups", ids, "shutdown_groups", parts.groups.keySet()));
            all(at + "/comes_after", load.comesAfter(), "loads", parts.loads.keySet());
            all(at + "/panels", load.panels(), "panels", parts.panels.keySet());
            all(at + "/apart_from", load.apartFrom(), "loads", parts.loads.keySet());
            all(at + "/same_phase_as", load.samePhaseAs(), "loads", parts.loads.keySet());
            guessed(at + "/guessed", load.guessed());
            load.fixed().panel().ifPresent(id -> one(at + "/fixed/panel", id, "panels", parts.panels.keySet()));
            load.fixed().board().ifPresent(id -> one(at + "/fixed/board", id, "boards", parts.boards.keySet()));
        }
    }

    /** A load says of its own fields alone that they were guessed. */
    private void guessed(String pointer, List<String> names) {
        for (int k = 0; k < names.size(); k++) {
            String name = names.get(k);
            if (!FIELDS_OF_A_LOAD.contains(name)) {
                String cure = Nearest.cure(name, FIELDS_OF_A_LOAD, "Maybe take it out.");
                found.accept(
                        Objection.error(pointer + "/" + k, Shown.quoted(name), "the name of a field of a load", cure));
            }
        }
    }

    private void all(String pointer, List<String> ids, String list, Set<String> known) {
        for (int k = 0; k < ids.size(); k++) {
            one(pointer + "/" + k, ids.get(k), list, known);
        }
    }

    private void one(String pointer, String id, String list, Set<String> known) {
        if (known.contains(id) || !parts.knows("/" + list)) {
            return;
        }
        String otherwise = known.isEmpty() ? "There are none." : "Maybe it was renamed or removed.";
        String cure = sought++ < MOST_SOUGHT ? Nearest.cure(id, known, otherwise) : otherwise;
        found.accept(
                Objection.error(pointer, Shown.quoted(id), "the id of one of the " + list.replace('_', ' '), cure));
    }
}
