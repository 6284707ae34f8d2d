package evenrise.solver.desk;

import evenrise.model.plan.Cautions;
import evenrise.model.plan.Plan;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.desk.DeskAnswers.DeskEvent;
import evenrise.solver.desk.DeskAnswers.DeskSheet;
import evenrise.solver.desk.DeskAnswers.PlanSheet;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalLong;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.function.Consumer;
import java.util.function.Function;

/**
 * What lies on the desk and how it came there. One change at a time, whoever asks for it; each is kept in the files at once
 * and can be taken back.
 */
final class Desk {
    private static final int MOST_TOLD = 20;
    private static final int MOST_REMEMBERED = 4;

    private final DeskFiles files;
    private final Chronicle chronicle;
    private final List<Consumer<DeskEvent>> listeners = new CopyOnWriteArrayList<>();
    private final List<String> told = new ArrayList<>();
    private Optional<DeskState> origin;
    private Optional<JudgedState> judged;
    private Optional<String> assessed = Optional.empty();
    /** What windows were shown last, by revision. */
    private final Map<Long, PlanSheet> shown = new LinkedHashMap<>() {
        @Override
        protected boolean removeEldestEntry(Map.Entry<Long, PlanSheet> eldest) {
            return size() > MOST_REMEMBERED;
        }
    };

    private long revision = 1;

    Desk(DeskFiles files, Optional<DeskState> first, List<String> told) {
        this.files = files;
        this.chronicle = new Chronicle(first);
        this.origin = first;
        this.judged = first.map(JudgedState::of);
        told.forEach(this::remember);
    }

    synchronized DeskSheet sheet() {
        return new DeskSheet(
                revision,
                OptionalLong.empty(),
                Jobs.version(),
                files.folder().toAbsolutePath().normalize().getFileName().toString(),
                files.project().getFileName().toString(),
                files.plan().getFileName().toString(),
                chronicle.undoable(),
                chronicle.redoable(),
                judged.map(this::shown),
                List.copyOf(told),
                Cautions.ALL);
    }

    private PlanSheet shown(JudgedState state) {
        PlanSheet sheet = shown.containsKey(revision)
                ? shown.get(revision).withJudged(assessed)
                : new ShownPlan(state.layout(), state.verdict()).sheet(assessed);
        shown.put(revision, sheet);
        return sheet;
    }

    /** The same with differences alone, for a window that shows an earlier revision which is still remembered. */
    synchronized DeskSheet since(long earlier, DeskSheet sheet) {
        return SheetDifference.of(earlier, Optional.ofNullable(shown.get(earlier)), sheet);
    }

    /** Where searches are counted from: what was opened, or found and taken last. */
    synchronized Optional<DeskState> origin() {
        return origin;
    }

    /** From here on the hand is counted anew. */
    synchronized void beginAnew() {
        origin = chronicle.now();
    }

    synchronized long revision() {
        return revision;
    }

    synchronized Optional<DeskState> state() {
        return chronicle.now();
    }

    /** @throws JobFailed where there is no project yet */
    synchronized JudgedState judged() {
        return judged.orElseThrow(() -> new JobFailed(
                JobFailed.Reason.REQUEST,
                "there is no project in this folder yet. Paste an equipment list under Loads, or put a project's file"
                        + " there."));
    }

    /** @param words what the change is, as it is offered to be taken back */
    synchronized void change(String words, Function<JudgedState, DeskState> change) {
        put(words, change.apply(judged()));
    }

    /**
     * Changes what was seen, and nothing else.
     *
     * @return false where it is another by now, and nothing was changed
     */
    synchronized boolean changeIf(DeskState seen, String words, Function<JudgedState, DeskState> change) {
        if (judged().state() != seen) {
            return false;
        }
        change(words, change);
        return true;
    }

    synchronized void changePlan(String words, Function<JudgedState, Plan> change) {
        change(words, now -> now.state().withPlan(byHand(change.apply(now))));
    }

    /** What a search has made of it is no longer all of it. */
    private static Plan byHand(Plan plan) {
        return plan.with().madeBy(Optional.empty()).build();
    }

    synchronized void put(String words, DeskState next) {
        chronicle.add(words, next);
        show();
    }

    /** @throws JobFailed where there is nothing to take back */
    synchronized void undo() {
        if (!chronicle.undo()) {
            throw new JobFailed(JobFailed.Reason.REQUEST, "there is nothing to take back.");
        }
        show();
    }

    /** @throws JobFailed where nothing was taken back */
    synchronized void redo() {
        if (!chronicle.redo()) {
            throw new JobFailed(JobFailed.Reason.REQUEST, "nothing was taken back that could be made again.");
        }
        show();
    }

    private void show() {
        judged = chronicle
                .now()
                .map(next -> judged.map(before -> before.next(next)).orElseGet(() -> JudgedState.of(next)));
        assessed = Optional.empty();
        revision++;
        tell("changed", "");
    }

    /** The assessment of a state, if that still lies on the desk. */
    synchronized void assessed(DeskState of, String headline) {
        if (chronicle.now().filter(now -> now == of).isPresent()) {
            assessed = Optional.of(headline);
            tell("judged", headline);
        }
    }

    /** Something that whoever works here should know. */
    synchronized void tell(String words) {
        remember(words);
        tell("told", words);
    }

    private void remember(String words) {
        told.add(words);
        if (told.size() > MOST_TOLD) {
            told.remove(0);
        }
    }

    void tell(String kind, String words) {
        DeskEvent event = new DeskEvent(kind, revision(), words);
        listeners.forEach(each -> each.accept(event));
    }

    /** @return stops listening */
    Runnable listen(Consumer<DeskEvent> listener) {
        listeners.add(listener);
        return () -> listeners.remove(listener);
    }
}
