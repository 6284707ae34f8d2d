package evenrise.solver.app;

import evenrise.model.plan.Bounds;
import evenrise.model.plan.Plan;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Proof;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.BoundSource;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Consumer;

/** Proves for a time how near a given plan is to the best there could be. */
final class LongerProof implements BoundSource.Incumbent {
    private final Layout layout;
    private final PlanningRequest request;
    private final Proofs proofs;
    private final KeptProof kept;
    private final Consumer<String> note;
    private double provenAmps;
    private double betterAmps = Double.POSITIVE_INFINITY;

    /**
     * @param kept what was proven before, and where what is proven now is kept
     * @param note takes what is to be said once, such as a better plan that turned up
     */
    LongerProof(Layout layout, Effort effort, KeptProof kept, Consumer<String> note) {
        this.layout = layout;
        this.kept = kept;
        this.note = note;
        this.provenAmps = kept.earlierAmps();
        request = new PlanningRequest(
                layout.project(), Optional.empty(), effort.budget(), kept.seed(effort.seed()), effort.sideBySide());
        proofs = new Proofs(request, note);
    }

    /** Works until all is proven that can be, the time is used or {@link #stop} is called. */
    Bounds bounds() {
        Thread prover = new Thread(this::prove, "proofs");
        prover.setDaemon(true);
        prover.start();
        try {
            prover.join(((Budget.Time) request.budget()).limit().toMillis());
            stop();
            prover.join();
        } catch (InterruptedException e) {
            stop();
            Thread.currentThread().interrupt();
        }
        tellOfABetterPlan();
        // Also where nothing was gained: the next proof is another one.
        kept.keep(proven());
        Bounds usual = proofs.bounds().orElseGet(() -> ProvenBounds.of(request.project()));
        return usual.withObjective(Math.max(usual.objective(), proven()));
    }

    /** Ends the work soon; may be called from any thread. */
    void stop() {
        proofs.stop();
    }

    private void prove() {
        try {
            proofs.work(request.project(), request.budget(), request.seed(), this);
        } catch (RuntimeException | Error e) {
            proofs.failed(e);
        }
    }

    private synchronized void tellOfABetterPlan() {
        double own = judged(layout.plan()).metrics().objective();
        if (betterAmps < own - Proof.PROVEN_AMPS) {
            note.accept(String.format(
                    Locale.ROOT,
                    "while proving, a plan of %.2f A equiv. turned up, better than this one of %.2f. Search on with"
                            + " 'evenrise plan --from'.",
                    betterAmps,
                    own));
        }
    }

    private Verdict judged(Plan plan) {
        return Referee.judge(request.project(), PlanFinisher.timed(request.project(), plan));
    }

    @Override
    public synchronized double proven() {
        return provenAmps;
    }

    @Override
    public synchronized void bound(double objectiveAmps) {
        if (objectiveAmps > provenAmps) {
            provenAmps = objectiveAmps;
            kept.keep(provenAmps);
        }
    }

    @Override
    public void plan(Plan plan) {
        Verdict verdict = judged(plan);
        if (verdict.violations().isEmpty()) {
            met(verdict.metrics().objective());
        }
    }

    private synchronized void met(double objectiveAmps) {
        betterAmps = Math.min(betterAmps, objectiveAmps);
    }

    @Override
    public Optional<Plan> best() {
        return Optional.of(PlanFinisher.timed(request.project(), layout.plan()))
                .filter(timed -> judged(timed).violations().isEmpty());
    }
}
