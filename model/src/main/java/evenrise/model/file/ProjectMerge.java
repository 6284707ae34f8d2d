package evenrise.model.file;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import com.fasterxml.jackson.databind.node.MissingNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Two changes of one project brought together, field by field, entries of lists by their ids. Where only one side says
 * something new, its word counts; where both do and differ, that of the other side, and it is told. What one side took out
 * and the other changed stays.
 */
public final class ProjectMerge {
    private final List<String> contradictions = new ArrayList<>();
    private final ProjectTree merged;

    private ProjectMerge(ObjectNode base, ObjectNode own, ObjectNode other) {
        this.merged = ProjectTree.ofRoot((ObjectNode) merged(base, own, other, ""));
    }

    /**
     * @param base what both began with
     * @param own what one made of it
     * @param other what the other made of it, whose word counts where both speak
     */
    public static ProjectMerge of(ProjectTree base, ProjectTree own, ProjectTree other) {
        return new ProjectMerge(base.root(), own.root(), other.root());
    }

    /** Both together; whether it makes sense, {@link ProjectTree#read} tells. */
    public ProjectTree tree() {
        return merged;
    }

    /** Where both said something new and not the same: keys and ids, joined by slashes. */
    public List<String> contradictions() {
        return List.copyOf(contradictions);
    }

    private JsonNode merged(JsonNode base, JsonNode own, JsonNode other, String place) {
        if (own.equals(other) || base.equals(own)) {
            return other;
        }
        if (base.equals(other)) {
            return own;
        }
        if (own.isObject() && other.isObject()) {
            return objects(base, (ObjectNode) own, (ObjectNode) other, place);
        }
        if (isById(own) && isById(other) && (base.isMissingNode() || isById(base))) {
            return lists(byId(base), byId(own), byId(other), place);
        }
        contradictions.add(place);
        return other.isMissingNode() ? own : other;
    }

    private JsonNode objects(JsonNode base, ObjectNode own, ObjectNode other, String place) {
        Set<String> keys = new LinkedHashSet<>();
        other.fieldNames().forEachRemaining(keys::add);
        own.fieldNames().forEachRemaining(keys::add);
        ObjectNode all = JsonNodeFactory.instance.objectNode();
        for (String key : keys) {
            JsonNode part = merged(base.path(key), own.path(key), other.path(key), below(place, key));
            if (!part.isMissingNode()) {
                all.set(key, part);
            }
        }
        return all;
    }

    private JsonNode lists(
            Map<String, JsonNode> base, Map<String, JsonNode> own, Map<String, JsonNode> other, String place) {
        Set<String> ids = new LinkedHashSet<>(other.keySet());
        ids.addAll(own.keySet());
        ArrayNode all = JsonNodeFactory.instance.arrayNode();
        for (String id : ids) {
            JsonNode entry = merged(at(base, id), at(own, id), at(other, id), below(place, id));
            if (!entry.isMissingNode()) {
                all.add(entry);
            }
        }
        return all;
    }

    private static String below(String place, String key) {
        return place.isEmpty() ? key : place + "/" + key;
    }

    private static JsonNode at(Map<String, JsonNode> entries, String id) {
        return entries.getOrDefault(id, MissingNode.getInstance());
    }

    private static boolean isById(JsonNode list) {
        if (!list.isArray()) {
            return false;
        }
        for (JsonNode entry : list) {
            if (!entry.path(FieldColumn.ID).isTextual()) {
                return false;
            }
        }
        return true;
    }

    private static Map<String, JsonNode> byId(JsonNode list) {
        Map<String, JsonNode> entries = new LinkedHashMap<>();
        list.forEach(entry -> entries.put(entry.path(FieldColumn.ID).asText(), entry));
        return entries;
    }
}
