package evenrise.model.handout;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.OptionalLong;

/** Records as lists of their values, for {@link RecordReader}: no key is written, and nothing at the end that is empty. */
final class RecordLists {
    private RecordLists() {}

    /** A text, number, truth, list of those, or null. */
    static Object of(Object value) {
        if (value instanceof Record record) {
            return values(record);
        }
        if (value instanceof List<?> list) {
            return list.stream().map(RecordLists::of).toList();
        }
        if (value instanceof Enum<?> constant) {
            return (double) constant.ordinal();
        }
        if (value instanceof Optional<?> optional) {
            return optional.map(RecordLists::of).orElse(null);
        }
        if (value instanceof OptionalDouble optional) {
            return optional.isPresent() ? optional.getAsDouble() : null;
        }
        if (value instanceof OptionalInt optional) {
            return optional.isPresent() ? (double) optional.getAsInt() : null;
        }
        if (value instanceof OptionalLong optional) {
            return optional.isPresent() ? (double) optional.getAsLong() : null;
        }
        return value instanceof Number number ? (Object) number.doubleValue() : value;
    }

    private static List<Object> values(Record record) {
        List<Object> values = new ArrayList<>();
        for (RecordComponent each : record.getClass().getRecordComponents()) {
            try {
                each.getAccessor().setAccessible(true);
                values.add(of(each.getAccessor().invoke(record)));
            } catch (ReflectiveOperationException e) {
                throw new IllegalStateException(e);
            }
        }
        while (!values.isEmpty() && values.get(values.size() - 1) == null) {
            values.remove(values.size() - 1);
        }
        return values;
    }
}
