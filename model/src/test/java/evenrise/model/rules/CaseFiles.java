package evenrise.model.rules;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import evenrise.model.contract.BareList;
import evenrise.model.contract.Field;
import evenrise.model.contract.Words;
import java.io.IOException;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;

/** Reads the records of a case without the product's reader, so that a verdict here speaks of the rules alone. */
final class CaseFiles {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private CaseFiles() {}

    static JsonNode tree(Path file) throws IOException {
        return MAPPER.readTree(file.toFile());
    }

    static <T> T read(Path file, Class<T> type) throws IOException, ReflectiveOperationException {
        return type.cast(value(tree(file), type));
    }

    private static Object value(JsonNode node, Type type) throws IOException, ReflectiveOperationException {
        boolean absent = node == null || node.isNull();
        if (type instanceof ParameterizedType generic) {
            Type inner = generic.getActualTypeArguments()[0];
            if (generic.getRawType() == Optional.class) {
                return absent ? Optional.empty() : Optional.of(value(node, inner));
            }
            List<Object> list = new ArrayList<>();
            for (JsonNode each : absent ? MAPPER.createArrayNode() : node) {
                list.add(value(each, inner));
            }
            return list;
        }
        if (type == OptionalDouble.class) {
            return absent ? OptionalDouble.empty() : OptionalDouble.of(node.asDouble());
        } else if (type == OptionalInt.class) {
            return absent ? OptionalInt.empty() : OptionalInt.of(node.asInt());
        } else if (type == OptionalLong.class) {
            return absent ? OptionalLong.empty() : OptionalLong.of(node.asLong());
        } else if (absent) {
            return null;
        } else if (((Class<?>) type).isRecord()) {
            BareList bare = ((Class<?>) type).getAnnotation(BareList.class);
            JsonNode object = bare != null && node.isArray()
                    ? MAPPER.createObjectNode().set(Words.key(bare.value()), node)
                    : node;
            return build(object, (Class<?>) type);
        } else if (((Class<?>) type).isEnum()) {
            return Arrays.stream(((Class<?>) type).getEnumConstants())
                    .filter(each -> Words.word((Enum<?>) each).equals(node.asText()))
                    .findFirst()
                    .orElseThrow();
        }
        return MAPPER.treeToValue(node, (Class<?>) type);
    }

    private static Object build(JsonNode node, Class<?> type) throws IOException, ReflectiveOperationException {
        RecordComponent[] parts = type.getRecordComponents();
        Object[] values = new Object[parts.length];
        for (int i = 0; i < parts.length; i++) {
            JsonNode said = node.get(Words.key(parts[i].getName()));
            String otherwise = parts[i].getAnnotation(Field.class).byDefault();
            boolean takesDefault = (said == null || said.isNull()) && !otherwise.isEmpty();
            values[i] = value(takesDefault ? MAPPER.readTree(otherwise) : said, parts[i].getGenericType());
        }
        Class<?>[] types = Arrays.stream(parts).map(RecordComponent::getType).toArray(Class<?>[]::new);
        return type.getDeclaredConstructor(types).newInstance(values);
    }
}
