package evenrise.model.event;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import evenrise.model.plan.Finding;
import evenrise.model.plan.FindingText;
import evenrise.model.plan.Subject;
import java.util.List;
import java.util.OptionalDouble;

/** What a rehearsal has found. */
@FileRecord
public record EventFinding(
        @Field(meaning = "When it began, from the script's zero")
        double atSeconds,

        @Field(meaning = "How grave it is") Grade grade,

        @Field(meaning = "The rule of order that is broken, or another word for what it is about", atLeast = 1)
        String rule,

        @Field(meaning = "What is so, without its cure", atLeast = 1)
        String text,

        @Field(meaning = "Which of the things that are said under that word", byDefault = "\"\"")
        String kind,

        @Field(meaning = "Loads, panels, groups and so on that it is about, the most telling first", byDefault = "[]")
        List<Subject> subjects,

        @Field(
                meaning = "Where it is: supply, panel or node; empty where it is nowhere in particular",
                byDefault = "\"\"")
        String place,

        @Field(meaning = "The figure, in its unit", optional = true, least = 0)
        OptionalDouble figure,

        @Field(meaning = "What the figure is held against, in the same unit", optional = true, least = 0)
        OptionalDouble limit,

        @Field(meaning = "Unit of figure and limit: A, V; empty where there is none", byDefault = "\"\"")
        String unit,

        @Field(
                meaning = "Clause or other source, as a pointer to look it up; empty where there is none",
                byDefault = "\"\"")
        String clause,

        @Field(meaning = "The likely cure; empty where there is none", byDefault = "\"\"")
        String cure)
        implements EventFindingBuilder.With, Finding {
    /** How grave a finding is. */
    public enum Grade {
        /** Something that must not be. */
        BROKEN,
        /** Something that one should know. */
        NOTE
    }

    public EventFinding {
        Contract.check(
                EventFinding.class,
                atSeconds,
                grade,
                rule,
                text,
                kind,
                subjects,
                place,
                figure,
                limit,
                unit,
                clause,
                cure);
        subjects = List.copyOf(subjects);
    }

    static EventFindingBuilder broken(double atSeconds, String rule) {
        return builder().atSeconds(atSeconds).grade(Grade.BROKEN).rule(rule);
    }

    static EventFindingBuilder note(double atSeconds, String rule) {
        return builder().atSeconds(atSeconds).grade(Grade.NOTE).rule(rule);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static EventFindingBuilder builder() {
        return Defaults.into(EventFindingBuilder.unset(), EventFinding.class);
    }

    @Override
    public String check() {
        return rule;
    }

    @Override
    public evenrise.model.plan.Grade gravity() {
        return grade == Grade.BROKEN ? evenrise.model.plan.Grade.BREAKS : evenrise.model.plan.Grade.NOTE;
    }

    @Override
    public String message() {
        return FindingText.of(text, cure);
    }
}
