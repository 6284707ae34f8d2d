package evenrise.model.file;

import evenrise.model.contract.Field;
import evenrise.model.project.GivenFields;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** Legal values for what a file leaves out, and for what it gets wrong so that reading can go on. */
final class StandIns {
    private static final Map<RecordShape.Part, Object> DEFAULTS = new ConcurrentHashMap<>();

    private int texts;

    /** What a component is when its field is absent and need not be there; null where the record derives it. */
    Object absent(RecordShape.Part part) {
        if (!part.field().byDefault().isEmpty()) {
            return DEFAULTS.computeIfAbsent(part, StandIns::byDefault);
        }
        if (part.type() == OptionalInt.class) {
            return OptionalInt.empty();
        }
        if (part.type() == OptionalLong.class) {
            return OptionalLong.empty();
        }
        if (part.type() == OptionalDouble.class) {
            return OptionalDouble.empty();
        }
        if (part.type() != part.inner()) {
            return Optional.empty();
        }
        return RecordShape.entryType(part.type()) != null ? List.of() : null;
    }

    private static Object byDefault(RecordShape.Part part) {
        try {
            Problems none = new Problems("default");
            Node node = TreeReader.read(part.field().byDefault(), Format.JSON, part.key(), none);
            Type entry = RecordShape.entryType(part.inner());
            Object value = entry != null
                    ? List.of()
                    : new Scalars(none)
                            .value(node, part.inner(), part.field(), "")
                            .orElseThrow();
            return RecordBinder.wrap(value, part.type());
        } catch (Unreadable e) {
            throw new IllegalStateException("default of " + part.key(), e);
        }
    }

    /** For a value of the wrong kind: a name written as a number stays that name, so that references to it hold. */
    Object instead(Node wrong, Type type, Field field, Set<Object> taken) {
        if (type == String.class
                && wrong instanceof Node.Num number
                && !number.text().isBlank()) {
            return number.text();
        }
        return value(type, field, taken);
    }

    Object value(Type type, Field field, Set<Object> taken) {
        if (RecordShape.entryType(type) != null) {
            return list(RecordShape.entryType(type), field);
        }
        Class<?> plain = (Class<?>) type;
        if (plain == GivenFields.class) {
            return GivenFields.NONE;
        }
        if (plain.isRecord()) {
            return record(plain);
        }
        if (plain.isEnum()) {
            return plain.getEnumConstants()[0];
        }
        if (plain == String.class) {
            String text;
            do {
                text = "?" + (++texts);
            } while (taken.contains(text));
            return text;
        }
        if (plain == boolean.class || plain == Boolean.class) {
            return Boolean.TRUE;
        }
        if (plain == int.class || plain == Integer.class) {
            return Double.isFinite(field.max()) ? (int) field.max() : (int) number(field); // generous with room
        }
        double number = number(field);
        return plain == long.class ? (Object) (long) number : (Object) number;
    }

    /** A whole number where the bounds hold one. */
    private static double number(Field field) {
        double least = Math.max(field.min(), field.above());
        return Double.isFinite(least) ? Math.min(Math.floor(least) + 1, field.max()) : Math.min(1, field.max());
    }

    List<Object> list(Type entryType, Field field) {
        List<Object> entries = new ArrayList<>();
        while (entries.size() < field.atLeast()) {
            entries.add(value(entryType, Expected.ofEntries(field), Set.copyOf(entries)));
        }
        return entries;
    }

    Object record(Class<?> type) {
        RecordShape shape = RecordShape.of(type);
        List<Object> values = new ArrayList<>();
        for (RecordShape.Part part : shape.parts().values()) {
            values.add(
                    part.isRequired()
                            ? RecordBinder.wrap(value(part.inner(), part.field(), Set.of()), part.type())
                            : absent(part));
        }
        return shape.make(values);
    }
}
