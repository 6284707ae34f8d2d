package evenrise.model.file;

import evenrise.model.project.GivenFields;
import evenrise.model.project.Load;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Binds some fields of a load, none of them required: each is held against what the load's record says of it. */
final class GivenBinder {
    private final RecordBinder binder;
    private final Problems problems;

    GivenBinder(RecordBinder binder, Problems problems) {
        this.binder = binder;
        this.problems = problems;
    }

    GivenFields bind(Node node, String pointer) {
        return GivenFields.of(members(node, RecordShape.of(Load.class), pointer, true));
    }

    /** What {@code gives} takes. */
    static List<String> keys() {
        return RecordShape.of(Load.class).parts().keySet().stream()
                .filter(GivenFields::mayGive)
                .toList();
    }

    private Map<String, Object> members(Node node, RecordShape shape, String pointer, boolean isLoad) {
        Map<String, Object> given = new LinkedHashMap<>();
        if (!(node instanceof Node.Obj object)) {
            problems.unbound(pointer, node, node.shown(), "an object with some fields of a load", "");
            return given;
        }
        List<String> keys = isLoad ? keys() : List.copyOf(shape.parts().keySet());
        object.members().forEach((key, member) -> {
            String at = Pointers.child(pointer, key);
            if (keys.contains(key)) {
                value(member.value(), shape.parts().get(key), at).ifPresent(value -> given.put(key, value));
            } else if (SideNotes.isFree(key)) {
                binder.free(member.value(), at);
            } else if (shape.parts().containsKey(key)) {
                problems.error(
                        at,
                        member.line(),
                        member.column(),
                        "a field that each load states for itself",
                        "one of: " + String.join(", ", keys),
                        "Maybe state it at the loads.");
            } else {
                binder.unknown(shape, pointer, key, member);
            }
        });
        return given;
    }

    private Optional<Object> value(Node node, RecordShape.Part part, String pointer) {
        if (node instanceof Node.Null && part.field().optional()) {
            return Optional.empty();
        }
        return part.inner() instanceof Class<?> record && record.isRecord()
                ? Optional.of(members(node, RecordShape.of(record), pointer, false))
                : Optional.of(binder.value(node, part.inner(), part.field(), pointer));
    }
}
