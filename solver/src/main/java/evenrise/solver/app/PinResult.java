package evenrise.solver.app;

import evenrise.model.project.Project;

/**
 * A project with places pinned or set free.
 *
 * @param changed how many loads are held otherwise than before
 * @param held how many loads are held now, all or in part
 * @since 0.1.0
 */
public record PinResult(Project project, int changed, int held) {}
