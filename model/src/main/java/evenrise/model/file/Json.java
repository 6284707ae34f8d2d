package evenrise.model.file;

import com.fasterxml.jackson.core.JsonFactory;
import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.io.SerializedString;
import com.fasterxml.jackson.core.util.DefaultIndenter;
import com.fasterxml.jackson.core.util.DefaultPrettyPrinter;
import com.fasterxml.jackson.core.util.Separators;
import evenrise.model.contract.Words;
import java.io.IOException;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.lang.reflect.Method;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.stream.Stream;

/**
 * Writes records as JSON (RFC 8259) in the spelling of the files: a key as {@link Words#key} gives it, an enum as its
 * word, an empty value as null. Characters beyond ASCII are escaped, so that no name can act on a terminal and any
 * character set carries the text.
 */
public final class Json {
    private static final JsonFactory FACTORY = new JsonFactory();
    private static final int LAST_PLAIN = '~';
    private static final DefaultIndenter LINES = new DefaultIndenter("  ", "\n");
    private static final DefaultPrettyPrinter LEGIBLE = new DefaultPrettyPrinter(Separators.createDefaultInstance()
                    .withObjectFieldValueSpacing(Separators.Spacing.AFTER)
                    .withObjectEmptySeparator("")
                    .withArrayEmptySeparator(""))
            .withObjectIndenter(LINES)
            .withArrayIndenter(LINES);

    private record Member(SerializedString key, Method accessor) {}

    // Spelling a key costs more than writing its value.
    private static final ClassValue<List<Member>> MEMBERS = new ClassValue<>() {
        @Override
        protected List<Member> computeValue(Class<?> type) {
            return Stream.of(type.getRecordComponents())
                    .map(each -> new Member(new SerializedString(Words.key(each.getName())), each.getAccessor()))
                    .toList();
        }
    };

    private final JsonGenerator to;

    private Json(JsonGenerator to) {
        this.to = to;
    }

    public static String of(Record root) {
        return written(root, true);
    }

    /** Keys as they are. */
    public static String of(Map<String, ?> root) {
        return written(root, true);
    }

    /** The same in one line, for programs. */
    public static String compact(Record root) {
        return written(root, false);
    }

    private static String written(Object root, boolean isLegible) {
        StringWriter text = new StringWriter();
        try (JsonGenerator generator = FACTORY.createGenerator(text)) {
            generator.setHighestNonEscapedChar(LAST_PLAIN);
            if (isLegible) {
                generator.setPrettyPrinter(LEGIBLE.createInstance());
            }
            new Json(generator).value(root);
        } catch (IOException e) {
            throw new UncheckedIOException("a text in memory cannot fail", e);
        }
        return text.toString();
    }

    private void value(Object value) throws IOException {
        if (value == null) {
            to.writeNull();
        } else if (value instanceof Optional<?> optional) {
            value(optional.orElse(null));
        } else if (value instanceof OptionalDouble optional) {
            value(optional.isPresent() ? optional.getAsDouble() : null);
        } else if (value instanceof OptionalInt optional) {
            value(optional.isPresent() ? optional.getAsInt() : null);
        } else if (value instanceof OptionalLong optional) {
            value(optional.isPresent() ? optional.getAsLong() : null);
        } else if (value instanceof Double number) {
            number(number);
        } else if (value instanceof Integer number) {
            to.writeNumber(number);
        } else if (value instanceof Long number) {
            to.writeNumber(number);
        } else if (value instanceof Boolean is) {
            to.writeBoolean(is);
        } else if (value instanceof Enum<?> constant) {
            to.writeString(Words.word(constant));
        } else if (value instanceof String text) {
            to.writeString(text);
        } else {
            structure(value);
        }
    }

    /** JSON has no word for what is no finite number. */
    private void number(double number) throws IOException {
        if (Double.isFinite(number)) {
            to.writeNumber(number);
        } else {
            to.writeNull();
        }
    }

    private void structure(Object value) throws IOException {
        if (value instanceof List<?> list) {
            to.writeStartArray();
            for (Object entry : list) {
                value(entry);
            }
            to.writeEndArray();
        } else if (value instanceof Map<?, ?> map) {
            to.writeStartObject();
            for (Map.Entry<?, ?> entry : map.entrySet()) {
                to.writeFieldName(
                        entry.getKey() instanceof Enum<?> constant
                                ? Words.word(constant)
                                : entry.getKey().toString());
                value(entry.getValue());
            }
            to.writeEndObject();
        } else if (value instanceof Record object) {
            to.writeStartObject();
            for (Member member : MEMBERS.get(object.getClass())) {
                to.writeFieldName(member.key());
                value(read(member.accessor(), object));
            }
            to.writeEndObject();
        } else {
            throw new IllegalArgumentException("no JSON for " + value.getClass());
        }
    }

    private static Object read(Method accessor, Record object) {
        try {
            return accessor.invoke(object);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(accessor + " cannot be read", e);
        }
    }
}
