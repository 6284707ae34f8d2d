package evenrise.model.handout;

import java.lang.reflect.Constructor;
import java.lang.reflect.Field;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Modifier;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;

/**
 * Records from lists of their values, as {@link RecordLists} makes them. It asks for fields and constructors, not for
 * components, which a browser does not know.
 */
public final class RecordReader {
    private static final Map<Class<?>, List<Field>> FIELDS = new HashMap<>();

    private RecordReader() {}

    /** @param values of the record's fields, in their order; what ends early has nothing in the rest */
    static <R extends Record> R read(Class<R> type, List<?> values) {
        List<Field> fields = fields(type);
        Object[] given = new Object[fields.size()];
        for (int i = 0; i < given.length; i++) {
            given[i] = value(fields.get(i).getGenericType(), i < values.size() ? values.get(i) : null);
        }
        for (Constructor<?> each : type.getDeclaredConstructors()) {
            if (each.getParameterCount() == given.length) {
                return type.cast(made(each, given));
            }
        }
        throw new IllegalStateException(type.getSimpleName() + " cannot be made of its fields");
    }

    private static Object made(Constructor<?> constructor, Object[] given) {
        try {
            return constructor.newInstance(given);
        } catch (InvocationTargetException e) {
            throw new IllegalArgumentException(e.getCause());
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    private static List<Field> fields(Class<?> type) {
        return FIELDS.computeIfAbsent(type, any -> {
            List<Field> fields = new ArrayList<>();
            for (Field each : type.getDeclaredFields()) {
                if (!Modifier.isStatic(each.getModifiers())) {
                    fields.add(each);
                }
            }
            return fields;
        });
    }

    /** What stands in a field of such a type. */
    public static Object value(Type type, Object tree) {
        if (type instanceof ParameterizedType shape) {
            Type inner = shape.getActualTypeArguments()[0];
            if (shape.getRawType() == Optional.class) {
                return tree == null ? Optional.empty() : Optional.of(value(inner, tree));
            }
            List<Object> list = new ArrayList<>();
            if (tree != null) {
                ((List<?>) tree).forEach(each -> list.add(value(inner, each)));
            }
            return list;
        }
        return single((Class<?>) type, tree);
    }

    private static Object single(Class<?> type, Object tree) {
        if (type == OptionalDouble.class) {
            return tree == null ? OptionalDouble.empty() : OptionalDouble.of((Double) tree);
        }
        if (type == OptionalInt.class) {
            return tree == null ? OptionalInt.empty() : OptionalInt.of(((Double) tree).intValue());
        }
        if (type == OptionalLong.class) {
            return tree == null ? OptionalLong.empty() : OptionalLong.of(((Double) tree).longValue());
        }
        if (tree == null || type == double.class || type == Double.class || type == String.class) {
            return tree;
        }
        if (type == int.class || type == Integer.class) {
            return ((Double) tree).intValue();
        }
        if (type == long.class) {
            return ((Double) tree).longValue();
        }
        if (type.isEnum()) {
            return type.getEnumConstants()[((Double) tree).intValue()];
        }
        return Record.class.isAssignableFrom(type) ? read(type.asSubclass(Record.class), (List<?>) tree) : tree;
    }
}
