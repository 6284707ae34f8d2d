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

    /**
     * What else of a project is edited row by row: objects of which there is one, whose row has their name; lists whose
     * entries have no id, whose rows have numbers; and lists within those of an entry.
     */
    public static final List<String> FURTHER = List.of(
            "project",
            "supply",
            "objective",
            "spare",
            "behaviour",
            "electrical",
            "scatter",
            "work",
            "scenes",
            "scenes.use",
            "defaults",
            "quantities",
            "catalogue",
            "catalogue.panel_types",
            "catalogue.breakers",
            "catalogue.transformers",
            "catalogue.nodes",
            "catalogue.feeders",
            "catalogue.contactors",
            "catalogue.cables",
            "catalogue.percentages",
            "catalogue.labour_hours");

    /** The name of what a project states of itself, beside its objects and lists. */
    static final String WHOLE = "project";

    private static final FieldColumn ROW = new FieldColumn(
            "id",
            Kind.TEXT,
            false,
            Optional.empty(),
            "the row's name",
            "",
            "Which row it is; rows of lists without ids have numbers");

    /** The key that names an entry. */
    public static final String ID = "id";

    /** All columns that a list can have, but for notes and keys of one's own; those of nested objects, too. */
    public static List<FieldColumn> of(String list) {
        if (list.equals(WHOLE)) {
            return Stream.concat(Stream.of(ROW), ofTheWhole()).toList();
        }
        List<FieldColumn> columns = of(RecordShape.of(type(list)), "").toList();
        boolean isNamed = columns.stream().anyMatch(each -> each.path().equals(ID));
        return isNamed
                ? columns
                : Stream.concat(Stream.of(ROW), columns.stream()).toList();
    }

    /** Whether its entries have ids of their own. */
    static boolean isNamed(String list) {
        return !list.equals(WHOLE) && RecordShape.of(type(list)).parts().containsKey(ID);
    }

    /** Whether there is one at most. */
    public static boolean isSingle(String list) {
        if (list.equals(WHOLE)) {
            return true;
        }
        RecordShape owner = RecordShape.of(Project.class);
        List<String> steps = List.of(list.split("\\."));
        for (String step : steps.subList(0, steps.size() - 1)) {
            owner = RecordShape.of(record(owner.parts().get(step).inner()));
        }
        return RecordShape.entryType(
                        owner.parts().get(steps.get(steps.size() - 1)).inner())
                == null;
    }

    private static Class<?> type(String list) {
        Class<?> type = Project.class;
        for (String step : list.split("\\.")) {
            type = record(RecordShape.of(type).parts().get(step).inner());
        }
        return type;
    }

    private static Class<?> record(Type type) {
        Type entry = RecordShape.entryType(type);
        return (Class<?>) (entry == null ? type : entry);
    }

    /** Single values: name, tolerance and so on. */
    private static Stream<FieldColumn> ofTheWhole() {
        return RecordShape.of(Project.class).parts().values().stream()
                .filter(part -> RecordShape.entryType(part.inner()) == null
                        && part.inner() instanceof Class<?> plain
                        && !plain.isRecord()
                        && !part.key().equals("format"))
                .map(part -> column(part, ""));
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
