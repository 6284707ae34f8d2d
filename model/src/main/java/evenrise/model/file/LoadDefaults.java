package evenrise.model.file;

import evenrise.model.project.GivenFields;
import evenrise.model.project.Load;
import evenrise.model.project.TakenDefault;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * Puts into loads what the project's defaults give them and they do not state, before anything is bound: only the tree
 * still knows what is stated. Of entries that give a field the last counts, of nested objects field by field. An object
 * that defaults alone would begin is left out where they do not make it whole.
 */
final class LoadDefaults {
    private static final RecordShape LOAD = RecordShape.of(Load.class);

    /**
     * @param root the tree with the defaults applied
     * @param origins where what was put into loads comes from, by pointer
     */
    record Applied(Node root, Map<Node, String> origins, List<TakenDefault> taken) {
        static Applied none(Node root) {
            return new Applied(root, Map.of(), List.of());
        }
    }

    private final Map<Node, String> origins = new IdentityHashMap<>();
    private final List<MeantLoads> entries = new ArrayList<>();
    private final Map<String, TakenBy> taken = new LinkedHashMap<>();

    private LoadDefaults() {}

    static Applied to(Node root) {
        if (!(root instanceof Node.Obj project)
                || !(member(project, "defaults") instanceof Node.Arr defaults)
                || !(member(project, "loads") instanceof Node.Arr loads)) {
            return Applied.none(root);
        }
        return new LoadDefaults().applied(project, defaults, loads);
    }

    private Applied applied(Node.Obj project, Node.Arr defaults, Node.Arr loads) {
        for (int i = 0; i < defaults.entries().size(); i++) {
            MeantLoads entry = new MeantLoads(i, defaults.entries().get(i), loads);
            entries.add(entry);
            entry.gives().ifPresent(given -> {
                register(given, entry.pointer());
                leaves(given, LOAD, "", entry);
            });
        }
        List<Node> resolved = new ArrayList<>();
        for (Node load : loads.entries()) {
            resolved.add(load instanceof Node.Obj stated ? resolved(stated) : load);
        }
        Node.Obj whole = new Node.Obj(project.line(), project.column(), new LinkedHashMap<>(project.members()));
        Node.Member had = whole.members().get("loads");
        whole.members()
                .put(
                        "loads",
                        new Node.Member(
                                had.line(), had.column(), new Node.Arr(loads.line(), loads.column(), resolved)));
        return new Applied(
                whole, origins, taken.values().stream().map(TakenBy::told).toList());
    }

    /** Where each value under a default stands. */
    private void register(Node node, String pointer) {
        origins.put(node, pointer);
        if (node instanceof Node.Obj object) {
            object.members().forEach((key, member) -> register(member.value(), Pointers.child(pointer, key)));
        } else if (node instanceof Node.Arr list) {
            for (int i = 0; i < list.entries().size(); i++) {
                register(list.entries().get(i), Pointers.child(pointer, i));
            }
        }
    }

    /** Lines of the account, in the order of the file. */
    private void leaves(Node.Obj given, RecordShape shape, String path, MeantLoads entry) {
        given.members().forEach((key, member) -> {
            RecordShape.Part part = shape.parts().get(key);
            if (part == null || path.isEmpty() && !GivenFields.mayGive(key)) {
                return;
            }
            if (member.value() instanceof Node.Obj object && shape(part).isPresent()) {
                leaves(object, shape(part).get(), path + key + ".", entry);
            } else if (!(member.value() instanceof Node.Null)) {
                taken.put(entry.index() + path + key, new TakenBy(entry, path + key, member.value()));
            }
        });
    }

    private Node.Obj resolved(Node.Obj stated) {
        Node.Obj load = copy(stated);
        String name = member(load, "id") instanceof Node.Text id ? id.text() : "?";
        for (int i = entries.size() - 1; i >= 0; i--) {
            MeantLoads entry = entries.get(i);
            if (entry.fits(stated)) {
                entry.gives().ifPresent(given -> merge(load, given, LOAD, "", entry, name));
            }
        }
        prune(load, LOAD, "", name);
        return load;
    }

    private void merge(Node.Obj to, Node.Obj given, RecordShape shape, String path, MeantLoads entry, String load) {
        given.members().forEach((key, member) -> {
            RecordShape.Part part = shape.parts().get(key);
            if (part == null || path.isEmpty() && !GivenFields.mayGive(key) || member.value() instanceof Node.Null) {
                return;
            }
            boolean isNested = member.value() instanceof Node.Obj && shape(part).isPresent();
            Node there = member(to, key);
            if (isNested && (isAbsent(there) || there instanceof Node.Obj)) {
                Node.Obj inner = isAbsent(there) ? begun(member.value()) : nested((Node.Obj) there);
                to.members().put(key, new Node.Member(member.line(), member.column(), inner));
                merge(inner, (Node.Obj) member.value(), shape(part).get(), path + key + ".", entry, load);
            } else if (!isNested) {
                TakenBy account = taken.get(entry.index() + path + key);
                if (isAbsent(there)) {
                    to.members().put(key, member);
                    account.taken.add(load);
                } else {
                    (origins.containsKey(there) ? account.later : account.stated).add(load);
                }
            }
        });
    }

    /** An object that a default begins. */
    private Node.Obj begun(Node given) {
        Node.Obj begun = new Node.Obj(given.line(), given.column());
        origins.put(begun, origins.get(given));
        return begun;
    }

    private Node.Obj nested(Node.Obj there) {
        if (origins.containsKey(there)) {
            return there;
        }
        return copy(there);
    }

    /** Takes out objects that defaults began and did not make whole. */
    private void prune(Node.Obj load, RecordShape shape, String path, String name) {
        for (RecordShape.Part part : shape.parts().values()) {
            if (shape(part).isPresent() && member(load, part.key()) instanceof Node.Obj inner) {
                prune(inner, shape(part).get(), path + part.key() + ".", name);
                boolean isWhole = shape(part).get().parts().values().stream()
                        .allMatch(each -> !each.isRequired() || !isAbsent(member(inner, each.key())));
                boolean isEmpty = inner.members().isEmpty();
                if (origins.containsKey(inner) && (!isWhole || isEmpty)) {
                    load.members().remove(part.key());
                    taken.values().stream()
                            .filter(each -> each.field.startsWith(path + part.key() + "."))
                            .filter(each -> each.taken.remove(name))
                            .forEach(each -> each.incomplete.add(name));
                }
            }
        }
    }

    private static Node.Obj copy(Node.Obj object) {
        return new Node.Obj(object.line(), object.column(), new LinkedHashMap<>(object.members()));
    }

    private static Optional<RecordShape> shape(RecordShape.Part part) {
        Type type = part.inner();
        return type instanceof Class<?> record && record.isRecord()
                ? Optional.of(RecordShape.of(record))
                : Optional.empty();
    }

    private static boolean isAbsent(Node node) {
        return node == null || node instanceof Node.Null;
    }

    /** Null where there is none. */
    static Node member(Node.Obj object, String key) {
        Node.Member member = object.members().get(key);
        return member == null ? null : member.value();
    }
}
