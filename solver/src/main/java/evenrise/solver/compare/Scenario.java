package evenrise.solver.compare;

import evenrise.model.project.Project;

/**
 * One question of a comparison: so many panels and boards, planned for one aim.
 *
 * @param key names its files, such as {@code p3-b8-usual}
 * @param project complete, with its panels and boards
 * @param price of everything in it that has a price
 */
public record Scenario(String key, int panels, int boards, Aim aim, Project project, double price) {}
