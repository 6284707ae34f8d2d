package evenrise.solver.hardship;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.POJONode;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;

/** Makes neighbours of a valid file: some of its parts changed, taken away, doubled, exchanged, or added by the schema. */
final class TreeMutator {
    private static final JsonNodeFactory NODES = JsonNodeFactory.instance;

    private static final List<String> NUMBERS = List.of(
            "0",
            "-0.0",
            "-1",
            "1",
            "2",
            "3",
            "0.1",
            "0.5",
            "1e-6",
            "1e-19",
            "1e-300",
            "4.9e-324",
            "1e6",
            "1e15",
            "1e19",
            "1e300",
            "1.7976931348623157e308",
            "1e400",
            "-1e400",
            "2147483647",
            "2147483648",
            "-2147483648",
            "9223372036854775807",
            "9223372036854775808",
            "99999999999999999999999999",
            "NaN",
            "Infinity",
            "-Infinity",
            "42",
            "1000",
            "1e9999999999",
            "0.30000000000000004");

    private final Schema schema;
    private final boolean isGentle;
    private final Random chance;
    private final List<String> names = new ArrayList<>();
    private final List<Place> places = new ArrayList<>();

    /** A value's place: a member of an object, or an entry of an array. */
    private record Place(JsonNode owner, String key, int index, JsonNode schema) {
        JsonNode value() {
            return owner.isObject() ? owner.get(key) : owner.get(index);
        }

        void set(JsonNode value) {
            if (owner instanceof ObjectNode object) {
                object.set(key, value);
            } else if (index < owner.size()) {
                ((ArrayNode) owner).set(index, value);
            }
        }

        void remove() {
            if (owner instanceof ObjectNode object) {
                object.remove(key);
            } else if (index < owner.size()) {
                ((ArrayNode) owner).remove(index);
            }
        }
    }

    /** @param isGentle whether most of what comes out is to be well formed and in range */
    TreeMutator(Schema schema, boolean isGentle, Random chance) {
        this.schema = schema;
        this.isGentle = isGentle;
        this.chance = chance;
    }

    JsonNode mutated(JsonNode seed) {
        JsonNode root = seed.deepCopy();
        int times = 1 + chance.nextInt(isGentle ? 4 : 5);
        for (int i = 0; i < times; i++) {
            names.clear();
            places.clear();
            collect(root, schema.plain(schema.root()));
            if (places.isEmpty()) {
                return root;
            }
            mutate(place(), root);
        }
        return root;
    }

    /** Small parts of a file are as likely as its long lists. */
    private Place place() {
        if (chance.nextInt(3) > 0) {
            return places.get(chance.nextInt(places.size()));
        }
        Place it = places.get(chance.nextInt(places.size()));
        String key = it.key();
        List<Place> others =
                places.stream().filter(each -> !each.key().equals(key)).toList();
        return others.isEmpty() ? it : others.get(chance.nextInt(others.size()));
    }

    private void collect(JsonNode node, JsonNode of) {
        if (node.isTextual() && node.asText().length() < 200) {
            names.add(node.asText());
        }
        if (node instanceof ObjectNode object) {
            for (Map.Entry<String, JsonNode> each : object.properties()) {
                JsonNode inner = schema.property(of, each.getKey());
                places.add(new Place(object, each.getKey(), -1, inner));
                collect(each.getValue(), inner);
            }
        } else if (node instanceof ArrayNode array) {
            JsonNode inner = schema.entries(of);
            for (int i = 0; i < array.size(); i++) {
                places.add(new Place(array, "", i, inner));
                collect(array.get(i), inner);
            }
        }
    }

    private void mutate(Place at, JsonNode root) {
        switch (isGentle ? gentle() : chance.nextInt(16)) {
            case 0, 1 -> at.set(replaced(at));
            case 2 -> at.set(schema.value(at.schema(), chance, names));
            case 3 -> at.remove();
            case 4 -> added(at, root);
            case 5 -> noted(at);
            case 6 -> list(at);
            case 7 -> everywhere(at, root);
            case 8 -> at.set(places.get(chance.nextInt(places.size())).value().deepCopy());
            case 9 -> exchanged(at);
            case 10 -> at.set(nested());
            case 11 -> twice(at);
            case 12 -> misspelt(at);
            case 13 -> at.set(NODES.textNode(HostileTexts.any(chance, names)));
            case 14 -> at.set(new POJONode(NUMBERS.get(chance.nextInt(NUMBERS.size()))));
            default -> at.set(NODES.nullNode());
        }
    }

    private int gentle() {
        return chance.nextInt(20) == 0
                ? chance.nextInt(16)
                : new int[] {2, 2, 2, 3, 4, 4, 5, 6, 7, 7, 9, 0}[chance.nextInt(12)];
    }

