package evenrise.solver.desk;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.Optional;

/** What lay on the desk before and, after an undo, what lay there after: every change can be taken back and made again. */
final class Chronicle {
    /** States share what is the same in them; of a project of thousands of loads a step takes some hundred kilobytes. */
    private static final int MOST_STEPS = 500;

    /** @param words what the change was, as it is offered to be taken back */
    private record Step(String words, Optional<DeskState> before, Optional<DeskState> after) {}

    private final Deque<Step> done = new ArrayDeque<>();
    private final Deque<Step> undone = new ArrayDeque<>();
    private Optional<DeskState> now;

    Chronicle(Optional<DeskState> now) {
        this.now = now;
    }

    Optional<DeskState> now() {
        return now;
    }

    void add(String words, DeskState next) {
        done.push(new Step(words, now, Optional.of(next)));
        if (done.size() > MOST_STEPS) {
            done.removeLast();
        }
        undone.clear();
        now = Optional.of(next);
    }

    /** What would be taken back. */
    Optional<String> undoable() {
        return Optional.ofNullable(done.peek()).map(Step::words);
    }

    /** What would be made again. */
    Optional<String> redoable() {
        return Optional.ofNullable(undone.peek()).map(Step::words);
    }

    /** @return whether there was anything to take back */
    boolean undo() {
        if (done.isEmpty()) {
            return false;
        }
        Step step = done.pop();
        undone.push(step);
        now = step.before();
        return true;
    }

    boolean redo() {
        if (undone.isEmpty()) {
            return false;
        }
        Step step = undone.pop();
        done.push(step);
        now = step.after();
        return true;
    }
}
