package evenrise.solver.cli;

import evenrise.solver.app.PinResult;
import evenrise.solver.app.PinnedLoads;
import evenrise.solver.app.Source;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import picocli.CommandLine.Option;

/** Which loads are pinned or set free, and where the project is written. */
final class PinOptions {
    @Option(names = "--all", description = "Every load, as after a revision was issued.")
    private boolean all;

    @Option(names = "--panel", paramLabel = "PANEL", description = "Slots of this panel; may be given again.")
    private List<String> panels = new ArrayList<>();

    @Option(names = "--board", paramLabel = "BOARD", description = "Outputs of this board; may be given again.")
    private List<String> boards = new ArrayList<>();

    @Option(names = "--group", paramLabel = "GROUP", description = "Loads of this group; may be given again.")
    private List<String> groups = new ArrayList<>();

    @Option(names = "--load", paramLabel = "LOAD", description = "This load; may be given again.")
    private List<String> loads = new ArrayList<>();

    @Option(
            names = {"-o", "--output"},
            required = true,
            paramLabel = "FILE",
            description = "Where the project is written; YAML by its ending, else JSON.")
    private String output;

    PinnedLoads which() {
        return new PinnedLoads(all, panels, boards, groups, loads);
    }

    Path into() {
        return Source.path(output);
    }

    /** What was done, in one line. */
    List<String> told(PinResult result) {
        return List.of(
                "Held now: " + result.held() + " of " + result.project().loads().size() + " loads, " + result.changed()
                        + " of them otherwise than before.",
                "Written: " + output);
    }
}
