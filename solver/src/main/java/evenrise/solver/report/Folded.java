package evenrise.solver.report;

import evenrise.model.contract.Decimals;
import evenrise.model.contract.Phrase;
import evenrise.model.plan.Finding;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Subject;
import evenrise.model.plan.SubjectKind;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/**
 * Findings that are equal but for which load they are about, as one: of the same rule or check, kind, grade, figures and
 * clause, about loads whose names differ in nothing but a number at the end.
 *
 * @param all in their order, at least one
 * @param text what they say, in one paragraph
 */
public record Folded<F extends Finding>(List<F> all, String text) {
    private static final Pattern NUMBER_AT_THE_END = Pattern.compile("[\\s#._-]*\\d+$");
    private static final int MOST_NAMED = 5;

    /** What is the same of all that fold. */
    private record Sameness(
            String check,
            String kind,
            Grade grade,
            String figure,
            String limit,
            String unit,
            String clause,
            String loads) {}

    /** In the order of the first of each. Whatever states no kind, or is about no load, stays by itself. */
    public static <F extends Finding> List<Folded<F>> of(List<F> findings, Project project) {
        Map<String, String> names = project.loads().stream()
                .collect(Collectors.toMap(Load::id, Folded::kindOfLoad, (first, second) -> first));
        Map<Object, List<F>> equal = new LinkedHashMap<>();
        for (F each : findings) {
            String name = each.mainSubject()
                    .filter(first ->
                            first.kind() == SubjectKind.LOAD && !each.kind().isEmpty())
                    .map(Subject::id)
                    .map(names::get)
                    .orElse(null);
            Object key = name == null ? new Object() : sameness(each, name);
            equal.computeIfAbsent(key, any -> new ArrayList<>()).add(each);
        }
        return equal.entrySet().stream()
                .map(each -> new Folded<>(List.copyOf(each.getValue()), text(each.getKey(), each.getValue())))
                .toList();
    }

    /** Each by itself, with all that it is about by name. */
    public static <F extends Finding> List<Folded<F>> unfolded(List<F> findings) {
        return findings.stream()
                .map(each -> new Folded<>(List.of(each), each.message() + allNames(each)))
                .toList();
    }

    public F first() {
        return all.get(0);
    }

    private static Sameness sameness(Finding it, String loads) {
        return new Sameness(
                it.check(),
                it.kind(),
                it.gravity(),
                shown(it.figure()),
                shown(it.limit()),
                it.unit(),
                it.clause(),
                loads);
    }

    private static String shown(OptionalDouble figure) {
        return figure.isPresent() ? Decimals.toThousandths(figure.getAsDouble()) : "";
    }

    /** Its name without a number at the end. */
    private static String kindOfLoad(Load load) {
        String kind = NUMBER_AT_THE_END.matcher(load.name()).replaceFirst("");
        return kind.isBlank() ? load.name() : kind;
    }

    private static String text(Object key, List<? extends Finding> equal) {
        Finding first = equal.get(0);
        if (equal.size() == 1 || !(key instanceof Sameness same)) {
            return first.message();
        }
        List<String> others = equal.stream()
                .skip(1)
                .map(each -> Phrase.quoted(each.mainSubject().orElseThrow().id()))
                .distinct()
                .toList();
        String named = others.stream().limit(MOST_NAMED).collect(Collectors.joining(", "));
        return equal.size() + " × " + same.loads() + ": " + first.message()
                + (others.isEmpty() ? "" : " Likewise " + named)
                + (others.size() > MOST_NAMED ? " and " + (others.size() - MOST_NAMED) + " more" : "")
                + (others.isEmpty() ? "" : ".");
    }

    /** A remark that something is not checked names the first few places only. */
    private static String allNames(Finding it) {
        List<Subject> about = it.subjects();
        return it.gravity() == Grade.NOT_CHECKED && about.size() > 1
                ? "; all: "
                        + about.stream().map(each -> Phrase.quoted(each.id())).collect(Collectors.joining(", "))
                : "";
    }
}
