package evenrise.solver.report;

import evenrise.model.contract.Field;
import evenrise.model.scatter.NodeScatter;
import java.util.List;

/** A scatter as it is written for other programs. */
public record ScatterFile(
        @Field(meaning = "Name and version of this format") String format,

        @Field(meaning = "Name of the project") String project,

        @Field(meaning = "How many switch-ons were drawn by chance")
        int trials,

        @Field(meaning = "What the chance began with: the same seed draws the same")
        long seed,

        @Field(meaning = "Peak and dip of the supply, then of each panel and node")
        List<NodeScatter> nodes,

        @Field(meaning = "What whoever uses these figures has to know")
        List<String> cautions) {
    public static final String FORMAT = "evenrise-scatter/1";
}
