package evenrise.solver.document;

import evenrise.solver.report.NodeEvents;
import evenrise.solver.report.NodeUse;

/** What a node peaks at in the sequence and when something happens. */
public record NodeHappenings(NodeUse node, NodeEvents events) {}
