package evenrise.solver.app;

import evenrise.model.answer.Supposition;
import java.util.List;

/**
 * What would become of a plan if something of its project were otherwise.
 *
 * @param suppositions all at once, in this order
 * @param few how far a plan may go from this one
 * @since 0.1.0
 */
public record WhatIfRequest(Source project, Source plan, List<Supposition> suppositions, Effort effort, FewMoves few) {
    public WhatIfRequest {
        suppositions = List.copyOf(suppositions);
    }
}
