package evenrise.model.check;

import evenrise.model.project.Equipment;
import evenrise.model.project.Load;
import evenrise.model.project.LoadDefault;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Defaults name what there is; what no load is in is remarked, since it may be a slip. */
final class NamedInDefaults {
    private final ProjectParts parts;
    private final Consumer<Objection> found;

    private NamedInDefaults(ProjectParts parts, Consumer<Objection> found) {
        this.parts = parts;
        this.found = found;
    }

    static void check(ProjectParts parts, Consumer<Objection> found) {
        List<LoadDefault> defaults = parts.project.defaults();
        for (int i = 0; i < defaults.size(); i++) {
            new NamedInDefaults(parts, found).check(defaults.get(i), "/defaults/" + i);
        }
    }

    private void check(LoadDefault each, String at) {
        all(at + "/loads", each.loads().orElse(List.of()), parts.loads.keySet(), "loads");
        all(at + "/gives/panels", each.gives().texts("panels"), parts.panels.keySet(), "panels");
        all(at + "/gives/needs_groups", each.gives().texts("needs_groups"), parts.groups.keySet(), "shutdown_groups");
        each.group().ifPresent(id -> known(at + "/group", id, parts.groups.keySet(), "shutdown_groups"));
        each.system().ifPresent(id -> known(at + "/system", id, parts.systems.keySet(), "systems"));
        inUse(at + "/room", each.room(), load -> load.equipment().flatMap(Equipment::room));
        inUse(at + "/rack", each.rack(), Load::rack);
        inUse(at + "/kind", each.kind(), Load::kind);
    }

    private void all(String at, List<String> ids, Set<String> known, String list) {
        for (int k = 0; k < ids.size(); k++) {
            known(at + "/" + k, ids.get(k), known, list);
        }
    }

    private void known(String at, String id, Set<String> known, String list) {
        if (!known.contains(id) && parts.knows("/" + list)) {
            String otherwise = known.isEmpty() ? "There are none." : "Maybe it was renamed or removed.";
            String cure = Nearest.cure(id, known, otherwise);
            found.accept(Objection.error(at, Shown.quoted(id), "the id of one of the " + list.replace('_', ' '), cure));
        }
    }

    private void inUse(String at, Optional<String> stated, Function<Load, Optional<String>> of) {
        Collection<String> used = parts.project.loads().stream()
                .flatMap(load -> of.apply(load).stream())
                .collect(Collectors.toSet());
        if (stated.isPresent() && !used.contains(stated.get()) && parts.knows("/loads")) {
            found.accept(new Objection(
                    Severity.REMARK,
                    at,
                    Shown.quoted(stated.get()) + ", as no load has it, so that none takes this default",
                    "one that a load states",
                    Nearest.cure(stated.get(), used, "Maybe it was renamed, or take the entry out.")));
        }
    }
}
