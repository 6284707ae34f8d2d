/**
 * Draws invented venues of any size from a seed. Every figure is invented, in the range of common practice, no source.
 *
 * <p>Why each venue can be planned: the draft places every load while it draws it, and the limits follow from that layout.
 * Hold boards start at 0 s and step 2 s: outputs 1 to 5 (0 to 8 s) are for processing, 6 to 10 (10 to 18 s) for auxiliary
 * loads. Processing settles within 8 s, so all of it is settled at 16 s. Drop boards start at 10 s and step 2 s: outputs 1
 * to 4 (10 to 16 s) are for auxiliary loads, 5 and on (18 s and later) for amplifiers. Call boards follow the hold board by
 * 20 s and carry amplifiers only. The order on each board keeps every group in one run, and the ratings,
 * neutrals and inrush limits are set a little above what this layout draws.
 */
package evenrise.solver.sample;
