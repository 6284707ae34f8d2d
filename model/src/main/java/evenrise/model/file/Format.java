package evenrise.model.file;

import java.util.Locale;
import java.util.regex.Pattern;

/** How a file is written down. */
public enum Format {
    JSON,
    YAML;

    private static final Pattern BEGINS_LIKE_YAML = Pattern.compile("%YAML.*|---.*|[\\w\"'-]++\\s*+:.*");
    private static final int LOOK_AT = 4096;

    /** YAML for {@code .yaml} and {@code .yml}, else JSON. */
    public static Format ofName(String fileName) {
        return isYamlName(fileName) ? YAML : JSON;
    }

    /** By the name where it says so, else by how the content begins. */
    static Format of(String fileName, String content) {
        if (isYamlName(fileName)) {
            return YAML;
        }
        if (fileName.toLowerCase(Locale.ROOT).endsWith(".json")) {
            return JSON;
        }
        // The first line with anything but white space and remarks, in what stands at the beginning.
        String first = content.substring(0, Math.min(LOOK_AT, content.length()))
                .lines()
                .map(String::strip)
                .filter(line -> !line.isEmpty() && !line.startsWith("#"))
                .findFirst()
                .orElse("");
        boolean quotedKey = first.startsWith("\"");
        return !quotedKey && BEGINS_LIKE_YAML.matcher(first).matches() ? YAML : JSON;
    }

    private static boolean isYamlName(String fileName) {
        String name = fileName.toLowerCase(Locale.ROOT);
        return name.endsWith(".yaml") || name.endsWith(".yml");
    }
}
