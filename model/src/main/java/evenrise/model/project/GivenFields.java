package evenrise.model.project;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;

/**
 * Some fields of a load, by their keys: what a default gives. Nested objects hold some of their fields, too, and none is
 * required. Not given is what a load is: its id, name and kind, where it belongs, what it is tied to, and what is known of
 * it alone.
 */
public final class GivenFields {
    /** Gives nothing. */
    public static final GivenFields NONE = new GivenFields(Map.of());

    private static final Set<String> A_LOAD_S_OWN = Set.of(
            "id",
            "name",
            "role",
            "kind",
            "rack",
            "system",
            "shutdown_group",
            "comes_after",
            "comes_with",
            "apart_from",
            "same_phase_as",
            "fixed",
            "guessed",
            "measured",
            "running_a");

    private final Map<String, Object> byKey;

    private GivenFields(Map<String, Object> byKey) {
        this.byKey = Collections.unmodifiableMap(new LinkedHashMap<>(byKey));
    }

    /**
     * @param byKey texts, numbers, booleans, words as their constants, lists of texts, and maps of the same for nested
     *     objects
     */
    public static GivenFields of(Map<String, Object> byKey) {
        return new GivenFields(byKey);
    }

    /** Whether a default may give this field of a load. */
    public static boolean mayGive(String key) {
        return !A_LOAD_S_OWN.contains(key);
    }

    /** In the order of the file. */
    public Map<String, Object> byKey() {
        return byKey;
    }

    /** What is given to a field that holds a list of texts; empty where nothing is. */
    public List<String> texts(String key) {
        return byKey.get(key) instanceof List<?> list
                ? list.stream().map(String::valueOf).toList()
                : List.of();
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof GivenFields fields && byKey.equals(fields.byKey);
    }

    @Override
    public int hashCode() {
        return Objects.hash(byKey);
    }

    @Override
    public String toString() {
        return byKey.toString();
    }
}
