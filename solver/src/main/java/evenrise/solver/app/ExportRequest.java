package evenrise.solver.app;

import java.nio.file.Path;

/**
 * A project is to be written for others.
 *
 * @param resolved whether every load states all that it has, for programs that know no defaults
 * @param into where: a workbook or a project by its ending, tables of values in a folder without one
 * @since 0.1.0
 */
public record ExportRequest(Source project, boolean resolved, Path into) {}
