package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.contract.Words;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.lang.reflect.RecordComponent;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Something that a project says of a load and that nobody stated.
 *
 * @param field as the file spells it
 * @param value as the file has it; empty where it has none
 */
public record GuessedField(String load, String field, String value) {
    /** In the project's order. */
    public static List<GuessedField> of(Project project) {
        List<GuessedField> all = new ArrayList<>();
        for (Load load : project.loads()) {
            load.guessed().forEach(field -> all.add(new GuessedField(load.id(), field, value(load, field))));
        }
        return List.copyOf(all);
    }

    /** How many there are; empty where there is none. */
    public static Optional<String> counted(Project project) {
        return figures(project).map(figures -> figures + " of " + loads(project));
    }

    /** The same without their loads. */
    public static Optional<String> figures(Project project) {
        int figures =
                project.loads().stream().mapToInt(load -> load.guessed().size()).sum();
        return figures == 0 ? Optional.empty() : Optional.of(Phrase.counted(figures, "figure"));
    }

    /** How many loads have any. */
    public static String loads(Project project) {
        return Phrase.counted(
                (int) project.loads().stream()
                        .filter(load -> !load.guessed().isEmpty())
                        .count(),
                "load");
    }

    private static String value(Load load, String field) {
        return Stream.of(Load.class.getRecordComponents())
                .filter(component -> Words.key(component.getName()).equals(field))
                .findAny()
                .map(component -> word(of(load, component)))
                .orElse("");
    }

    private static Object of(Load load, RecordComponent component) {
        try {
            return component.getAccessor().invoke(load);
        } catch (ReflectiveOperationException e) {
            throw new IllegalStateException(e);
        }
    }

    private static String word(Object value) {
        if (value instanceof Optional<?> maybe) {
            return maybe.map(GuessedField::word).orElse("");
        } else if (value instanceof Enum<?> constant) {
            return Words.word(constant);
        } else if (value instanceof Boolean is) {
            return is ? "true" : "false";
        } else if (value instanceof Double number) {
            return Decimals.toThousandths(number);
        }
        return String.valueOf(value);
    }
}
