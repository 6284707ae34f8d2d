/**
 * Draws invented venues of any size from a seed. Every figure is invented, in the range of common practice, no source.
 *
 * <p>Why each venue can be planned: the draft places every load while it draws it, and the limits follow from that
 * layout. Boards step 2 s; panels take turns, 0 to 1.5 s later than the first. Hold boards start at 0 s: outputs 1 to
 * 5 (until 9.5 s) are for processing, 6 to 10 (10 to 19.5 s) for auxiliary loads. Processing settles within 8 s, so
 * all of it is settled at 17.5 s; the core switch of the first panel is settled at 4 s, when the first panel's switch
 * comes on, and each switch within 6 s, when its panel's auxiliary loads follow. Drop boards start at 12 s: outputs 1
 * to 4 (12 to 19.5 s) are for displays, 5 and on (20 s and later) for amplifiers. Call boards follow the hold board by
 * 20 s and carry amplifiers only. The order on each board keeps every group in one run. Ratings, neutrals and inrush
 * limits are set a little above what this layout draws.
 *
 * <p>Parts of a plant keep that layout: commands of halls start at the same 0 s each; what waits for the core of another
 * system does not; an output with a time of its own has that of the step; loads behind a contactor come on with its first,
 * no later than they would. Limits of a plant are those of the devices before its nodes, and ratings leave two fifths.
 *
 * <p>May touch model.plan, model.project, model.rules.
 */
package evenrise.solver.sample;
