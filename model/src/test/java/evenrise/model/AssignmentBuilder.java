package evenrise.model;

import evenrise.model.plan.Assignment;
import evenrise.model.project.Phase;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

public final class AssignmentBuilder {
    private final String load;
    private String panel = "P1";
    private int slot = 1;
    private List<Phase> phases = List.of(Phase.A);
    private Optional<String> board = Optional.empty();
    private OptionalInt output = OptionalInt.empty();
    private OptionalDouble onSeconds = OptionalDouble.empty();
    private OptionalDouble offSeconds = OptionalDouble.empty();

    AssignmentBuilder(String load) {
        this.load = load;
    }

    public AssignmentBuilder at(String panel, int slot, Phase... phases) {
        this.panel = panel;
        this.slot = slot;
        this.phases = List.of(phases);
        return this;
    }

    public AssignmentBuilder on(String board, int output) {
        this.board = Optional.of(board);
        this.output = OptionalInt.of(output);
        return this;
    }

    public AssignmentBuilder onSeconds(double it) {
        onSeconds = OptionalDouble.of(it);
        return this;
    }

    public AssignmentBuilder offSeconds(double it) {
        offSeconds = OptionalDouble.of(it);
        return this;
    }

    public Assignment build() {
        return new Assignment(load, panel, slot, phases, board, output, onSeconds, offSeconds);
    }
}
