package evenrise.solver.rework;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Control leads of a stage: taken off for good, lifted where they are in the way, landed. */
final class LeadSteps {
    private final StageWork work;
    private final List<WorkStep> steps;
    private final Map<String, String> onOutput = new HashMap<>();

    LeadSteps(StageWork work, List<WorkStep> steps) {
        this.work = work;
        this.steps = steps;
        work.before
                .values()
                .forEach(seat -> Passage.output(seat).ifPresent(output -> onOutput.put(output, seat.load())));
    }

    void remove(Removal removal) {
        removal.from()
                .board()
                .ifPresent(board -> steps.add(WorkStep.lead(
                        WorkStepKind.REMOVE_LEAD,
                        removal.load(),
                        board,
                        removal.from().output())));
        leave(removal.load());
    }

    void move() {
        List<LoadChange> left = new ArrayList<>(
                work.changes().stream().filter(LoadChange::isReLanded).toList());
        while (!left.isEmpty()) {
            Optional<LoadChange> free =
                    left.stream().filter(change -> holder(change).isEmpty()).findFirst();
            LoadChange next = free.orElse(left.get(0));
            if (free.isPresent()) {
                leave(next.load());
                Passage.output(next.to()).ifPresent(output -> onOutput.put(output, next.load()));
                steps.add(
                        WorkStep.lead(next.load(), next.to().board(), next.to().output()));
                left.remove(next);
            } else {
                String holder = holder(next).orElseThrow();
                leave(holder);
                steps.add(WorkStep.load(WorkStepKind.LIFT_LEAD, holder));
            }
        }
    }

    private void leave(String load) {
        onOutput.values().removeIf(load::equals);
    }

    private Optional<String> holder(LoadChange change) {
        return Passage.output(change.to())
                .flatMap(output -> Optional.ofNullable(onOutput.get(output)))
                .filter(load -> !load.equals(change.load()));
    }
}
