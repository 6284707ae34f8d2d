package evenrise.solver.hardship;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.POJONode;
import com.fasterxml.jackson.databind.node.TextNode;
import java.util.ArrayList;
import java.util.List;

/** Writes a tree as JSON, also one that no writer would write: keys twice, numbers that are none. */
final class JsonText {
    /** At the end of a key: it is written without this, so that it stands there twice. */
    static final String AGAIN = "\u0001again";

    private JsonText() {}

    static String of(JsonNode node) {
        StringBuilder out = new StringBuilder();
        write(node, out);
        return out.toString();
    }

    private static void write(JsonNode node, StringBuilder out) {
        if (node instanceof POJONode raw) {
            out.append(raw.getPojo());
        } else if (node.isObject()) {
            List<String> members = new ArrayList<>();
            node.properties().forEach(each -> {
                StringBuilder member = new StringBuilder();
                quoted(each.getKey().replace(AGAIN, ""), member);
                member.append(": ");
                write(each.getValue(), member);
                members.add(member.toString());
            });
            out.append('{').append(String.join(",\n", members)).append('}');
        } else if (node.isArray()) {
            out.append('[');
            for (int i = 0; i < node.size(); i++) {
                out.append(i == 0 ? "" : ",\n");
                write(node.get(i), out);
            }
            out.append(']');
        } else if (node.isTextual()) {
            quoted(node.asText(), out);
        } else {
            out.append(node);
        }
    }

    private static void quoted(String text, StringBuilder out) {
        for (char c : new TextNode(text).toString().toCharArray()) {
            out.append(Character.isSurrogate(c) ? String.format("\\u%04x", (int) c) : String.valueOf(c));
        }
    }
}
