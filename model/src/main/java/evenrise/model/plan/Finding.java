package evenrise.model.plan;

import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;

/**
 * Something that a rule, a check or a reader has to say of a plan, of what happens to it or of a file, in parts. Whoever decides by it asks for the parts; the text is
 * for people, and {@link FindingText} makes it.
 */
public interface Finding {
    /** The rule or check that says it, as docs/rules.md or docs/electrical.md name it. */
    String check();

    /** Which of the things that the rule or check says; empty in files written before there were kinds. */
    String kind();

    /** How it is to be taken. */
    Grade gravity();

    /** What it is about, the most telling first; empty in files written before there were subjects. */
    default List<Subject> subjects() {
        return List.of();
    }

    /** Where it is, for people. */
    String place();

    /** The figure, where there is one. */
    default OptionalDouble figure() {
        return OptionalDouble.empty();
    }

    /** What the figure is held against, in the same unit. */
    default OptionalDouble limit() {
        return OptionalDouble.empty();
    }

    /** Unit of figure and limit; empty where there is none. */
    default String unit() {
        return "";
    }

    /** Clause or other source, as a pointer to look it up; empty where there is none. */
    default String clause() {
        return "";
    }

    /** The likely cure, without the "Maybe" that a sentence begins with; empty where there is none. */
    default String cure() {
        return "";
    }

    /** All of it in words. */
    String message();

    /** Ids of what it is about, of one kind. */
    default Stream<String> subjects(SubjectKind kind) {
        return subjects().stream().filter(each -> each.kind() == kind).map(Subject::id);
    }

    /** Whether it is about that one. */
    default boolean isAbout(SubjectKind kind, String id) {
        return subjects(kind).anyMatch(id::equals);
    }

    /** What it is about first of all. */
    default Optional<Subject> mainSubject() {
        return subjects().stream().findFirst();
    }
}
