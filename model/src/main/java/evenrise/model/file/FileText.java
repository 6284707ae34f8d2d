package evenrise.model.file;

import evenrise.model.contract.Words;
import evenrise.model.plan.Assignment;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.stream.Collectors;

/**
 * The text of a record: keys in the record's order, one line for each load, board, panel, assignment, so that two plans
 * compare line by line. Absent optional values are left out, except an assignment's, which are written as null.
 */
final class FileText {
    private final Format format;

    private FileText(Format format) {
        this.format = format;
    }

    static String of(Record whole, Format format) {
        return new FileText(format).whole(whole);
    }

    private String whole(Record whole) {
        Map<String, String> parts = new LinkedHashMap<>();
        members(whole).forEach((key, value) -> parts.put(key, part(value)));
        return format == Format.JSON
                ? parts.entrySet().stream()
                        .map(it -> "  \"" + it.getKey() + "\": " + it.getValue())
                        .collect(Collectors.joining(",\n", "{\n", "\n}\n"))
                : parts.entrySet().stream()
                        .map(it ->
                                it.getKey() + ":" + (it.getValue().startsWith("\n") ? "" : " ") + it.getValue() + "\n")
                        .collect(Collectors.joining());
    }

    private String part(Object value) {
        boolean lines = value instanceof List<?> list && !list.isEmpty() && !(list.get(0) instanceof Number);
        if (!lines) {
            return inline(value);
        }
        return format == Format.JSON
                ? ((List<?>) value)
                        .stream().map(it -> "    " + inline(it)).collect(Collectors.joining(",\n", "[\n", "\n  ]"))
                : ((List<?>) value).stream().map(it -> "\n  - " + inline(it)).collect(Collectors.joining());
    }

    private String inline(Object value) {
        if (value == null) {
            return "null";
        }
        Optional<List<?>> bare = bareList(value);
        if (bare.isPresent()) {
            return inline(bare.get());
        }
        if (value instanceof Record record) {
            return members(record).entrySet().stream()
                    .map(it -> key(it.getKey()) + ": " + inline(it.getValue()))
                    .collect(Collectors.joining(", ", "{", "}"));
        }
        if (value instanceof List<?> list) {
            return list.stream().map(this::inline).collect(Collectors.joining(", ", "[", "]"));
        }
        if (value instanceof Enum<?> constant) {
            return text(Words.word(constant));
        }
        if (value instanceof String text) {
            return text(text);
        }
        return value instanceof Double number ? Numbers.shortest(number) : value.toString();
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
        return format == Format.JSON ? "\"" + key + "\"" : key;
    }

    private String text(String text) {
        return format == Format.JSON ? Quotes.json(text) : Quotes.yaml(text);
    }

    private static Map<String, Object> members(Record record) {
        Map<String, Object> members = new LinkedHashMap<>();
        for (RecordShape.Part part : RecordShape.of(record.getClass()).parts().values()) {
            Object value = unwrap(RecordShape.get(part, record));
            boolean leftOut = value == null
                    ? !(record instanceof Assignment)
                    : part.field().optional() && isDerivedEmpty(part, value);
            if (!leftOut) {
                members.put(part.key(), value);
            }
        }
        return members;
    }

    /** An optional list that is empty, or an optional part of which nothing is given. */
    private static boolean isDerivedEmpty(RecordShape.Part part, Object value) {
        boolean optionalType = part.type() != part.inner();
        return !optionalType
                && (value instanceof List<?> list && list.isEmpty()
                        || value instanceof Record record && members(record).isEmpty());
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
