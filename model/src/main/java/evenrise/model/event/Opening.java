package evenrise.model.event;

/**
 * The begin of a part of a rehearsal.
 *
 * @param isQuiet whether no sequence was under way
 */
record Opening(double atSeconds, String text, boolean isQuiet) {}
