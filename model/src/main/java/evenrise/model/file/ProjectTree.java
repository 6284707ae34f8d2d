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

    /** Keys that name panels and nodes, wherever they stand. */
    private static final List<String> MEAN_POINTS =
            List.of("fed_from", "alternate_fed_from", "fed_by", "panel", "panels", "reaches");

    private final ObjectNode root;
    private final Map<String, TreeEntries> byList = new HashMap<>();

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

    static ProjectTree ofRoot(ObjectNode root) {
        return new ProjectTree(root);
    }

    ObjectNode root() {
        return root;
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
        return entries(list).names();
    }

    /**
     * A text, a number as Double, a Boolean, or a list of texts or numbers; empty where nothing is stated, or where it is
     * an empty list that counts for nothing, since the project has no defaults that it goes before.
     */
    public Optional<Object> value(String list, String id, FieldColumn column) {
        if (column.path().equals(FieldColumn.ID)) {
            return Optional.of(id);
        }
        JsonNode node = entries(list).get(id);
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
        for (String id : FieldColumn.LISTS.contains(list) ? ids(list) : List.<String>of()) {
            entries(list)
                    .get(id)
                    .properties()
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
        entries(list).get(id).properties().forEach(field -> {
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
        if (value.isEmpty() && entries(list).get(id).isMissingNode()) {
            return;
        }
        ObjectNode owner = entries(list).made(id);
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
        if (owners.get(0).isEmpty() && FieldColumn.isSingle(list)) {
            entries(list).remove(id);
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

    /**
     * Adds an entry at the end.
     *
     * @param id its own; of a list without ids any word, which names it until the list is looked at anew; of a list within
     *     the entries of another the id of that entry
     * @throws IllegalArgumentException that says what is expected
     */
    public void add(String list, String id) {
        entries(list).add(id);
    }

    /** Gives a panel or node another id, wherever it is meant. */
    public void renamePoint(String id, String next) {
        for (String list : List.of("panels", "nodes")) {
            if (ids(list).contains(id)) {
                ((ObjectNode) entries(list).get(id)).put(FieldColumn.ID, next);
            }
        }
        byList.clear();
        rename(root, id, next);
    }

    private static void rename(JsonNode within, String id, String next) {
        within.forEach(each -> rename(each, id, next));
        if (within instanceof ObjectNode object) {
            for (String key : MEAN_POINTS) {
                JsonNode meant = object.path(key);
                if (meant.isTextual() && meant.textValue().equals(id)) {
                    object.put(key, next);
                } else if (meant instanceof ArrayNode all) {
                    for (int i = 0; i < all.size(); i++) {
                        if (all.get(i).isTextual() && all.get(i).textValue().equals(id)) {
                            all.set(i, next);
                        }
                    }
                }
            }
        }
    }

    public void remove(String list, String id) {
        entries(list).remove(id);
    }

    /** Which entry of a list something in the file is in, with its keys from there; empty where it is in none. */
    public Optional<Map.Entry<String, List<String>>> place(String list, String pointer) {
        return entries(list).place(pointer);
    }

    private TreeEntries entries(String list) {
        return byList.computeIfAbsent(list, any -> new TreeEntries(root, list));
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
