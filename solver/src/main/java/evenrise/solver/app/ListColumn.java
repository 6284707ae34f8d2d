package evenrise.solver.app;

import java.util.Optional;

/**
 * How a column of an equipment list was read.
 *
 * @param sheet empty for a text file
 * @param letters of the column, A for the first
 * @param means a field's name of a mapping's columns; empty where it was not read
 * @param unit that its header states; empty where it states none
 * @param by what told: mapping, header, values, nothing, ignored
 * @since 0.1.0
 */
public record ListColumn(String sheet, String letters, String header, Optional<String> means, String unit, String by) {}
