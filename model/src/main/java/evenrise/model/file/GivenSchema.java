package evenrise.model.file;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenrise.model.project.GivenFields;
import java.util.ArrayList;
import java.util.List;

/**
 * What defaults are in the project's schema: some fields of a load, none required. What they may give a load need not
 * state; whether it then has all that it must, only the reader can tell.
 */
final class GivenSchema {
    private static final String REF = "#/$defs/";
    /** Where what may be given is defined. */
    static final String PLACE = REF + "GivenFields";

    private static final String PARTLY = "-in-part";

    private final ObjectNode definitions;

    private GivenSchema(ObjectNode definitions) {
        this.definitions = definitions;
    }

    static void into(ObjectNode schema) {
        new GivenSchema((ObjectNode) schema.get("$defs")).write();
    }

    private void write() {
        ObjectNode load = (ObjectNode) definitions.get("Load");
        ObjectNode properties = (ObjectNode) load.get("properties");
        List<String> given = GivenBinder.keys();
        given.forEach(key -> relax(properties.get(key)));
        ArrayNode required = (ArrayNode) load.get("required");
        for (int i = required.size() - 1; i >= 0; i--) {
            if (given.contains(required.get(i).asText())) {
                required.remove(i);
            }
        }
        ObjectNode gives = load.deepCopy();
        gives.remove("required");
        ObjectNode kept = (ObjectNode) gives.get("properties");
        List<String> own = new ArrayList<>();
        kept.fieldNames().forEachRemaining(own::add);
        own.removeIf(GivenFields::mayGive);
        kept.remove(own);
        kept.forEach(each -> ((ObjectNode) each).remove("default"));
        // Beside a reference, it would forbid what the reference allows.
        ((ObjectNode) definitions.get("LoadDefault").get("properties").get("gives")).remove("additionalProperties");
        definitions.set(PLACE.substring(REF.length()), gives);
    }

    /** Makes references lead to definitions that require nothing. */
    private void relax(JsonNode node) {
        if (node instanceof ObjectNode object && object.path("$ref").asText().startsWith(REF)) {
            String name = object.get("$ref").asText().substring(REF.length());
            if (asksForSomething(definitions.get(name))) {
                object.put("$ref", REF + name + PARTLY);
                if (!definitions.has(name + PARTLY)) {
                    JsonNode copy = definitions.get(name).deepCopy();
                    definitions.set(name + PARTLY, copy);
                    relax(copy);
                }
            }
        } else if (node instanceof ObjectNode object && object.has("properties")) {
            object.remove("required");
        }
        node.forEach(this::relax);
    }

    private boolean asksForSomething(JsonNode node) {
        if (node.path("$ref").asText().startsWith(REF)) {
            return asksForSomething(definitions.get(node.get("$ref").asText().substring(REF.length())));
        }
        boolean asks = node.has("required");
        for (JsonNode inner : node) {
            asks |= asksForSomething(inner);
        }
        return asks;
    }
}
