package evenrise.model.file;

import evenrise.model.contract.Words;
import evenrise.model.plan.Assignment;
import evenrise.model.project.GivenFields;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * The text of a record: keys in the record's order, one line for each load, board, panel, assignment, so that two plans
 * compare line by line. Absent optional values are left out, except an assignment's, which are written as null.
 */
final class FileText {
    /** Editors look for it in the first lines. */
    private static final String SCHEMA = "$schema";

    private final Format format;
    private final SideNotes notes;

    private FileText(Format format, SideNotes notes) {
        this.format = format;
        this.notes = notes;
    }

    static String of(Record whole, Format format) {
        return of(whole, SideNotes.NONE, format);
    }

    /** @param notes each written where its place still is */
    static String of(Record whole, SideNotes notes, Format format) {
        return new FileText(format, notes).whole(whole);
    }

    private String whole(Record whole) {
        Map<String, String> parts = new LinkedHashMap<>();
        Map<String, Node> beside = new LinkedHashMap<>(notes.at(""));
        Optional.ofNullable(beside.remove(SCHEMA)).ifPresent(it -> parts.put(SCHEMA, note(it)));
        members(whole, "").forEach((key, value) -> parts.put(key, part(value, SideNotes.member("", key))));
        beside.forEach((key, value) -> parts.put(key, note(value)));
        return format == Format.JSON
                ? parts.entrySet().stream()
                        .map(it -> "  " + key(it.getKey()) + ": " + it.getValue())
                        .collect(Collectors.joining(",\n", "{\n", "\n}\n"))
                : parts.entrySet().stream()
                        .map(it -> key(it.getKey())
                                + ":"
                                + (it.getValue().startsWith("\n") ? "" : " ")
                                + it.getValue()
                                + "\n")
                        .collect(Collectors.joining());
    }

    private String part(Object value, String place) {
        boolean lines = value instanceof List<?> list && !list.isEmpty() && !(list.get(0) instanceof Number);
        if (!lines) {
            return inline(value, place);
        }
        return format == Format.JSON
                ? entries((List<?>) value, place)
                        .map(it -> "    " + it)
                        .collect(Collectors.joining(",\n", "[\n", "\n  ]"))
                : entries((List<?>) value, place).map(it -> "\n  - " + it).collect(Collectors.joining());
    }

    private Stream<String> entries(List<?> list, String place) {
        return IntStream.range(0, list.size())
                .mapToObj(i -> inline(list.get(i), SideNotes.entry(place, i, SideNotes.name(list.get(i)))));
    }

    private String inline(Object value, String place) {
        if (value == null) {
            return "null";
        }
        Optional<List<?>> bare = bareList(value);
        if (bare.isPresent()) {
            return inline(bare.get(), place);
        }
        if (value instanceof Record record) {
            Map<String, String> parts = new LinkedHashMap<>();
            members(record, place)
                    .forEach((key, member) -> parts.put(key, inline(member, SideNotes.member(place, key))));
            notes.at(place).forEach((key, note) -> parts.put(key, note(note)));
            return object(parts);
        }
        if (value instanceof GivenFields given) {
            return inline(given.byKey(), place);
        }
        if (value instanceof Map<?, ?> given) {
            Map<String, String> parts = new LinkedHashMap<>();
            given.forEach((key, member) ->
                    parts.put((String) key, inline(member, SideNotes.member(place, (String) key))));
            notes.at(place).forEach((key, note) -> parts.put(key, note(note)));
            return object(parts);
        }
        if (value instanceof List<?> list) {
            return entries(list, place).collect(Collectors.joining(", ", "[", "]"));
        }
        if (value instanceof Enum<?> constant) {
            return text(Words.word(constant));
        }
        if (value instanceof String text) {
            return text(text);
        }
        return value instanceof Double number ? ShortestNumber.of(number) : value.toString();
    }

    private String note(Node value) {
        if (value instanceof Node.Obj object) {
            Map<String, String> parts = new LinkedHashMap<>();
            object.members().forEach((key, member) -> parts.put(key, note(member.value())));
            return object(parts);
        }
        if (value instanceof Node.Arr list) {
            return list.entries().stream().map(this::note).collect(Collectors.joining(", ", "[", "]"));
        }
        if (value instanceof Node.Text text) {
            return text(text.text());
        }
        if (value instanceof Node.Num number) {
            return number.number() instanceof Double it
                    ? ShortestNumber.of(it)
                    : number.number().toString();
        }
        return value instanceof Node.Bool bool ? Boolean.toString(bool.truth()) : "null";
    }

    private String object(Map<String, String> parts) {
        return parts.entrySet().stream()
                .map(it -> key(it.getKey()) + ": " + it.getValue())
                .collect(Collectors.joining(", ", "{", "}"));
    }

    /** What stands in the file as a list, though it is a record. */
    private static Optional<List<?>> bareList(Object value) {
        return value instanceof Record record
                ? RecordShape.of(record.getClass())
                        .bareList()
                        .<List<?>>map(part -> (List<?>) RecordShape.get(part, record))
                        .filter(list -> !list.isEmpty())
                : Optional.empty();
    }

    private String key(String key) {
        return text(key);
    }

    private String text(String text) {
        return format == Format.JSON ? Quotes.json(text) : Quotes.yaml(text);
    }

    private Map<String, Object> members(Record record, String place) {
        Map<String, Object> members = new LinkedHashMap<>();
        for (RecordShape.Part part : RecordShape.of(record.getClass()).parts().values()) {
            if (notes.silence().covers(place, part.key(), RecordShape.get(part, record))) {
                continue;
            }
            Object value = unwrap(RecordShape.get(part, record));
            boolean leftOut = value == null
                    ? !(record instanceof Assignment)
                    : part.field().optional() && isDerivedEmpty(part, value, SideNotes.member(place, part.key()));
            if (!leftOut) {
                members.put(part.key(), value);
            }
        }
        return members;
    }

    /** An optional list that is empty, or an optional part of which nothing is given. */
    private boolean isDerivedEmpty(RecordShape.Part part, Object value, String place) {
        boolean optionalType = part.type() != part.inner();
        return !optionalType
                && (value instanceof List<?> list && list.isEmpty()
                        || value instanceof Record record
                                && members(record, place).isEmpty()
                                && notes.at(place).isEmpty());
    }

    private static Object unwrap(Object value) {
        if (value instanceof Optional<?> it) {
            return it.orElse(null);
        }
        if (value instanceof OptionalInt it) {
            return it.isPresent() ? it.getAsInt() : null;
        }
        if (value instanceof OptionalLong it) {
            return it.isPresent() ? it.getAsLong() : null;
        }
        if (value instanceof OptionalDouble it) {
            return it.isPresent() ? it.getAsDouble() : null;
        }
        return value;
    }
}
