package evenrise.model.file;

import evenrise.model.check.Nearest;
import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;
import evenrise.model.project.GivenFields;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;

/**
 * Makes records of a tree. What is wrong becomes a problem, and a legal stand-in takes its place so that all the rest
 * can be bound and checked; list entries keep their positions.
 */
final class RecordBinder {
    private final Problems problems;
    private final boolean isNewer;
    private final Set<String> newer = new HashSet<>();
    private final Scalars scalars;
    private final StandIns standIns = new StandIns();

    /** @param isNewer whether unknown fields are those of a later version, rather than slips */
    RecordBinder(Problems problems, boolean isNewer) {
        this.problems = problems;
        this.isNewer = isNewer;
        this.scalars = new Scalars(problems);
    }

    <T> T bind(Node root, Class<T> type) {
        return type.cast(record(root, type, ""));
    }

    private Object record(Node node, Class<?> type, String pointer) {
        RecordShape shape = RecordShape.of(type);
        if (shape.bareList().isPresent() && node instanceof Node.Arr) {
            return bareList(node, shape, pointer);
        }
        if (!(node instanceof Node.Obj object)) {
            String list = shape.bareList()
                    .map(part -> Expected.listOf(RecordShape.entryType(part.inner())) + ", or ")
                    .orElse("");
            problems.unbound(pointer, node, node.shown(), list + "an object with " + keys(shape), "");
            return standIns.record(type);
        }
        object.members().forEach((key, member) -> {
            if (!shape.keys().contains(key) && SideNotes.isFree(key)) {
                free(member.value(), Pointers.child(pointer, key));
            } else if (!shape.keys().contains(key)) {
                unknown(shape, pointer, key, member);
            }
        });
        List<Object> values = new ArrayList<>(shape.parts().size());
        for (RecordShape.Part part : shape.parts().values()) {
            boolean isList = shape.bareList().filter(part::equals).isPresent();
            Node.Member member = isList ? null : object.members().get(part.key());
            values.add(component(object, member, part, pointer));
        }
        return shape.make(values);
    }

    private Object bareList(Node node, RecordShape shape, String pointer) {
        List<Object> values = new ArrayList<>();
        for (RecordShape.Part part : shape.parts().values()) {
            boolean isList = shape.bareList().filter(part::equals).isPresent();
            values.add(
                    isList
                            ? wrap(value(node, part.inner(), part.field(), pointer), part.type())
                            : standIns.absent(part));
        }
        return shape.make(values);
    }

    void unknown(RecordShape shape, String pointer, String key, Node.Member member) {
        if (isNewer && !shape.parts().containsKey(key)) {
            if (newer.add(shape + " " + key)) {
                problems.remark(
                        Pointers.child(pointer, key),
                        member.line(),
                        member.column(),
                        "a field of a newer version of the format, left out of account wherever it stands",
                        "one of: " + keys(shape),
                        Nearest.cure(key, shape.keys(), "Maybe use a newer version of this program."));
            }
            free(member.value(), Pointers.child(pointer, key));
            return;
        }
        String cure = Nearest.cure(key, shape.keys(), "Maybe delete it.");
        String expected = "one of: " + keys(shape);
        problems.error(
                Pointers.child(pointer, key), member.line(), member.column(), "an unknown field", expected, cure);
    }

    /** A value that nobody reads but that is written again: anything that JSON can say. */
    void free(Node value, String pointer) {
        if (value instanceof Node.Obj object) {
            object.members().forEach((key, member) -> free(member.value(), Pointers.child(pointer, key)));
        } else if (value instanceof Node.Arr list) {
            for (int i = 0; i < list.entries().size(); i++) {
                free(list.entries().get(i), Pointers.child(pointer, i));
            }
        } else if (value instanceof Node.Num number
                && !Double.isFinite(number.number().doubleValue())) {
            problems.error(pointer, value, number.shown(), "a finite number", "Maybe put it in quotes.");
        }
    }

