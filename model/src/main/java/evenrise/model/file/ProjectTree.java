package evenrise.model.file;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import evenrise.model.project.Project;
import java.io.ByteArrayOutputStream;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * A project as a file of it says it, to be looked at and changed field by field. What no field is asked for stays as it
 * is; whether the whole still makes sense, {@link #read} tells.
 */
public final class ProjectTree {
    private static final ObjectMapper MAPPER = new ObjectMapper();

    private final ObjectNode root;
    private final Map<String, Map<String, ObjectNode>> byId = new HashMap<>();

    private ProjectTree(ObjectNode root) {
        this.root = root;
    }

    /** What would be written of the project and its notes. */
    public static ProjectTree of(Project project, SideNotes notes) {
        ByteArrayOutputStream text = new ByteArrayOutputStream();
        try {
            ProjectFile.write(project, notes, text, Format.JSON);
            return new ProjectTree((ObjectNode) MAPPER.readTree(text.toString(StandardCharsets.UTF_8)));
        } catch (WriteFailed | JsonProcessingException e) {
            throw new IllegalStateException("memory takes what is written, and it is JSON", e);
        }
    }

    /** The same once more, to be changed by itself. */
    public ProjectTree copy() {
        return new ProjectTree(root.deepCopy());
    }

    /** Reads it as the file that it would be. */
    public Reading<Project> read(String name) {
        return ProjectFile.read(root.toString().getBytes(StandardCharsets.UTF_8), name);
    }

    /** Of a list's entries, in their order. */
    public List<String> ids(String list) {
        List<String> ids = new ArrayList<>();
        root.path(list).forEach(entry -> ids.add(entry.path(FieldColumn.ID).asText()));
        return ids;
    }

    /**
     * A text, a number as Double, a Boolean, or a list of texts or numbers; empty where nothing is stated, or where it is
     * an empty list that counts for nothing, since the project has no defaults that it goes before.
     */
    public Optional<Object> value(String list, String id, FieldColumn column) {
        JsonNode node = entry(list, id);
        for (String key : column.keys()) {
            node = node.path(key);
        }
        boolean countsForNothing = node.isArray()
                && node.isEmpty()
                && column.byDefault().equals("[]")
                && root.path("defaults").isEmpty();
        return countsForNothing ? Optional.empty() : value(node);
    }

    /** Keys of somebody's own that some entry has, each with one value wherever it stands; by key. */
    public List<FieldColumn> ownColumns(String list) {
        Map<String, Boolean> isPlain = new LinkedHashMap<>();
        for (JsonNode entry : root.path(list)) {
            entry.properties()
                    .forEach(field -> FieldColumn.own(field.getKey())
                            .ifPresent(own -> isPlain.merge(
                                    field.getKey(),
                                    field.getValue().isValueNode()
                                            && !field.getValue().isNull(),
                                    Boolean::logicalAnd)));
        }
        return isPlain.keySet().stream()
                .filter(isPlain::get)
                .sorted()
                .flatMap(key -> FieldColumn.own(key).stream())
                .toList();
    }

    /** What an entry states that none of these columns shows, by key. */
    public List<String> beside(String list, String id, List<FieldColumn> columns) {
        List<String> shown = columns.stream().map(FieldColumn::path).toList();
        List<String> beside = new ArrayList<>();
        entry(list, id).properties().forEach(field -> {
            boolean isShown = shown.stream()
                    .anyMatch(path -> path.equals(field.getKey()) || path.startsWith(field.getKey() + "."));
            if (!isShown) {
                beside.add(field.getKey());
            }
        });
        return beside;
    }

    /** States a value as {@link #value} gives it, or nothing. */
    public void state(String list, String id, FieldColumn column, Optional<Object> value) {
        List<String> keys = column.keys();
        ObjectNode owner = entry(list, id);
        List<ObjectNode> owners = new ArrayList<>(List.of(owner));
        for (String key : keys.subList(0, keys.size() - 1)) {
            owner = owner.path(key) instanceof ObjectNode inner ? inner : owner.putObject(key);
            owners.add(owner);
        }
        String last = keys.get(keys.size() - 1);
        if (value.isPresent()) {
            owner.set(last, node(value.get()));
            return;
        }
        owner.remove(last);
        for (int i = owners.size() - 1; i > 0 && owners.get(i).isEmpty(); i--) {
            owners.get(i - 1).remove(keys.get(i - 1));
        }
    }

    /** A whole number is written as one. */
    private static JsonNode node(Object value) {
        if (value instanceof List<?> list) {
            ArrayNode entries = MAPPER.createArrayNode();
            list.forEach(each -> entries.add(node(each)));
            return entries;
        }
        boolean isWhole = value instanceof Double number && number == Math.rint(number) && Math.abs(number) < 1e15;
        return MAPPER.valueToTree(isWhole ? (Object) ((Double) value).longValue() : value);
    }

    /** Adds an entry at the end. */
    public void add(String list, String id) {
        byId.remove(list);
        (root.path(list) instanceof ArrayNode all ? all : root.putArray(list))
                .addObject()
                .put(FieldColumn.ID, id);
    }

    public void remove(String list, String id) {
        byId.remove(list);
        ArrayNode entries = (ArrayNode) root.get(list);
        for (int i = entries.size() - 1; i >= 0; i--) {
            if (entries.get(i).path(FieldColumn.ID).asText().equals(id)) {
                entries.remove(i);
            }
        }
    }

    private ObjectNode entry(String list, String id) {
        Map<String, ObjectNode> entries = byId.computeIfAbsent(list, any -> {
            Map<String, ObjectNode> found = new HashMap<>();
            root.path(list)
                    .forEach(entry -> found.put(entry.path(FieldColumn.ID).asText(), (ObjectNode) entry));
            return found;
        });
        return Optional.ofNullable(entries.get(id))
                .orElseThrow(() -> new IllegalArgumentException("no " + id + " among " + list));
    }

    private static Optional<Object> value(JsonNode node) {
        if (node.isTextual()) {
            return Optional.of(node.textValue());
        }
        if (node.isNumber()) {
            return Optional.of(node.doubleValue());
        }
        if (node.isBoolean()) {
            return Optional.of(node.booleanValue());
        }
        return node.isArray()
                ? Optional.of(Stream.iterate(0, i -> i < node.size(), i -> i + 1)
                        .map(i -> value(node.get(i)).orElseThrow())
                        .toList())
                : Optional.empty();
    }
}
