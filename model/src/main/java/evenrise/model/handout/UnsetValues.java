package evenrise.model.handout;

import evenrise.model.contract.Defaults;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import java.lang.reflect.Field;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What stands in a record where nobody has set anything. Here {@link Defaults} takes it from the fields' annotations; a page
 * does not have those and is told.
 */
public final class UnsetValues {
    private static final Map<String, Map<?, ?>> TOLD = new HashMap<>();

    private UnsetValues() {}

    /** Of every record that a project and a plan are made of, by its simple name and its fields'. */
    static Map<String, Object> all() {
        Map<String, Object> all = new LinkedHashMap<>();
        collect(Project.class, all);
        collect(Plan.class, all);
        all.values().removeIf(values -> ((Map<?, ?>) values).isEmpty());
        return all;
    }

    private static void collect(Type type, Map<String, Object> all) {
        if (type instanceof ParameterizedType shape) {
            collect(shape.getActualTypeArguments()[0], all);
        } else if (type instanceof Class<?> known && known.isRecord() && !all.containsKey(known.getSimpleName())) {
            Map<String, Object> values = new LinkedHashMap<>();
            Defaults.of(known.asSubclass(Record.class))
                    .forEach((name, value) -> values.put(name, RecordLists.of(value)));
            all.put(known.getSimpleName(), values);
            for (RecordComponent each : known.getRecordComponents()) {
                collect(each.getGenericType(), all);
            }
        }
    }

    static void take(Map<?, ?> told) {
        told.forEach((type, values) -> TOLD.put(type.toString(), (Map<?, ?>) values));
    }

    /** Gives a builder without any value what was told of its record. */
    public static void into(Object builder, Class<?> type) {
        TOLD.getOrDefault(type.getSimpleName(), Map.of()).forEach((name, value) -> {
            try {
                Field field = builder.getClass().getDeclaredField(name.toString());
                field.setAccessible(true);
                field.set(builder, RecordReader.value(field.getGenericType(), value));
            } catch (ReflectiveOperationException e) {
                throw new IllegalStateException(e);
            }
        });
    }
}
