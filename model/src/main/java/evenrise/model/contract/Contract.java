package evenrise.model.contract;

import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.concurrent.ConcurrentHashMap;

/** Holds record values against what {@link Field} says of them. */
public final class Contract {
    /** What is computed from figures within their bounds may be a little beyond: a tolerance and half a cycle of it. */
    private static final double COMPUTED_RATIO = 1.01;

    private static final Map<Class<? extends Record>, RecordComponent[]> COMPONENTS = new ConcurrentHashMap<>();

    private Contract() {}

    /**
     * Called by a record's compact constructor with its values in order. A record need not come from a file: one that is
     * computed from another may have figures nearer to 0 than a file's, or a little beyond its bound.
     *
     * @throws IllegalArgumentException that names each value out of bounds
     */
    public static void check(Class<? extends Record> type, Object... values) {
        RecordComponent[] components = COMPONENTS.computeIfAbsent(type, Class::getRecordComponents);
        List<String> wrong = new ArrayList<>();
        for (int i = 0; i < components.length; i++) {
            Field field = components[i].getAnnotation(Field.class);
            if (values[i] == null) {
                wrong.add(Words.key(components[i].getName()) + " is missing");
            } else if (field != null) {
                for (String expected : broken(field, values[i], false)) {
                    wrong.add(Words.key(components[i].getName()) + " is " + values[i] + ", expected " + expected);
                }
            }
        }
        if (!wrong.isEmpty()) {
            throw new IllegalArgumentException(type.getSimpleName() + ": " + String.join("; ", wrong));
        }
    }

    /** What {@code value} should have been, one entry for each bound it breaks; empty when it is fine. */
    public static List<String> broken(Field field, Object value) {
        return broken(field, value, true);
    }

    private static List<String> broken(Field field, Object value, boolean isOfFile) {
        List<String> expected = new ArrayList<>();
        if (value instanceof Number number) {
            bounds(field, number.doubleValue(), expected, isOfFile || !(number instanceof Double));
        } else if (value instanceof OptionalDouble optional) {
            optional.ifPresent(number -> bounds(field, number, expected, isOfFile));
        } else if (value instanceof OptionalInt optional) {
            optional.ifPresent(number -> bounds(field, number, expected, true));
        } else if (value instanceof Optional<?> optional) {
            optional.ifPresent(inner -> expected.addAll(broken(field, inner, isOfFile)));
        } else if (value instanceof String text) {
            if (text.strip().length() < field.atLeast()) {
                expected.add("at least " + field.atLeast() + " visible character" + (field.atLeast() == 1 ? "" : "s"));
            }
        } else if (value instanceof List<?> list) {
            if (list.size() < field.atLeast() && !(field.optional() && list.isEmpty())) {
                expected.add("at least " + field.atLeast() + (field.atLeast() == 1 ? " entry" : " entries"));
            }
            if (field.distinct() && new HashSet<>(list).size() < list.size()) {
                expected.add("no entry twice");
            }
            for (Object entry : list) {
                if (entry instanceof Number number) {
                    bounds(field, number.doubleValue(), expected, isOfFile || !(number instanceof Double));
                }
            }
        }
        return expected;
    }

    private static void bounds(Field field, double number, List<String> expected, boolean isOfFile) {
        if (!Double.isFinite(number)) {
            expected.add("a finite number");
        } else if (number <= field.above()) {
            expected.add("more than " + plain(field.above()));
        } else if (number < field.min()) {
            expected.add("at least " + plain(field.min()));
        } else if (number > (isOfFile ? field.max() : COMPUTED_RATIO * field.max())) {
            expected.add("at most " + plain(field.max()));
        } else if (isOfFile && number != 0 && Math.abs(number) < field.least()) {
            String least = "at least " + plain(field.least());
            expected.add(field.above() >= 0 ? least : "0, or " + least);
        }
    }

    private static String plain(double number) {
        return number == Math.rint(number) && Math.abs(number) < 1e15
                ? Long.toString((long) number)
                : Double.toString(number);
    }
}
