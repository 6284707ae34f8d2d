package evenrise.solver.report;

import evenrise.model.project.Project;
import evenrise.solver.rework.Commands;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;

/** How everything that boards switch is told to go off, and on again. */
final class CommandText {
    private final List<String> inOrder;

    CommandText(Project project) {
        inOrder = Commands.inOrder(project);
    }

    String off() {
        List<String> last = new ArrayList<>(inOrder);
        Collections.reverse(last);
        return inOrder.isEmpty()
                ? "Give the off command. Wait until everything that boards switch is off."
                : "Give the off commands, each when the one before is carried out: " + String.join(", ", last)
                        + ". Wait until everything that boards switch is off.";
    }

    String on() {
        return inOrder.isEmpty()
                ? "Give the on command. Watch the sequence to its end."
                : "Give the on commands, each when the one before is carried out: " + String.join(", ", inOrder)
                        + ". Watch each sequence to its end.";
    }
}
