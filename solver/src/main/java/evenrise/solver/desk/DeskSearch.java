package evenrise.solver.desk;

import evenrise.model.answer.PlanDifference;
import evenrise.model.contract.Harmless;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.solver.app.CancelSwitch;
import evenrise.solver.app.Effort;
import evenrise.solver.app.FewMoves;
import evenrise.solver.app.JobControl;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.JobListener;
import evenrise.solver.app.JobProgress;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.PlanRequest;
import evenrise.solver.app.PlanResult;
import evenrise.solver.app.SearchStanding;
import evenrise.solver.app.Source;
import evenrise.solver.desk.DeskAnswers.SearchView;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/** One search in the background, begun at what lies on the desk; what it finds is put there only when somebody takes it. */
final class DeskSearch {
    private final Desk desk;
    private final Jobs jobs;
    private final Pins pins;
    private Optional<CancelSwitch> running = Optional.empty();
    private Optional<DeskState> of = Optional.empty();
    private Optional<PlanResult> found = Optional.empty();
    private Optional<JobProgress> progress = Optional.empty();
    private String failure = "";

    DeskSearch(Desk desk, Jobs jobs) {
        this.desk = desk;
        this.jobs = jobs;
        this.pins = new Pins(jobs);
    }

    /** @throws JobFailed where one is running */
    synchronized void begin(DeskRequests.Search asked) {
        if (running.isPresent()) {
            throw new JobFailed(JobFailed.Reason.REQUEST, "a search is running. Stop it first.");
        }
        DeskState state = desk.judged().state();
        CancelSwitch cancel = new CancelSwitch();
        PlanRequest request = request(state, asked);
        of = Optional.of(state);
        running = Optional.of(cancel);
        found = Optional.empty();
        progress = Optional.empty();
        failure = "";
        Thread thread = new Thread(() -> search(request, cancel), "search");
        thread.setDaemon(true);
        thread.start();
    }

    private PlanRequest request(DeskState state, DeskRequests.Search asked) {
        Project project = asked.aroundHand() ? heldByHand(state) : state.project();
        PlanRequest bare = PlanRequest.of(Source.of(project)).withEffort(effort(asked));
        // From a plan without a single load nothing is to be learnt.
        boolean isBlank = state.plan().assignments().isEmpty();
        PlanRequest from = isBlank ? bare : bare.withFrom(Source.of(state.plan()));
        return asked.mostMoved().isPresent() && !isBlank
                ? from.withFewMoves(FewMoves.most(asked.mostMoved().getAsInt()))
                : from;
    }

    /** With what was moved by hand pinned, for this search alone. */
    private Project heldByHand(DeskState state) {
        List<String> moved = desk.origin().stream()
                .flatMap(origin -> PlanDifference.of(timed(origin), timed(state)).loads().stream())
                .filter(each -> each.now().isPresent())
                .map(PlanDifference.LoadChange::load)
                .toList();
        return moved.isEmpty()
                ? state.project()
                : pins.pinned(state, new DeskRequests.Pin(true, false, List.of(), List.of(), List.of(), moved));
    }

    private static Plan timed(DeskState state) {
        return PlanFinisher.timed(state.project(), state.plan());
    }

    private static Effort effort(DeskRequests.Search asked) {
        if (asked.moves().isPresent()) {
            return Effort.ofMoves((long) asked.moves().getAsDouble());
        }
        return asked.timeSeconds().isPresent()
                ? Effort.ofTime(
                        Duration.ofMillis((long) Math.ceil(asked.timeSeconds().getAsDouble() * 1000)))
                : Effort.USUAL;
    }

    private void search(PlanRequest request, CancelSwitch cancel) {
        JobListener listener = new JobListener() {
            @Override
            public void progress(JobProgress now) {
                synchronized (DeskSearch.this) {
                    progress = Optional.of(now);
                }
                desk.tell("search", "");
            }
        };
        Optional<PlanResult> result = Optional.empty();
        String why = "";
        try {
            result = Optional.of(jobs.plan(request, new JobControl(listener, cancel)));
        } catch (JobFailed e) {
            why = Harmless.shown(e.getMessage());
        } catch (RuntimeException e) {
            why = "this should not have happened: " + Harmless.shown(String.valueOf(e));
        }
        synchronized (this) {
            found = result;
            failure = why;
            running = Optional.empty();
        }
        desk.tell("search", "");
    }

    /** Ends soon with the best that it has. */
    void stop() {
        Optional<CancelSwitch> cancel;
        synchronized (this) {
            cancel = running;
        }
        cancel.ifPresent(CancelSwitch::cancel);
    }

    /** @throws JobFailed where nothing was found, or the project is another by now */
    void take() {
        PlanResult result;
        DeskState asked;
        synchronized (this) {
            result = found.orElseThrow(() -> new JobFailed(
                    JobFailed.Reason.REQUEST, "no search has found a plan yet. Begin one, or stop the one that runs."));
            asked = of.orElseThrow();
        }
        Plan plan = result.plan();
        desk.change("what the search found", now -> {
            if (now.state().project() != asked.project()) {
                throw new JobFailed(
                        JobFailed.Reason.REQUEST,
                        "the project has changed since this search began. Search again, from what is there now.");
            }
            return now.state().withPlan(plan);
        });
        desk.beginAnew();
    }

    synchronized SearchView view() {
        String state =
                running.isPresent() ? "running" : found.isPresent() ? "found" : failure.isEmpty() ? "none" : "failed";
        Optional<SearchStanding> standing = progress.flatMap(JobProgress::search);
        DeskState asked = of.orElse(null);
        boolean isOfNow =
                asked != null && desk.state().filter(each -> each == asked).isPresent();
        OptionalDouble objective =
                standing.map(each -> OptionalDouble.of(each.objective())).orElse(OptionalDouble.empty());
        return new SearchView(
                state,
                progress.map(JobProgress::elapsedSeconds).orElse(0.0),
                standing.map(SearchStanding::moves).orElse(0L),
                found.map(each -> OptionalDouble.of(
                                each.evaluation().verdict().metrics().objective()))
                        .orElse(objective),
                found.map(each -> each.evaluation().bounds().objective())
                        .orElse(standing.map(SearchStanding::provenObjective).orElse(0.0)),
                found.map(each -> OptionalDouble.of(
                                each.evaluation().verdict().metrics().peakInrushAmps()))
                        .orElse(standing.map(each -> OptionalDouble.of(each.peakInrushAmps()))
                                .orElse(OptionalDouble.empty())),
                found.map(each -> OptionalInt.of(
                                each.evaluation().verdict().violations().size()))
                        .orElse(standing.map(each -> OptionalInt.of(each.hardViolations()))
                                .orElse(OptionalInt.empty())),
                isOfNow,
                failure.isEmpty() ? progress.map(JobProgress::words).orElse("") : failure);
    }
}
