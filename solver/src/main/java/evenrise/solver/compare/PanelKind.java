package evenrise.solver.compare;

import evenrise.model.project.PanelType;

/**
 * A type of panel at a place where it may hang.
 *
 * @param price of one, with its feeder and the work
 */
record PanelKind(FeedPoint point, PanelType type, double price) {}
