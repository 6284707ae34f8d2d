package evenrise.model.file;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/**
 * The entries of one of a project's lists, or of an object of which there is one, by the names that rows have: ids where
 * entries have some, else numbers from #1; of a list within another's entries, the id of that one before the number.
 */
final class TreeEntries {
    private static final String NUMBER = "#";
    private static final String OF_ENTRY = " " + NUMBER;

    /** @param pointer where it stands in the file (RFC 6901) */
    record Entry(String pointer, JsonNode node) {}

    private final ObjectNode root;
    private final String list;
    private final Map<String, Entry> byName = new LinkedHashMap<>();

    TreeEntries(ObjectNode root, String list) {
        this.root = root;
        this.list = list;
        gather();
    }

    private void gather() {
        byName.clear();
        if (list.equals(FieldColumn.WHOLE)) {
            byName.put(list, new Entry("", root));
            return;
        }
        List<String> steps = List.of(list.split("\\."));
        JsonNode first = root.path(steps.get(0));
        if (steps.size() > 1 && first.isArray()) {
            for (int i = 0; i < first.size(); i++) {
                String owner = first.get(i).path(FieldColumn.ID).asText();
                add(first.get(i).path(steps.get(1)), "/" + steps.get(0) + "/" + i + "/" + steps.get(1), owner + " ");
            }
            return;
        }
        JsonNode node = root;
        for (String step : steps) {
            node = node.path(step);
        }
        String pointer = "/" + String.join("/", steps);
        if (FieldColumn.isSingle(list)) {
            byName.put(list, new Entry(pointer, node));
        } else {
            add(node, pointer, "");
        }
    }

    private void add(JsonNode entries, String pointer, String before) {
        boolean isNamed = FieldColumn.isNamed(list);
        for (int i = 0; i < entries.size(); i++) {
            String name = isNamed ? entries.get(i).path(FieldColumn.ID).asText() : before + NUMBER + (i + 1);
            byName.put(name, new Entry(pointer + "/" + i, entries.get(i)));
        }
    }

    List<String> names() {
        return List.copyOf(byName.keySet());
    }

    JsonNode get(String name) {
        return known(name).node();
    }

    /** The same, made where nothing is stated of it yet. */
    ObjectNode made(String name) {
        JsonNode node = known(name).node();
        if (node instanceof ObjectNode object) {
            return object;
        }
        ObjectNode owner = root;
        for (String step : list.split("\\.")) {
            owner = owner.path(step) instanceof ObjectNode inner ? inner : owner.putObject(step);
        }
        gather();
        return owner;
    }

    private Entry known(String name) {
        return Optional.ofNullable(byName.get(name))
                .orElseThrow(() -> new IllegalArgumentException("no " + name + " among " + list));
    }

    /** Adds an entry at the end; until the next look at the list it is known by the name it was given here, too. */
    void add(String name) {
        List<String> steps = List.of(list.split("\\."));
        JsonNode first = root.path(steps.get(0));
        ArrayNode all;
        if (steps.size() > 1 && first.isArray()) {
            all = within((ArrayNode) first, name.replaceFirst(OF_ENTRY + ".*", ""), steps.get(1));
        } else {
            ObjectNode owner = root;
            for (String step : steps.subList(0, steps.size() - 1)) {
                owner = owner.path(step) instanceof ObjectNode inner ? inner : owner.putObject(step);
            }
            all = list(owner, steps.get(steps.size() - 1));
        }
        ObjectNode added = all.addObject();
        if (FieldColumn.isNamed(list)) {
            added.put(FieldColumn.ID, name);
        }
        gather();
        byName.entrySet().stream()
                .filter(each -> each.getValue().node() == added)
                .findFirst()
                .ifPresent(each -> byName.put(name, each.getValue()));
    }

    /** @throws IllegalArgumentException where there is no such entry to add to */
    private static ArrayNode within(ArrayNode owners, String owner, String key) {
        for (JsonNode each : owners) {
            if (each.path(FieldColumn.ID).asText().equals(owner)) {
                return list((ObjectNode) each, key);
            }
        }
        throw new IllegalArgumentException("the name of an entry that it belongs to");
    }

    private static ArrayNode list(ObjectNode owner, String key) {
        return owner.path(key) instanceof ArrayNode known ? known : owner.putArray(key);
    }

    void remove(String name) {
        Entry entry = byName.get(name);
        if (entry == null || entry.pointer().isEmpty()) {
            return;
        }
        int last = entry.pointer().lastIndexOf('/');
        JsonNode owner = root.at(entry.pointer().substring(0, last));
        if (owner instanceof ArrayNode all) {
            for (int i = all.size() - 1; i >= 0; i--) {
                if (all.get(i) == entry.node()) {
                    all.remove(i);
                }
            }
        } else if (owner instanceof ObjectNode object) {
            object.remove(entry.pointer().substring(last + 1));
            gather();
            return;
        }
        // Numbers of what is left stay as they are until the list is looked at anew.
        byName.remove(name);
    }

    /** The row that something in the file is in, and the keys from there. */
    Optional<Map.Entry<String, List<String>>> place(String pointer) {
        return byName.entrySet().stream()
                .filter(each -> pointer.startsWith(each.getValue().pointer() + "/"))
                .map(each -> Map.entry(
                        each.getKey(),
                        List.of(pointer.substring(each.getValue().pointer().length() + 1)
                                .split("/"))))
                // What was added just now goes by the name that it was given.
                .reduce((known, named) -> named);
    }
}
