package evenrise.solver.app;

import evenrise.model.project.Project;
import evenrise.solver.report.TakenInText;
import java.util.List;

/**
 * What edited tables of a project change in it.
 *
 * @param project with the changes
 * @param changes a sentence for each row that is another
 * @param isWritten whether the project was written
 * @since 0.1.0
 */
public record TakeInResult(Project project, List<String> changes, boolean isWritten) implements Listing {
    public TakeInResult {
        changes = List.copyOf(changes);
    }

    @Override
    public List<String> text(TextStyle style) {
        return TakenInText.lines(project.name(), changes, style.paint());
    }
}
