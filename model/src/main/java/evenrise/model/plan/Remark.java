package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;
import java.util.OptionalDouble;

/** One thing that the electrical review has to say. */
@FileRecord
public record Remark(
        @Field(meaning = "The check that says it, as named in docs/electrical.md", atLeast = 1)
        String check,

        @Field(meaning = "How it is to be taken") Grade grade,

        @Field(meaning = "Load, panel or supply that it is about", atLeast = 1)
        String place,

        @Field(meaning = "The figure, in the unit of the quantity", optional = true, least = 0)
        OptionalDouble figure,

        @Field(meaning = "What the figure is held against, in the same unit", optional = true, least = 0)
        OptionalDouble limit,

        @Field(meaning = "Unit of figure and limit: A, V, %, s, Ω; empty where there is none", byDefault = "\"\"")
        String unit,

        @Field(
                meaning = "Clause of the practice, as a pointer to look it up; empty where there is none",
                byDefault = "\"\"")
        String clause,

        @Field(meaning = "The place, the figure with its unit, what is allowed, and the likely cure", atLeast = 1)
        String message,

        @Field(meaning = "Which of the things that the check says", byDefault = "\"\"")
        String kind,

        @Field(meaning = "Loads, panels, boards and so on that it is about, the most telling first", byDefault = "[]")
        List<Subject> subjects,

        @Field(meaning = "The likely cure", byDefault = "\"\"")
        String cure)
        implements RemarkBuilder.With, Finding {
    public Remark {
        Contract.check(Remark.class, check, grade, place, figure, limit, unit, clause, message, kind, subjects, cure);
        subjects = List.copyOf(subjects);
    }

    @Override
    public Grade gravity() {
        return grade;
    }

    /** That a check says nothing, for {@code needs} is not stated. */
    public static Remark notChecked(String check, String place, String needs) {
        return builder()
                .check(check)
                .grade(Grade.NOT_CHECKED)
                .kind("not-checked")
                .place(place)
                .message("not checked: needs " + needs)
                .build();
    }

    /** Begins with a current and what it is held against, at a place. */
    public static RemarkBuilder inAmps(String check, String place, double figure, double limit) {
        return builder().check(check).place(place).figure(figure).limit(limit).unit("A");
    }

    /** Begins with what a file gives that leaves everything out. */
    public static RemarkBuilder builder() {
        return Defaults.into(RemarkBuilder.unset(), Remark.class);
    }
}
