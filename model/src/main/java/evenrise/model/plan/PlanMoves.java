package evenrise.model.plan;

import evenrise.model.contract.Contract;
import evenrise.model.contract.Defaults;
import evenrise.model.contract.Field;
import evenrise.model.contract.FileRecord;
import java.util.List;

/** What somebody who got a plan would have otherwise: loads put elsewhere by hand, one after the other. */
@FileRecord
public record PlanMoves(
        @Field(meaning = "Name and version of this format", atLeast = 1)
        String format,

        @Field(meaning = "Cautions for whoever works from this file", byDefault = "[]")
        List<String> cautions,

        @Field(meaning = "What the project is called, for people", byDefault = "\"\"")
        String project,

        @Field(meaning = "SHA-256 of the project's file that the plan was documented with", atLeast = 64)
        String projectSha256,

        @Field(
                meaning = "SHA-256 of what the plan places and sets, before these moves; figures and the layout of its"
                        + " file do not count",
                atLeast = 64)
        String planSha256,

        @Field(meaning = "Loads put elsewhere, in this order", atLeast = 1)
        List<LoadMove> moves)
        implements PlanMovesBuilder.With {

    /** The format that this software reads and writes. */
    public static final String FORMAT = "evenrise-moves/1";

    public PlanMoves {
        Contract.check(PlanMoves.class, format, cautions, project, projectSha256, planSha256, moves);
        cautions = List.copyOf(cautions);
        moves = List.copyOf(moves);
    }

    /** Begins with what a file gives that leaves everything out. */
    public static PlanMovesBuilder builder() {
        return Defaults.into(PlanMovesBuilder.unset(), PlanMoves.class).format(FORMAT);
    }
}
