package evenrise.solver.document;

import evenrise.solver.report.page.PlayedLoad;
import java.util.List;

/** What the page's script needs. */
public record Played(
        double duration,
        double end,
        double most,
        double left,
        double width,
        List<String> phases,
        List<PlayedLoad> loads) {}
