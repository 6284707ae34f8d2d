package evenrise.solver.report;

import evenrise.model.contract.Words;
import java.lang.reflect.RecordComponent;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Writes records as JSON (RFC 8259) in the spelling of the files: a key as {@link Words#key} gives it, an enum as its
 * word, an empty value as null. Characters beyond ASCII are escaped, so that no name can act on a terminal and any
 * character set carries the text.
 */
public final class Json {
    private Json() {}

    public static String of(Record root) {
        return value(root, "");
    }

    /** Keys as they are. */
    static String of(Map<String, ?> root) {
        return value(root, "");
    }

    private static String value(Object value, String indent) {
        if (value == null) {
            return "null";
        } else if (value instanceof Optional<?> optional) {
            return value(optional.orElse(null), indent);
        } else if (value instanceof OptionalDouble optional) {
            return optional.isPresent() ? value(optional.getAsDouble(), indent) : "null";
        } else if (value instanceof OptionalInt optional) {
            return optional.isPresent() ? value(optional.getAsInt(), indent) : "null";
        } else if (value instanceof OptionalLong optional) {
            return optional.isPresent() ? value(optional.getAsLong(), indent) : "null";
        } else if (value instanceof Double number) {
            return Double.isFinite(number) ? number.toString() : "null";
        } else if (value instanceof Integer || value instanceof Long || value instanceof Boolean) {
            return value.toString();
        } else if (value instanceof Enum<?> constant) {
            return quoted(Words.word(constant));
        } else if (value instanceof List<?> list) {
            return block("[", list.stream().map(entry -> value(entry, indent + "  ")), "]", indent);
        } else if (value instanceof Map<?, ?> map) {
            return block("{", map.entrySet().stream().map(entry -> entry(entry, indent + "  ")), "}", indent);
        } else if (value instanceof Record object) {
            return block(
                    "{",
                    Stream.of(object.getClass().getRecordComponents())
                            .map(component -> quoted(Words.key(component.getName())) + ": "
                                    + value(read(component, object), indent + "  ")),
                    "}",
                    indent);
        } else if (value instanceof String text) {
            return quoted(text);
        }
        throw new IllegalArgumentException("no JSON for " + value.getClass());
    }

    private static String entry(Map.Entry<?, ?> entry, String indent) {
        String key = entry.getKey() instanceof Enum<?> constant
                ? Words.word(constant)
                : entry.getKey().toString();
        return quoted(key) + ": " + value(entry.getValue(), indent);
    }

    private static String block(String open, Stream<String> parts, String close, String indent) {
        String inner = parts.collect(Collectors.joining(",\n  " + indent));
        return inner.isEmpty() ? open + close : open + "\n  " + indent + inner + "\n" + indent + close;
    }

    private static String quoted(String text) {
        return IntStream.range(0, text.length())
                .mapToObj(i -> escaped(text.charAt(i)))
                .collect(Collectors.joining("", "\"", "\""));
    }

    private static String escaped(char c) {
        if (c == '"' || c == '\\') {
            return "\\" + c;
        }
        return c >= ' ' && c <= '~' ? String.valueOf(c) : String.format(Locale.ROOT, "\\u%04x", (int) c);
    }

    private static Object read(RecordComponent component, Record object) {
        try {
            return component.getAccessor().invoke(object);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(component + " cannot be read", e);
        }
    }
}
