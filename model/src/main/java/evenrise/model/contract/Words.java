package evenrise.model.contract;

import java.util.Locale;
import java.util.Map;
import java.util.Optional;

/** Translates a Java name to the spelling of the files: {@code runningAmps} is {@code running_a}. */
public final class Words {
    private static final Map<String, String> UNIT_SYMBOLS = Map.ofEntries(
            Map.entry("amps", "a"),
            Map.entry("volts", "v"),
            Map.entry("seconds", "s"),
            Map.entry("minutes", "min"),
            Map.entry("millis", "ms"),
            Map.entry("percent", "pct"),
            Map.entry("metres", "m"),
            Map.entry("hertz", "hz"),
            Map.entry("ohms", "ohm"),
            Map.entry("watts", "w"),
            Map.entry("ratio", "ratio"),
            Map.entry("celsius", "c"),
            Map.entry("degrees", "deg"),
            Map.entry("kva", "kva"));

    private Words() {}

    /** The key of a record component: words joined by {@code _}, a unit at the end by its symbol. */
    public static String key(String componentName) {
        String snake = componentName
                .replaceAll("([a-z0-9])([A-Z])", "$1_$2")
                .replaceAll("([A-Za-z])([0-9])", "$1$2")
                .toLowerCase(Locale.ROOT);
        int last = snake.lastIndexOf('_');
        String unit = UNIT_SYMBOLS.get(snake.substring(last + 1));
        return last < 0 || unit == null ? snake : snake.substring(0, last + 1) + unit;
    }

    /** The symbol that ends the key of a record component, {@code kva}; empty where it ends in no unit. */
    public static Optional<String> unit(String componentName) {
        String last = componentName.replaceFirst(".*(?=[A-Z])", "").toLowerCase(Locale.ROOT);
        return componentName.equals(last) ? Optional.empty() : Optional.ofNullable(UNIT_SYMBOLS.get(last));
    }

    /** The word of an enum constant: lower case, {@code -} for {@code _}; a single letter stays as it is. */
    public static String word(Enum<?> constant) {
        String name = constant.name();
        return name.length() == 1 ? name : name.toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
