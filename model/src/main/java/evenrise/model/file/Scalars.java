package evenrise.model.file;

import evenrise.model.check.Nearest;
import evenrise.model.contract.Field;
import evenrise.model.contract.Words;
import java.lang.reflect.Type;
import java.math.BigInteger;
import java.util.List;
import java.util.Optional;

/** Binds single values: texts, numbers, words of a list, true and false. */
final class Scalars {
    private final Problems problems;

    Scalars(Problems problems) {
        this.problems = problems;
    }

    /** Empty where the value is of the wrong kind, which is then a problem; bounds are not checked. */
    Optional<Object> value(Node node, Type type, Field field, String pointer) {
        Class<?> wanted = (Class<?>) type;
        Optional<Object> value = wanted.isEnum() ? word(node, wanted) : plain(node, wanted);
        if (value.isEmpty()) {
            problems.unbound(pointer, node, node.shown(), Expected.of(type, field), cure(node, wanted));
        }
        return value;
    }

    private static Optional<Object> plain(Node node, Class<?> wanted) {
        if (wanted == String.class) {
            return node instanceof Node.Text text ? Optional.of(text.text()) : Optional.empty();
        }
        if (wanted == boolean.class || wanted == Boolean.class) {
            return node instanceof Node.Bool bool ? Optional.of(bool.truth()) : Optional.empty();
        }
        if (!(node instanceof Node.Num number)) {
            return Optional.empty();
        }
        if (wanted == double.class || wanted == Double.class) {
            return Optional.of(number.number().doubleValue());
        }
        if (wanted == long.class) {
            return whole(number.number(), Long.MIN_VALUE, Long.MAX_VALUE);
        }
        return whole(number.number(), Integer.MIN_VALUE, Integer.MAX_VALUE).map(it -> ((Long) it).intValue());
    }

    /** A whole number may be written as 3.0, as in JSON Schema. */
    private static Optional<Object> whole(Number number, long least, long most) {
        if (number instanceof BigInteger || number instanceof Double d && (d != Math.rint(d) || Math.abs(d) > 1e15)) {
            return Optional.empty();
        }
        long it = number.longValue();
        return it < least || it > most ? Optional.empty() : Optional.of(it);
    }

    private static Optional<Object> word(Node node, Class<?> wanted) {
        if (node instanceof Node.Text text) {
            for (Object constant : wanted.getEnumConstants()) {
                if (Words.word((Enum<?>) constant).equals(text.text())) {
                    return Optional.of(constant);
                }
            }
        }
        return Optional.empty();
    }

    private static String cure(Node node, Class<?> wanted) {
        if (wanted.isEnum()) {
            List<String> words = Expected.words(wanted);
            return node instanceof Node.Text text ? Nearest.cure(text.text(), words, "") : "";
        }
        if (wanted == String.class) {
            return node instanceof Node.Num || node instanceof Node.Bool ? "Maybe put it in quotes." : "";
        }
        if (node instanceof Node.Text text) {
            boolean number = text.text().strip().matches("[-+]?[0-9.]+([eE][-+]?[0-9]+)?");
            boolean truth = text.text().strip().matches("true|false");
            if (number || truth) {
                return "Maybe take the quotes away.";
            }
            return text.text().strip().matches("[-+]?[0-9.,]+\\s*\\p{L}*")
                    ? "Maybe write the number alone, with a decimal point; the unit is in the key."
                    : "";
        }
        return "";
    }
}
