package evenrise.model.file;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ArrayNode;
import com.fasterxml.jackson.databind.node.DoubleNode;
import com.fasterxml.jackson.databind.node.LongNode;
import com.fasterxml.jackson.databind.node.ObjectNode;
import com.fasterxml.jackson.databind.node.TextNode;
import evenrise.model.check.Shown;
import evenrise.model.portfolio.ValueChange;
import evenrise.model.project.Project;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** The file of a project in which some values are others. */
public final class ChangedProject {
    private static final ObjectMapper MAPPER = new ObjectMapper();
    private static final String EVERY = "*";
    /** Whole numbers stay whole, so that fields that count take them. */
    private static final double MOST_WHOLE = 1L << 53;

    private final ValueChange change;
    private final String[] keys;
    private int changed;
    private String why = "there is no entry";

    /**
     * @param bytes JSON; whether it is a sound project only its reader says
     * @param misses changes that have no place in the project, a sentence each
     */
    public record Changed(byte[] bytes, List<String> misses) {}

    private ChangedProject(ValueChange change) {
        this.change = change;
        this.keys = Arrays.stream(change.at().substring(1).split("/", -1))
                .map(key -> key.replace("~1", "/").replace("~0", "~"))
                .toArray(String[]::new);
    }

    /** @param changes one after another; where one means every entry of a list, those without the value stay as they are */
    public static Changed of(Project project, List<ValueChange> changes) {
        try {
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            ProjectFile.write(project, out, Format.JSON);
            JsonNode root = MAPPER.readTree(out.toByteArray());
            List<String> misses = new ArrayList<>();
            for (ValueChange change : changes) {
                new ChangedProject(change).in(root).ifPresent(misses::add);
            }
            byte[] bytes = MAPPER.writeValueAsString(root).getBytes(StandardCharsets.UTF_8);
            return new Changed(bytes, List.copyOf(misses));
        } catch (IOException e) {
            throw new IllegalStateException("memory takes what is written", e);
        }
    }

    /** @return why nothing was changed */
    private Optional<String> in(JsonNode root) {
        change(root, 0);
        return changed > 0
                ? Optional.empty()
                : Optional.of("nothing to change at " + Shown.quoted(change.at()) + ": " + why + ".");
    }

    private void change(JsonNode owner, int at) {
        String key = keys[at];
        if (owner instanceof ArrayNode list && key.equals(EVERY)) {
            for (int i = 0; i < list.size(); i++) {
                changeEntry(list, i, at);
            }
        } else if (owner instanceof ArrayNode list && index(list, key).isPresent()) {
            changeEntry(list, index(list, key).get(), at);
        } else if (owner instanceof ObjectNode object && at == keys.length - 1) {
            value(object.get(key)).ifPresent(value -> object.set(key, value));
        } else if (owner instanceof ObjectNode object && object.has(key)) {
            change(object.get(key), at + 1);
        } else {
            why = "there is no " + Shown.quoted(key);
        }
    }

    private void changeEntry(ArrayNode list, int i, int at) {
        if (at == keys.length - 1) {
            value(list.get(i)).ifPresent(value -> list.set(i, value));
        } else {
            change(list.get(i), at + 1);
        }
    }

    private static Optional<Integer> index(ArrayNode list, String key) {
        for (int i = 0; i < list.size(); i++) {
            if (list.get(i).path("id").asText("").equals(key)) {
                return Optional.of(i);
            }
        }
        return key.matches("[0-9]{1,6}") && Integer.parseInt(key) < list.size()
                ? Optional.of(Integer.parseInt(key))
                : Optional.empty();
    }

    private Optional<JsonNode> value(JsonNode before) {
        boolean multiplies = change.factor().isPresent();
        if (multiplies && (before == null || !before.isNumber())) {
            why = "there is no number to multiply";
            return Optional.empty();
        }
        changed++;
        if (multiplies) {
            return Optional.of(number(before.doubleValue() * change.factor().getAsDouble()));
        }
        return Optional.of(change.text()
                .<JsonNode>map(TextNode::valueOf)
                .orElseGet(() -> number(change.number().orElseThrow())));
    }

    private static JsonNode number(double value) {
        boolean isWhole = value == Math.rint(value) && Math.abs(value) <= MOST_WHOLE;
        return isWhole ? LongNode.valueOf((long) value) : DoubleNode.valueOf(value);
    }
}
