/**
 * Small changes by the thousand: breakers inside their panel, outputs and settings of a board, of plans of one supply and one
 * command. On plain arrays, many times as fast as a move of the search, and judged as the search judges.
 */
package evenrise.solver.engine.fine;
