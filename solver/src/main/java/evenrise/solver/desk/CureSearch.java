package evenrise.solver.desk;

import evenrise.model.contract.Harmless;
import evenrise.solver.app.CancelSwitch;
import evenrise.solver.app.DraftedCure;
import evenrise.solver.app.JobControl;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.JobListener;
import evenrise.solver.app.JobProgress;
import evenrise.solver.app.ReworkDraft;
import evenrise.solver.app.SearchStanding;
import evenrise.solver.desk.CureAnswers.CuresView;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.function.Function;
import java.util.function.Supplier;

/** One search for cures in the background; after it, what the work towards each costs, one after another. */
final class CureSearch {
    /** The kind of what windows are told. */
    static final String TOLD = "cures";

    private final Desk desk;
    private final Supplier<List<String>> kept;
    private Optional<CancelSwitch> running = Optional.empty();
    private Optional<DeskState> of = Optional.empty();
    private Optional<ReworkDraft> found = Optional.empty();
    private Optional<JobProgress> progress = Optional.empty();
    private List<String> failure = List.of();
    private final List<String> notes = new ArrayList<>();
    private boolean isMeasured;
    private int searches;

    /** @param kept names of plans that work may lead to */
    CureSearch(Desk desk, Supplier<List<String>> kept) {
        this.desk = desk;
        this.kept = kept;
    }

    /** @throws JobFailed where one is running */
    synchronized void begin(DeskState state, boolean measures, Function<JobControl, ReworkDraft> search) {
        if (running.isPresent()) {
            throw new JobFailed(JobFailed.Reason.REQUEST, "a search for cures is running. Stop it first.");
        }
        CancelSwitch cancel = new CancelSwitch();
        of = Optional.of(state);
        running = Optional.of(cancel);
        found = Optional.empty();
        progress = Optional.empty();
        failure = List.of();
        isMeasured = measures;
        notes.clear();
        searches++;
        int number = searches;
        Thread thread = new Thread(() -> run(search, new JobControl(new Hearing(), cancel), number), "cures");
        thread.setDaemon(true);
        thread.start();
    }

    private final class Hearing implements JobListener {
        @Override
        public void progress(JobProgress now) {
            synchronized (CureSearch.this) {
                progress = Optional.of(now);
            }
            desk.tell(TOLD, "");
        }

        @Override
        public void note(String text) {
            synchronized (CureSearch.this) {
                notes.add(Harmless.shown(text));
            }
        }
    }

    private void run(Function<JobControl, ReworkDraft> search, JobControl control, int number) {
        Optional<ReworkDraft> result = Optional.empty();
        List<String> why = List.of();
        try {
            result = Optional.of(search.apply(control));
        } catch (JobFailed e) {
            why = e.messages().stream().map(Harmless::shown).toList();
        } catch (RuntimeException e) {
            why = List.of("this should not have happened: " + Harmless.shown(String.valueOf(e)));
        }
        synchronized (this) {
            found = result;
            failure = why;
            running = Optional.empty();
        }
        desk.tell(TOLD, "");
        result.ifPresent(draft -> order(draft, number));
    }

    /** Until another search begins. */
    private void order(ReworkDraft draft, int number) {
        for (DraftedCure each : draft.cures()) {
            synchronized (this) {
                if (searches != number) {
                    return;
                }
            }
            draft.order(each.number());
            desk.tell(TOLD, "");
        }
    }

    /** Ends soon with the best that it has. */
    void stop() {
        Optional<CancelSwitch> cancel;
        synchronized (this) {
            cancel = running;
        }
        cancel.ifPresent(CancelSwitch::cancel);
    }

    /**
     * What the last search found.
     *
     * @param of what lay on the desk when it began
     */
    record Found(int search, ReworkDraft draft, DeskState of) {
        /** What would lie there with a cure done: with what was measured, and with what its work makes of the plan. */
        DeskState done(int cure) {
            return new DeskState(draft.stated(), of.notes(), draft.plan(cure));
        }
    }

    /** @throws JobFailed where there is nothing yet */
    synchronized Found found() {
        return new Found(
                searches,
                found.orElseThrow(() -> new JobFailed(
                        JobFailed.Reason.REQUEST,
                        "no search has found a cure yet. Begin one, or stop the one that runs.")),
                of.orElseThrow());
    }

    synchronized CuresView view() {
        Optional<SearchStanding> standing = progress.flatMap(JobProgress::search);
        boolean isOfNow =
                of.isPresent() && desk.state().filter(each -> each == of.get()).isPresent();
        return new CuresView(
                running.isPresent() ? "running" : found.isPresent() ? "found" : failure.isEmpty() ? "none" : "failed",
                searches,
                progress.map(JobProgress::elapsedSeconds).orElse(0.0),
                standing.map(SearchStanding::moves).orElse(0L),
                standing.map(each -> OptionalDouble.of(each.objective())).orElse(OptionalDouble.empty()),
                standing.map(each -> OptionalInt.of(each.hardViolations())).orElse(OptionalInt.empty()),
                isOfNow,
                failure.isEmpty() ? progress.map(each -> List.of(each.words())).orElse(List.of()) : failure,
                told(),
                found.map(ReworkDraft::state).orElse(""),
                found.map(ReworkDraft::leastMoves).orElse(0),
                found.map(ReworkDraft::asBuilt),
                found.map(ReworkDraft::cures).orElse(List.of()),
                found.map(ReworkDraft::chosen).orElse(0),
                isMeasured,
                kept.get());
    }

    private List<String> told() {
        List<String> all = new ArrayList<>(notes);
        found.map(ReworkDraft::notes).ifPresent(all::addAll);
        return all;
    }
}
