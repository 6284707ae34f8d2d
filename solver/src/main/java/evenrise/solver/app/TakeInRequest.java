package evenrise.solver.app;

import java.nio.file.Path;

/**
 * Tables that were exported from a project and edited are to be taken in again.
 *
 * @param tables a workbook, a table of values called like its list, or a folder of such
 * @param into where the project is written; it may be the project's own file
 * @param isTrial whether nothing is written
 * @since 0.1.0
 */
public record TakeInRequest(Path project, Path tables, Path into, boolean isTrial) {}
