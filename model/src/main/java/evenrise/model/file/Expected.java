package evenrise.model.file;

import evenrise.model.contract.Field;
import evenrise.model.contract.Words;
import java.lang.annotation.Annotation;
import java.lang.reflect.Type;
import java.util.ArrayList;
import java.util.List;

/** Says in words what a component takes. */
final class Expected {
    private Expected() {}

    /** {@code a number, at least 0, at most 2}; {@code one of: drop, hold}. */
    static String of(Type type, Field field) {
        if (RecordShape.entryType(type) != null) {
            return listOf(RecordShape.entryType(type));
        }
        Class<?> plain = (Class<?>) type;
        if (plain.isRecord()) {
            return "an object";
        }
        if (plain.isEnum()) {
            return "one of: " + String.join(", ", words(plain));
        }
        if (plain == boolean.class || plain == Boolean.class) {
            return "true or false";
        }
        if (plain == String.class) {
            return "a text";
        }
        boolean whole = plain == int.class || plain == Integer.class || plain == long.class;
        StringBuilder expected = new StringBuilder(whole ? "a whole number" : "a number");
        bound(expected, ", more than ", field.above());
        bound(expected, ", at least ", field.min());
        bound(expected, ", at most ", field.max());
        return expected.toString();
    }

    static String listOf(Type entryType) {
        return entryType == String.class
                ? "a list of texts"
                : Number.class.isAssignableFrom((Class<?>) entryType)
                        ? "a list of numbers"
                        : ((Class<?>) entryType).isEnum()
                                ? "a list of " + String.join(", ", words((Class<?>) entryType))
                                : "a list of objects";
    }

    static List<String> words(Class<?> enumType) {
        List<String> words = new ArrayList<>();
        for (Object constant : enumType.getEnumConstants()) {
            words.add(Words.word((Enum<?>) constant));
        }
        return words;
    }

    private static void bound(StringBuilder out, String words, double bound) {
        if (Double.isFinite(bound)) {
            out.append(words).append(evenrise.model.contract.Decimals.toThousandths(bound));
        }
    }

    /** What holds for each entry of a list with this field: the bounds of numbers, nothing of the list. */
    static Field ofEntries(Field list) {
        return new Field() {
            @Override
            public String meaning() {
                return list.meaning();
            }

            @Override
            public double above() {
                return list.above();
            }

            @Override
            public double min() {
                return list.min();
            }

            @Override
            public double max() {
                return list.max();
            }

            @Override
            public double least() {
                return list.least();
            }

            @Override
            public String byDefault() {
                return "";
            }

            @Override
            public boolean optional() {
                return false;
            }

            @Override
            public int atLeast() {
                return 0;
            }

            @Override
            public boolean distinct() {
                return false;
            }

            @Override
            public Class<? extends Annotation> annotationType() {
                return Field.class;
            }
        };
    }
}
