package evenrise.model.file;

import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/**
 * What loads of a project leave unsaid, and what it was when they were read: whoever writes the project again leaves out
 * what still is so, that a default keeps its say.
 */
final class Silence {
    static final Silence NONE = new Silence(Map.of());

    private final Map<String, Map<String, Object>> byPlace;

    private Silence(Map<String, Map<String, Object>> byPlace) {
        this.byPlace = byPlace;
    }

    /** @param stated the project as its file has it, before defaults were applied */
    static Silence of(Node stated, Project project) {
        Silence silence = new Silence(new LinkedHashMap<>());
        if (stated instanceof Node.Obj root && LoadDefaults.member(root, "loads") instanceof Node.Arr loads) {
            for (int i = 0; i < loads.entries().size(); i++) {
                Load load = project.loads().get(i);
                silence.note((Node.Obj) loads.entries().get(i), load, place(load));
            }
        }
        return silence;
    }

    boolean isNone() {
        return byPlace.isEmpty();
    }

    /** Whether nobody has said this of the place, and it is as it was. */
    boolean covers(String place, String key, Object value) {
        Map<String, Object> unsaid = byPlace.get(place);
        return unsaid != null && unsaid.containsKey(key) && java.util.Objects.equals(unsaid.get(key), value);
    }

    /** The same, but for loads of which everything is to be said. */
    Silence without(List<Load> loads) {
        Set<String> spoken = loads.stream().map(Silence::place).collect(java.util.stream.Collectors.toSet());
        Map<String, Map<String, Object>> left = new LinkedHashMap<>(byPlace);
        left.keySet()
                .removeIf(
                        place -> spoken.stream().anyMatch(load -> place.equals(load) || place.startsWith(load + "/")));
        return new Silence(left);
    }

    private static String place(Load load) {
        return SideNotes.entry(SideNotes.member("", "loads"), 0, Optional.of(load.id()));
    }

    private void note(Node.Obj stated, Record value, String place) {
        RecordShape.of(value.getClass()).parts().forEach((key, part) -> {
            Object all = RecordShape.get(part, value);
            Object inner = all instanceof Optional<?> optional ? optional.orElse(null) : all;
            Node said = LoadDefaults.member(stated, key);
            if (said == null || said instanceof Node.Null) {
                byPlace.computeIfAbsent(place, any -> new LinkedHashMap<>()).put(key, all);
            } else if (said instanceof Node.Obj object && inner instanceof Record record) {
                note(object, record, SideNotes.member(place, key));
            }
        });
    }
}
