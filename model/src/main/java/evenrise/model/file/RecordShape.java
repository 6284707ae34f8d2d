package evenrise.model.file;

import evenrise.model.contract.BareList;
import evenrise.model.contract.Field;
import evenrise.model.contract.Words;
import java.lang.reflect.Constructor;
import java.lang.reflect.InvocationTargetException;
import java.lang.reflect.Method;
import java.lang.reflect.ParameterizedType;
import java.lang.reflect.RecordComponent;
import java.lang.reflect.Type;
import java.util.Arrays;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** What reflection knows of one record type: its keys in order, and what each takes. */
final class RecordShape {
    private static final Map<Class<?>, RecordShape> KNOWN = new ConcurrentHashMap<>();

    /**
     * One component.
     *
     * @param type as declared; {@code inner} without its Optional
     */
    record Part(String key, Field field, Type type, Type inner, Method accessor) {
        boolean isRequired() {
            return !field.optional() && field.byDefault().isEmpty();
        }
    }

    private final Map<String, Part> parts = new LinkedHashMap<>();
    private final Constructor<?> constructor;
    private final Optional<Part> bareList;
    private final Set<String> keys;

    private RecordShape(Class<?> type) {
        RecordComponent[] components = type.getRecordComponents();
        for (RecordComponent component : components) {
            String key = Words.key(component.getName());
            Type declared = component.getGenericType();
            Field field = component.getAnnotation(Field.class);
            parts.put(key, new Part(key, field, declared, withoutOptional(declared), component.getAccessor()));
        }
        BareList bare = type.getAnnotation(BareList.class);
        bareList = Optional.ofNullable(bare).map(BareList::value).map(parts::get);
        Set<String> ofObject = new LinkedHashSet<>(parts.keySet());
        bareList.ifPresent(part -> ofObject.remove(part.key()));
        keys = Collections.unmodifiableSet(ofObject);
        try {
            constructor = type.getDeclaredConstructor(
                    Arrays.stream(components).map(RecordComponent::getType).toArray(Class<?>[]::new));
        } catch (NoSuchMethodException e) {
            throw new IllegalStateException(e);
        }
    }

    static RecordShape of(Class<?> type) {
        return KNOWN.computeIfAbsent(type, RecordShape::new);
    }

    /** By key, in the record's order. */
    Map<String, Part> parts() {
        return parts;
    }

    /** The part that a bare list in the file stands for; an object does not take its key. */
    Optional<Part> bareList() {
        return bareList;
    }

    /** What an object in the file takes. */
    Set<String> keys() {
        return keys;
    }

    Object make(List<Object> values) {
        try {
            return constructor.newInstance(values.toArray());
        } catch (InvocationTargetException e) {
            throw new IllegalStateException(e.getCause());
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    static Object get(Part part, Object owner) {
        try {
            return part.accessor().invoke(owner);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    static Type withoutOptional(Type type) {
        if (type == OptionalInt.class) {
            return int.class;
        }
        if (type == OptionalLong.class) {
            return long.class;
        }
        if (type == OptionalDouble.class) {
            return double.class;
        }
        return type instanceof ParameterizedType wrapped && wrapped.getRawType() == Optional.class
                ? wrapped.getActualTypeArguments()[0]
                : type;
    }

    /** The type of a list's entries, or null where {@code type} is no list. */
    static Type entryType(Type type) {
        return type instanceof ParameterizedType list && list.getRawType() == List.class
                ? list.getActualTypeArguments()[0]
                : null;
    }
}
