package evenrise.model.file;

import evenrise.model.check.Shown;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** One entry of a project's defaults as the file has it, and which loads it is for. */
final class MeantLoads {
    private static final List<String> OF_ITSELF = List.of("role", "room", "rack", "kind");
    private static final List<String> OF_ITS_LEAD_TOO = List.of("group", "system");

    private final int index;
    private final Optional<Node.Obj> entry;
    private final Map<String, Node.Obj> loads = new HashMap<>();

    MeantLoads(int index, Node entry, Node.Arr loads) {
        this.index = index;
        this.entry = entry instanceof Node.Obj object ? Optional.of(object) : Optional.empty();
        for (Node load : loads.entries()) {
            if (load instanceof Node.Obj object) {
                text(object, "id").ifPresent(id -> this.loads.putIfAbsent(id, object));
            }
        }
    }

    int index() {
        return index;
    }

    /** Where what it gives stands. */
    String pointer() {
        return Pointers.child(Pointers.child("/defaults", index), "gives");
    }

    Optional<Node.Obj> gives() {
        return entry.map(it -> LoadDefaults.member(it, "gives"))
                .filter(Node.Obj.class::isInstance)
                .map(Node.Obj.class::cast);
    }

    /** Whether everything that is stated fits the load by what the load itself states. */
    boolean fits(Node.Obj load) {
        Node.Obj meant = entry.orElseThrow();
        Node names = LoadDefaults.member(meant, "loads");
        if (isStated(names) && !isNamed(names, text(load, "id"))) {
            return false;
        }
        for (String key : OF_ITSELF) {
            if (isStated(LoadDefaults.member(meant, key)) && !text(meant, key).equals(own(load, key))) {
                return false;
            }
        }
        for (String key : OF_ITS_LEAD_TOO) {
            if (isStated(LoadDefaults.member(meant, key)) && !text(meant, key).equals(ownOrLeads(load, key))) {
                return false;
            }
        }
        return true;
    }

    /** Which loads it is for. */
    String words() {
        Node.Obj meant = entry.orElseThrow();
        List<String> words = new ArrayList<>();
        text(meant, "role").ifPresent(role -> words.add("role " + Shown.plain(role)));
        for (String key : List.of("kind", "room", "rack", "group", "system")) {
            text(meant, key).ifPresent(it -> words.add(key + " " + Shown.quoted(it)));
        }
        if (LoadDefaults.member(meant, "loads") instanceof Node.Arr names) {
            words.add(names.entries().size() + " loads by name");
        }
        return words.isEmpty() ? "all loads" : String.join(", ", words);
    }

    private static boolean isStated(Node node) {
        return node != null && !(node instanceof Node.Null);
    }

    private static boolean isNamed(Node names, Optional<String> id) {
        Set<String> all = new HashSet<>();
        if (names instanceof Node.Arr list) {
            list.entries().forEach(each -> {
                if (each instanceof Node.Text text) {
                    all.add(text.text());
                }
            });
        }
        return id.filter(all::contains).isPresent();
    }

    private static Optional<String> own(Node.Obj load, String key) {
        return key.equals("room")
                ? Optional.ofNullable(LoadDefaults.member(load, "equipment"))
                        .filter(Node.Obj.class::isInstance)
                        .flatMap(equipment -> text((Node.Obj) equipment, "room"))
                : text(load, key.equals("group") ? "shutdown_group" : key);
    }

    /** A load behind the contactor of another belongs to that one's group and system. */
    private Optional<String> ownOrLeads(Node.Obj load, String key) {
        return own(load, key).or(() -> text(load, "comes_with").map(loads::get).flatMap(lead -> own(lead, key)));
    }

    private static Optional<String> text(Node.Obj object, String key) {
        return LoadDefaults.member(object, key) instanceof Node.Text text ? Optional.of(text.text()) : Optional.empty();
    }
}
