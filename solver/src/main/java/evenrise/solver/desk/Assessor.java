package evenrise.solver.desk;

import evenrise.model.contract.Harmless;
import evenrise.model.evaluation.Evaluation;
import evenrise.model.plan.Bounds;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.solver.app.AuditRequest;
import evenrise.solver.app.JobFailed;
import evenrise.solver.app.Jobs;
import evenrise.solver.app.Source;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.BiConsumer;

/**
 * Computes bounds and the electrical checks of what lies on the desk, beside the work: they take their time, and no change
 * waits for them. Begun only when the hand has rested for a moment, or they would take the processor from the next change.
 */
final class Assessor implements AutoCloseable {
    private static final long REST_MILLIS = 250;
    private static final long PATIENCE_SECONDS = 20;

    private final Desk desk;
    private final Jobs jobs;
    private final BiConsumer<DeskState, Plan> done;
    private final ScheduledExecutorService thread = Executors.newSingleThreadScheduledExecutor(task -> {
        Thread own = new Thread(task, "assessor");
        own.setDaemon(true);
        return own;
    });
    private ScheduledFuture<?> next;
    private DeskState complete;
    /** What no plan can stay below depends on the project alone. */
    private Project bounded;

    private Bounds bounds;

    /** @param done takes a state and its plan with everything that follows from it */
    Assessor(Desk desk, Jobs jobs, BiConsumer<DeskState, Plan> done) {
        this.desk = desk;
        this.jobs = jobs;
        this.done = done;
    }

    /** Soon, of what lies on the desk then. */
    synchronized void wake() {
        if (next != null) {
            next.cancel(false);
        }
        next = thread.schedule(this::assess, REST_MILLIS, TimeUnit.MILLISECONDS);
    }

    private void assess() {
        DeskState now = desk.state().orElse(null);
        if (now == null || now == complete) {
            return;
        }
        complete = now;
        try {
            Plan whole = evaluation(now).plan();
            desk.assessed(now, whole.assessment().orElseThrow().headline());
            done.accept(now, whole);
        } catch (JobFailed e) {
            desk.tell("the plan could not be judged: " + Harmless.shown(e.getMessage()));
        } catch (RuntimeException e) {
            desk.tell("the plan could not be judged, which should not have happened: "
                    + Harmless.shown(String.valueOf(e)) + " It is a bug.");
        }
    }

    private Evaluation evaluation(DeskState state) {
        if (state.project() == bounded) {
            return Evaluation.of(Layout.of(state.project(), state.plan()), () -> bounds);
        }
        Evaluation evaluation = jobs.audit(new AuditRequest(Source.of(state.project()), Source.of(state.plan())))
                .evaluation();
        bounds = evaluation.bounds();
        bounded = state.project();
        return evaluation;
    }

    /** Returns when what lies on the desk is judged, or it takes too long. */
    @Override
    public void close() {
        thread.execute(this::assess);
        thread.shutdown();
        try {
            if (!thread.awaitTermination(PATIENCE_SECONDS, TimeUnit.SECONDS)) {
                thread.shutdownNow();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
