package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Field;
import java.util.List;
import java.util.Optional;

/** Where each load sits and when it comes on, with the figures that follow. */
public record Plan(
        @Field(meaning = "Name and version of this format", atLeast = 1)
        String format,

        @Field(meaning = "Cautions for whoever works from this plan", byDefault = "[]")
        List<String> cautions,

        @Field(meaning = "How each board is set") List<BoardSetting> boards,
        @Field(meaning = "Where each load sits") List<Assignment> assignments,

        @Field(meaning = "The figures, as the rules package computes them", optional = true)
        Optional<Metrics> metrics,

        @Field(meaning = "Every broken hard rule", byDefault = "[]")
        List<BrokenRule> violations,

        @Field(meaning = "What made the plan", optional = true)
        Optional<MadeBy> madeBy) {

    /** The format that this software reads and writes. */
    public static final String FORMAT = "evenrise-plan/1";

    public Plan {
        Contract.check(Plan.class, format, cautions, boards, assignments, metrics, violations, madeBy);
        cautions = List.copyOf(cautions);
        boards = List.copyOf(boards);
        assignments = List.copyOf(assignments);
        violations = List.copyOf(violations);
    }
}
