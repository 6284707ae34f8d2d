package evenrise.solver.document;

import evenrise.model.plan.RangePeak;
import java.util.OptionalDouble;

/** A node's peaks over the supply's voltages, beside its limit. */
public record NodeOverRange(RangePeak peak, OptionalDouble inrushLimitAmps) {}
