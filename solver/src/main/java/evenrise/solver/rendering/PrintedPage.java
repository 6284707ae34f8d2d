package evenrise.solver.rendering;

/**
 * A page of printed sheets.
 *
 * @param sheet its number as a sheet; empty where sheets have none
 * @param title of its section
 */
public record PrintedPage(String sheet, String title) {}
