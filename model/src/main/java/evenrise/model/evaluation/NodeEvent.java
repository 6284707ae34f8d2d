package evenrise.model.evaluation;

import evenrise.model.plan.EventPeak;

/** The peak of one event at one node beside the node's inrush limit. */
public record NodeEvent(String node, EventPeak peak, double limitAmps) {}
