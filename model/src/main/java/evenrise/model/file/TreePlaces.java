package evenrise.model.file;

import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** The values of a tree by their pointers, and where those were written that came to loads from defaults. */
final class TreePlaces {
    private final Node root;
    private final Map<Node, String> origins;
    private final Map<String, Optional<Node>> found = new HashMap<>();

    /** @param origins pointers to where values were written that stand elsewhere in the tree */
    TreePlaces(Node root, Map<Node, String> origins) {
        this.root = root;
        this.origins = origins;
    }

    /** Where what stands under the pointer was written: in the defaults, where a load took it from there. */
    String origin(String pointer) {
        if (origins.isEmpty() || node(pointer).isEmpty()) {
            return pointer;
        }
        for (String at = pointer; !at.isEmpty(); at = Pointers.parent(at)) {
            String origin = origins.get(node(at).orElseThrow());
            if (origin != null) {
                return origin + pointer.substring(at.length());
            }
        }
        return pointer;
    }

    /** What stands under the pointer, or what it would be a part of. */
    Node nearest(String pointer) {
        for (String at = pointer; !at.isEmpty(); at = Pointers.parent(at)) {
            Optional<Node> node = node(at);
            if (node.isPresent()) {
                return node.get();
            }
        }
        return root;
    }

    /** What stands under the pointer; empty where nothing does. */
    Optional<Node> node(String pointer) {
        if (pointer.isEmpty()) {
            return Optional.of(root);
        }
        Optional<Node> known = found.get(pointer);
        if (known == null) {
            known = node(Pointers.parent(pointer)).flatMap(parent -> child(parent, Pointers.last(pointer)));
            found.put(pointer, known);
        }
        return known;
    }

    private static Optional<Node> child(Node parent, String key) {
        if (parent instanceof Node.Obj object) {
            return Optional.ofNullable(object.members().get(key)).map(Node.Member::value);
        }
        if (parent instanceof Node.Arr array && key.matches("[0-9]{1,9}")) {
            int index = Integer.parseInt(key);
            return index < array.entries().size() ? Optional.of(array.entries().get(index)) : Optional.empty();
        }
        return Optional.empty();
    }
}
