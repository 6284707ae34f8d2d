package evenrise.model;

import evenrise.model.plan.Assignment;
import evenrise.model.project.Phase;
import java.util.List;
import java.util.function.Consumer;

public final class AssignmentBuilder {
    private final evenrise.model.plan.AssignmentBuilder made;

    AssignmentBuilder(String load) {
        made = Assignment.builder().load(load).panel("P1").slot(1).phases(List.of(Phase.A));
    }

    public AssignmentBuilder at(String panel, int slot, Phase... phases) {
        made.panel(panel);
        made.slot(slot);
        made.phases(List.of(phases));
        return this;
    }

    public AssignmentBuilder on(String board, int output) {
        made.board(board);
        made.output(output);
        return this;
    }

    public AssignmentBuilder onSeconds(double it) {
        made.onSeconds(it);
        return this;
    }

    public AssignmentBuilder offSeconds(double it) {
        made.offSeconds(it);
        return this;
    }

    /** Sets what has no method of its own here. */
    public AssignmentBuilder with(Consumer<evenrise.model.plan.AssignmentBuilder> more) {
        more.accept(made);
        return this;
    }

    public Assignment build() {
        return made.build();
    }
}
