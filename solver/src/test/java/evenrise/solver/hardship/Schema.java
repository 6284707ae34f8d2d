package evenrise.solver.hardship;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;

/** A schema of ours as a source of values that the format allows, with a liking for its bounds. */
final class Schema {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private final JsonNode root;

    private Schema(JsonNode root) {
        this.root = root;
    }

    /** @param kind project, plan, script or title */
    static Schema of(String kind) {
        try {
            return new Schema(new ObjectMapper()
                    .readTree(Path.of("..", "docs", "schema", kind + ".schema.json")
                            .toFile()));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    JsonNode root() {
        return root;
    }

    /** The schema behind references and allowances of null. */
    JsonNode plain(JsonNode schema) {
        JsonNode it = schema;
        while (it.has("$ref") || it.has("anyOf")) {
            it = it.has("$ref")
                    ? root.path("$defs").path(it.get("$ref").asText().substring("#/$defs/".length()))
                    : it.get("anyOf").get(it.get("anyOf").size() - 1);
        }
        return it;
    }

    JsonNode property(JsonNode schema, String key) {
        return plain(plain(schema).path("properties").path(key));
    }

    JsonNode entries(JsonNode schema) {
        return plain(plain(schema).path("items"));
    }

    /** A value that the schema allows, mostly at a bound; references are drawn from {@code names}. */
    JsonNode value(JsonNode of, Random chance, List<String> names) {
        JsonNode schema = plain(of);
        if (schema.has("enum")) {
            return schema.get("enum").get(chance.nextInt(schema.get("enum").size()));
        }
        String type = type(schema);
        return switch (type) {
            case "object" -> object(schema, chance, names);
            case "array" -> array(schema, chance, names);
            case "number" -> NODES.numberNode(number(schema, chance));
            case "integer" -> NODES.numberNode(Math.round(number(schema, chance)));
            case "boolean" -> NODES.booleanNode(chance.nextBoolean());
            default -> NODES.textNode(names.isEmpty() ? "x" : names.get(chance.nextInt(names.size())));
        };
    }

    private static String type(JsonNode schema) {
        JsonNode type = schema.path("type");
        return type.isArray() ? type.get(0).asText() : type.asText();
    }

    private ObjectNode object(JsonNode schema, Random chance, List<String> names) {
        ObjectNode object = NODES.objectNode();
        List<String> required = new ArrayList<>();
        schema.path("required").forEach(each -> required.add(each.asText()));
        double share = chance.nextDouble() * 0.6;
        schema.path("properties").properties().forEach(each -> {
            if (required.contains(each.getKey()) || chance.nextDouble() < share) {
                object.set(each.getKey(), value(each.getValue(), chance, names));
            }
        });
        return object;
    }

    private JsonNode array(JsonNode schema, Random chance, List<String> names) {
        var array = NODES.arrayNode();
        int size = Math.max(schema.path("minItems").asInt(0), chance.nextInt(4));
        for (int i = 0; i < size; i++) {
            array.add(value(schema.path("items"), chance, names));
        }
        return array;
    }

    double number(JsonNode schema, Random chance) {
        double low =
                schema.path("minimum").asDouble(schema.path("exclusiveMinimum").asDouble(-1e6));
        double high = schema.path("maximum").asDouble(1e6);
        return switch (chance.nextInt(8)) {
            case 0 -> low;
            case 1 -> high;
            case 2 -> low + 1e-6;
            case 3 -> high * (1 - 1e-9);
            case 4 -> low + Math.pow(10, chance.nextInt(13) - 6);
            case 5 -> Math.min(high, low + 1);
            case 6 -> low + (high - low) * Math.pow(chance.nextDouble(), 6);
            default -> low + (high - low) * chance.nextDouble();
        };
    }
}