    private JsonNode replaced(Place at) {
        JsonNode value = at.value();
        if (value == null) {
            return NODES.nullNode();
        }
        if (value.isNumber()) {
            return isGentle
                    ? schema.value(at.schema(), chance, names)
                    : new POJONode(NUMBERS.get(chance.nextInt(NUMBERS.size())));
        }
        if (value.isTextual()) {
            return NODES.textNode(
                    chance.nextBoolean() && !names.isEmpty()
                            ? names.get(chance.nextInt(names.size()))
                            : HostileTexts.any(chance, names));
        }
        return value.isBoolean() ? NODES.booleanNode(!value.asBoolean()) : schema.value(at.schema(), chance, names);
    }

    /** Something more that the format has and the file has not. */
    private void added(Place at, JsonNode root) {
        JsonNode owner = chance.nextInt(4) == 0 ? root : at.owner();
        JsonNode of = owner == root ? schema.plain(schema.root()) : null;
        if (of == null) {
            for (Place each : places) {
                if (each.value() == owner) {
                    of = each.schema();
                }
            }
        }
        if (owner instanceof ObjectNode object
                && of != null
                && of.path("properties").size() > 0) {
            List<String> keys = new ArrayList<>();
            of.path("properties").fieldNames().forEachRemaining(keys::add);
            String key = keys.get(chance.nextInt(keys.size()));
            object.set(key, schema.value(of.path("properties").path(key), chance, names));
        }
    }

    /** Something that the format lets anybody write, or nearly so. */
    private void noted(Place at) {
        if (at.owner() instanceof ObjectNode object) {
            List<String> keys = List.of("notes", "$schema", "x-rev", "x-", "x-" + HostileTexts.any(chance, names));
            object.set(
                    keys.get(chance.nextInt(keys.size())),
                    chance.nextInt(3) == 0
                            ? nested()
                            : chance.nextBoolean()
                                    ? NODES.textNode(HostileTexts.any(chance, names))
                                    : new POJONode(NUMBERS.get(chance.nextInt(NUMBERS.size()))));
        }
    }

    private void list(Place at) {
        if (!(at.value() instanceof ArrayNode array)) {
            at.set(schema.value(at.schema(), chance, names));
            return;
        }
        switch (chance.nextInt(6)) {
            case 0 -> array.removeAll();
            case 1 -> {
                if (!array.isEmpty()) {
                    array.add(array.get(chance.nextInt(array.size())).deepCopy());
                }
            }
            case 2 -> array.add(schema.value(schema.entries(at.schema()), chance, names));
            case 3 -> {
                List<JsonNode> all = new ArrayList<>();
                array.forEach(all::add);
                Collections.shuffle(all, chance);
                array.removeAll().addAll(all);
            }
            case 4 -> {
                while (array.size() > 1) {
                    array.remove(chance.nextInt(array.size()));
                }
            }
            default -> many(array);
        }
    }

    /** A list as long as it gets; entries with ids get ones of their own, as often as not. */
    private void many(ArrayNode array) {
        if (array.isEmpty()) {
            return;
        }
        JsonNode one = array.get(chance.nextInt(array.size()));
        int times = isGentle ? 20 : chance.nextInt(40) == 0 ? 3000 : 50;
        boolean areNamed = chance.nextBoolean();
        for (int i = 0; i < times; i++) {
            JsonNode copy = one.deepCopy();
            if (areNamed && copy instanceof ObjectNode object && object.has("id")) {
                object.put("id", object.get("id").asText() + "-" + i);
            }
            array.add(copy);
        }
    }

    /** The same value for every field of this name. */
    private void everywhere(Place at, JsonNode root) {
        JsonNode value = isGentle || chance.nextBoolean() ? schema.value(at.schema(), chance, names) : replaced(at);
        for (Place each : places) {
            if (each.owner() != root && each.owner().isObject() && each.key().equals(at.key())) {
                each.set(value.deepCopy());
            }
        }
    }

    private void exchanged(Place at) {
        List<Place> same = places.stream()
                .filter(each -> each.key().equals(at.key()) && each.value() != null)
                .toList();
        if (same.isEmpty() || at.value() == null) {
            return;
        }
        Place other = same.get(chance.nextInt(same.size()));
        JsonNode value = at.value().deepCopy();
        at.set(other.value().deepCopy());
        other.set(value);
    }

    private JsonNode nested() {
        int depth = new int[] {3, 60, 65, 200, 1000}[chance.nextInt(5)];
        boolean isList = chance.nextBoolean();
        return new POJONode((isList ? "[" : "{\"a\":").repeat(depth) + "1" + (isList ? "]" : "}").repeat(depth));
    }

    private void twice(Place at) {
        if (at.owner() instanceof ObjectNode object && at.value() != null) {
            object.set(at.key() + JsonText.AGAIN, replaced(at));
        }
    }

    private void misspelt(Place at) {
        if (at.owner() instanceof ObjectNode object && at.value() != null) {
            JsonNode value = object.remove(at.key());
            object.set(chance.nextBoolean() ? HostileTexts.any(chance, names) : at.key() + "s", value);
        }
    }
}
