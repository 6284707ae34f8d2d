package evenrise.solver.report;

import evenrise.model.scatter.NodeScatter;
import java.util.List;

/** A scatter as it is written for other programs. */
public record ScatterSheet(
        String format, String project, int trials, long seed, List<NodeScatter> nodes, List<String> cautions) {
    public static final String FORMAT = "evenrise-scatter/1";
}
