package evenrise.model.electrical.source;

/**
 * What is left of a load's inrush.
 *
 * @param drawn its rms at nominal voltage
 * @param lagRadians of the load in service, which says little of its inrush
 * @param kind of gear; inrush of one kind lags by one angle, whatever that is
 */
public record Inrush(Drawn drawn, double lagRadians, Object kind) {}
