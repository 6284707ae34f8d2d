package evenrise.model.file;

import evenrise.model.contract.Field;
import evenrise.model.contract.Words;
import evenrise.model.project.Project;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A field of the entries of one of a project's lists, as a column of a table has it: one value, or a list of values.
 *
 * @param path its key, with those of the objects that it is in before it: {@code circuit.cable.size}
 * @param unit symbol of its unit as keys have it; empty where it has none
 * @param expected what it takes, in words
 * @param byDefault what counts where it is absent, as JSON; empty where that is said by the meaning, or nothing counts
 */
public record FieldColumn(
        String path,
        Kind kind,
        boolean isRequired,
        Optional<String> unit,
        String expected,
        String byDefault,
        String meaning) {
    /** What a cell holds. */
    public enum Kind {
        TEXT,
        NUMBER,
        TRUTH,
        TEXTS,
        NUMBERS,
        /** Whatever somebody noted: a text, a number, true or false. */
        FREE
    }

    /** Lists of a project whose entries have ids, in the order in which people look for them. */
    public static final List<String> LISTS =
            List.of("loads", "panels", "boards", "board_types", "shutdown_groups", "systems", "nodes");

    /** The key that names an entry. */
    public static final String ID = "id";

    /** All columns that a list can have, but for notes and keys of one's own; those of nested objects, too. */
    public static List<FieldColumn> of(String list) {
        Type entry = RecordShape.entryType(
                RecordShape.of(Project.class).parts().get(list).inner());
        return of(RecordShape.of((Class<?>) entry), "").toList();
    }

    /** A column of somebody's own: {@code notes} or {@code x-…}; empty where the header is no such key. */
    public static Optional<FieldColumn> own(String key) {
        return SideNotes.isFree(key)
                ? Optional.of(
                        new FieldColumn(key, Kind.FREE, false, Optional.empty(), "anything", "", "Yours; never read"))
                : Optional.empty();
    }

    /** Whether it is in an object of its own. */
    public boolean isNested() {
        return path.contains(".");
    }

    List<String> keys() {
        return kind == Kind.FREE ? List.of(path) : List.of(path.split("\\."));
    }

    private static Stream<FieldColumn> of(RecordShape shape, String within) {
        List<FieldColumn> columns = new ArrayList<>();
        for (RecordShape.Part part : shape.parts().values()) {
            Type entry = RecordShape.entryType(part.inner());
            if (part.inner() instanceof Class<?> record && record.isRecord()) {
                RecordShape nested = RecordShape.of(record);
                if (nested.bareList().isEmpty()) {
                    of(nested, within + part.key() + ".").forEach(columns::add);
                }
            } else if (entry == null || !((Class<?>) entry).isRecord()) {
                columns.add(column(part, within));
            }
        }
        return columns.stream();
    }

    private static FieldColumn column(RecordShape.Part part, String within) {
        Field field = part.field();
        return new FieldColumn(
                within + part.key(),
                kind(part.inner()),
                part.isRequired(),
                Words.unit(part.accessor().getName()),
                Expected.of(part.inner(), field),
                field.byDefault().replace("\"", ""),
                field.meaning());
    }

    private static Kind kind(Type type) {
        Type entry = RecordShape.entryType(type);
        Class<?> plain = (Class<?>) (entry == null ? type : entry);
        boolean isNumber = Number.class.isAssignableFrom(plain) || plain.isPrimitive() && plain != boolean.class;
        if (entry != null) {
            return isNumber ? Kind.NUMBERS : Kind.TEXTS;
        }
        return isNumber ? Kind.NUMBER : plain == boolean.class || plain == Boolean.class ? Kind.TRUTH : Kind.TEXT;
    }
}