    private Object component(Node.Obj owner, Node.Member member, RecordShape.Part part, String pointer) {
        boolean absent = member == null
                || member.value() instanceof Node.Null && part.field().optional();
        String inner = Pointers.child(pointer, part.key());
        if (!absent) {
            return wrap(value(member.value(), part.inner(), part.field(), inner), part.type());
        }
        if (part.isRequired()) {
            String expected = Expected.of(part.inner(), part.field());
            problems.unbound(inner, owner, "missing", expected, similar(owner, part));
            return wrap(standIns.value(part.inner(), part.field(), Set.of()), part.type());
        }
        return standIns.absent(part);
    }

    /** A field that is unknown and spelt nearly like the missing one is the likely cause. */
    private static String similar(Node.Obj owner, RecordShape.Part part) {
        Set<String> present = owner.members().keySet();
        return Nearest.to(part.key(), present)
                .map(key -> "Maybe it is spelt " + evenrise.model.check.Shown.quoted(key) + " here.")
                .orElse("Maybe add \"" + part.key() + "\".");
    }

    Object value(Node node, Type type, Field field, String pointer) {
        if (type == GivenFields.class) {
            return new GivenBinder(this, problems).bind(node, pointer);
        }
        if (RecordShape.entryType(type) != null) {
            return list(node, RecordShape.entryType(type), field, pointer);
        }
        if (type instanceof Class<?> record && record.isRecord()) {
            return record(node, record, pointer);
        }
        Optional<Object> value = scalars.value(node, type, field, pointer);
        if (value.isEmpty()) {
            return standIns.instead(node, type, field, Set.of());
        }
        for (String expected : Contract.broken(field, value.get())) {
            problems.unbound(pointer, node, node.shown(), expected, "");
            return standIns.value(type, field, Set.of());
        }
        return value.get();
    }

    private List<Object> list(Node node, Type entryType, Field field, String pointer) {
        if (!(node instanceof Node.Arr array)) {
            String cure = node instanceof Node.Obj || node instanceof Node.Null ? "" : "Maybe put it in [ ].";
            problems.unbound(pointer, node, node.shown(), Expected.listOf(entryType), cure);
            return standIns.list(entryType, field);
        }
        if (array.entries().size() < field.atLeast()) {
            String value = array.entries().isEmpty() ? "an empty list" : "a short list";
            String expected = "at least " + field.atLeast() + (field.atLeast() == 1 ? " entry" : " entries");
            problems.unbound(pointer, node, value, expected, "");
            return standIns.list(entryType, field);
        }
        Field ofEntry = Expected.ofEntries(field);
        Set<Object> seen = new HashSet<>();
        Set<Object> stoodIn = new HashSet<>();
        List<Object> entries = new ArrayList<>(array.entries().size());
        for (int i = 0; i < array.entries().size(); i++) {
            Node entry = array.entries().get(i);
            String inner = Pointers.child(pointer, i);
            Object value = value(entry, entryType, ofEntry, inner);
            if (field.distinct() && !seen.add(value)) {
                if (!problems.isUnbound(inner) && !stoodIn.contains(value)) {
                    problems.unbound(inner, entry, entry.shown() + " again", "no entry twice", "Maybe delete one.");
                }
                if (entryType != String.class) {
                    problems.distrust(pointer); // the entries that follow move up
                    continue;
                }
                value = standIns.value(entryType, ofEntry, seen);
                seen.add(value);
            }
            if (problems.isUnbound(inner)) {
                stoodIn.add(value);
            }
            entries.add(value);
        }
        return entries;
    }

    static Object wrap(Object value, Type declared) {
        if (declared == OptionalInt.class) {
            return OptionalInt.of((Integer) value);
        }
        if (declared == OptionalLong.class) {
            return OptionalLong.of((Long) value);
        }
        if (declared == OptionalDouble.class) {
            return OptionalDouble.of((Double) value);
        }
        return RecordShape.withoutOptional(declared) == declared ? value : Optional.of(value);
    }

    private static String keys(RecordShape shape) {
        return String.join(", ", shape.keys());
    }
}
