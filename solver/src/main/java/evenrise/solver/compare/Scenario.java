package evenrise.solver.compare;

import evenrise.model.project.Project;

/**
 * One question of a comparison: a make-up, planned for one aim.
 *
 * @param key names its files, such as {@code p3-b8-usual}
 * @param makeUp of its panels and boards
 * @param project complete, with its panels and boards
 */
public record Scenario(String key, Aim aim, MakeUp makeUp, Project project) {
    /** Of the whole project, those that stay among them. */
    public int panels() {
        return project.panels().size();
    }

    /** Of the whole project, those that stay among them. */
    public int boards() {
        return project.boards().size();
    }

    /** Of everything in it that has a price. */
    public double price() {
        return makeUp.price();
    }
}
