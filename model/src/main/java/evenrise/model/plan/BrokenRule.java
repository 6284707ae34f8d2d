package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.OptionalDouble;

/** One place where a plan breaks a hard rule. */
@FileRecord
public record BrokenRule(
        @Field(meaning = "The rule, as named in docs/rules.md", atLeast = 1)
        String rule,

        @Field(meaning = "What is broken, by how much, and the likely cure", atLeast = 1)
        String message,

        @Field(meaning = "Which way of breaking the rule, as listed in docs/rules.md", byDefault = "\"\"")
        String kind,

        @Field(meaning = "Loads, panels, boards and so on that it is about, the most telling first", byDefault = "[]")
        List<Subject> subjects,

        @Field(
                meaning = "Where it is: supply, panel, node or board, with its slot, phase or output",
                byDefault = "\"\"")
        String place,

        @Field(meaning = "The figure, in its unit", optional = true, least = 0)
        OptionalDouble figure,

        @Field(meaning = "What is allowed or wanted, in the same unit", optional = true, least = 0)
        OptionalDouble limit,

        @Field(meaning = "Unit of figure and limit: A, V, s; empty where there is none", byDefault = "\"\"")
        String unit,

        @Field(
                meaning = "Clause that the limit comes from, as a pointer to look it up; empty where there is none",
                byDefault = "\"\"")
        String clause,

        @Field(meaning = "How it is to be taken; a hard rule is always a limit", byDefault = "\"breaks\"")
        Grade grade,

        @Field(meaning = "The likely cure", byDefault = "\"\"")
        String cure)
        implements BrokenRuleBuilder.With, Finding {
    public BrokenRule {
        Contract.check(
                BrokenRule.class, rule, message, kind, subjects, place, figure, limit, unit, clause, grade, cure);
        subjects = List.copyOf(subjects);
    }

    @Override
    public String check() {
        return rule;
    }

    @Override
    public Grade gravity() {
        return grade;
    }

    /** Begins with what a file gives that leaves everything out. */
    public static BrokenRuleBuilder builder() {
        return Defaults.into(BrokenRuleBuilder.unset(), BrokenRule.class);
    }
}
