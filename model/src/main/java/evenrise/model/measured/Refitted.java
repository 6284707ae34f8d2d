package evenrise.model.measured;

import evenrise.model.project.Project;
import java.util.List;

/**
 * A project that holds what was measured.
 *
 * @param project whose fields hold readings with all that they may be off by on top, and keep what they said before
 * @param changes field by field, in the project's order
 */
public record Refitted(Project project, List<FieldChange> changes) {
    public Refitted {
        changes = List.copyOf(changes);
    }

    public long count(FieldChange.Kind kind) {
        return changes.stream().filter(each -> each.kind() == kind).count();
    }
}
