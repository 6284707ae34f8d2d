package evenrise.model.contract;

import java.lang.reflect.Method;
import java.lang.reflect.RecordComponent;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Stream;

/** The values that stand in for absent fields, by {@link Field#byDefault}; a required figure begins as no number. */
public final class Defaults {
    private static final Map<Class<? extends Record>, List<Setting>> KNOWN = new ConcurrentHashMap<>();

    private record Setting(Method setter, Object value) {}

    private Defaults() {}

    /** Gives a builder without any value the defaults of its record. */
    public static <B> B into(B builder, Class<? extends Record> type) {
        for (Setting setting : KNOWN.computeIfAbsent(type, any -> settings(builder.getClass(), type))) {
            try {
                setting.setter().invoke(builder, setting.value());
            } catch (ReflectiveOperationException e) {
                throw new IllegalStateException(e);
            }
        }
        return builder;
    }

    /** What stands in for absent fields of a record, by their names; only what has a default of its own. */
    public static Map<String, Object> of(Class<? extends Record> type) {
        Map<String, Object> values = new LinkedHashMap<>();
        for (RecordComponent component : type.getRecordComponents()) {
            Field field = component.getAnnotation(Field.class);
            if (field != null && !field.byDefault().isEmpty()) {
                values.put(component.getName(), value(component));
            }
        }
        return values;
    }

    private static List<Setting> settings(Class<?> builder, Class<? extends Record> type) {
        return Stream.of(type.getRecordComponents())
                .filter(component -> component.isAnnotationPresent(Field.class)
                        && (!component.getAnnotation(Field.class).byDefault().isEmpty()
                                || component.getType() == double.class))
                .map(component -> new Setting(setter(builder, component), value(component)))
                .toList();
    }

    private static Method setter(Class<?> builder, RecordComponent component) {
        return Stream.of(builder.getMethods())
                .filter(method -> method.getName().equals(component.getName())
                        && method.getParameterCount() == 1
                        && method.getParameterTypes()[0].isAssignableFrom(component.getType()))
                .findAny()
                .orElseThrow(() -> new IllegalStateException(builder + " sets no " + component.getName()));
    }

    private static Object value(RecordComponent component) {
        String json = component.getAnnotation(Field.class).byDefault();
        Class<?> type = component.getType();
        if (json.isEmpty()) {
            return Double.NaN; // so that a record refuses a figure that nobody gave, where 0 would pass
        }
        if (type == List.class && json.equals("[]")) {
            return List.of();
        }
        if (type == boolean.class) {
            return Boolean.valueOf(json);
        }
        if (type == int.class) {
            return Integer.valueOf(json);
        }
        if (type == double.class || type == Double.class) {
            return Double.valueOf(json);
        }
        String text = json.substring(1, json.length() - 1);
        if (type == String.class) {
            return text;
        }
        return Stream.of(type.getEnumConstants())
                .filter(constant -> Words.word((Enum<?>) constant).equals(text))
                .findAny()
                .orElseThrow(() -> new IllegalStateException(component + " takes no " + json));
    }
}
