package evenrise.solver.app;

import evenrise.model.plan.Bounds;
import evenrise.model.plan.Plan;
import evenrise.model.project.Project;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.BoundSource;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PhaseShares;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.SharperBounds;
import java.util.Optional;
import java.util.ServiceLoader;
import java.util.function.Consumer;

/** Bounds of every project by short arguments and, where the part that proves sharper ones is installed, by it. */
final class Proofs implements BoundSource {
    /** Nothing native is loaded for a project that it would leave alone. */
    private final Optional<SharperBounds.Work> sharper;

    private final Consumer<String> note;

    private volatile Bounds bounds;
    private volatile boolean stopped;
    private boolean hasFailed;

    /** @param note takes what is to be said once, such as why nothing more can be proven */
    Proofs(PlanningRequest request, Consumer<String> note) {
        this(request, note, ServiceLoader.load(SharperBounds.class).findFirst());
    }

    Proofs(PlanningRequest request, Consumer<String> note, Optional<SharperBounds> part) {
        this.note = note;
        if (part.isEmpty()) {
            note.accept("nothing is proven beyond the usual bounds: this package is without the part that proves more"
                    + " of small projects (evenrise-proofs)");
        }
        sharper = part.filter(each -> each.suit(request.project())).map(each -> each.on(request, note));
    }

    @Override
    public void work(Project project, Budget budget, long seed, Incumbent incumbent) {
        Bounds usual = ProvenBounds.of(project, 0, () -> stopped, early -> {
            bounds = early;
            incumbent.bound(early.objective());
            begin(early, incumbent);
        });
        if (usual.objective() > bounds.objective()) {
            incumbent.bound(usual.objective());
        }
        bounds = usual;
        if (!hasFailed) {
            sharper.ifPresent(part -> part.sharpen(bounds, better -> bounds = better, incumbent));
        }
    }

    @Override
    public PhaseShares shares() {
        try {
            return sharper.map(SharperBounds.Work::shares).orElse(PhaseShares.NONE);
        } catch (RuntimeException | Error e) {
            hasFailed = true;
            failed(e);
            return PhaseShares.NONE;
        }
    }

    @Override
    public boolean takesAProcessor() {
        return sharper.map(SharperBounds.Work::takesAProcessor).orElse(false);
    }

    /** The short arguments that it stands between are not lost where the part fails. */
    private void begin(Bounds early, Incumbent incumbent) {
        try {
            sharper.filter(part -> !hasFailed).ifPresent(part -> part.begin(early, incumbent));
        } catch (RuntimeException | Error e) {
            hasFailed = true;
            failed(e);
        }
    }

    @Override
    public void failed(Throwable why) {
        note.accept("the proofs ended early by a failure (" + why
                + "). The plan is whole; what was proven before it stands, no more.");
    }

    /** No plan that keeps every rule takes fewer moves from the one as built; 0 where nothing is proven. */
    static int leastMoves(PlanningRequest request, Plan built) {
        return ServiceLoader.load(SharperBounds.class)
                .findFirst()
                .map(part -> part.leastMoves(request, built))
                .orElse(0);
    }

    Optional<Bounds> bounds() {
        return Optional.ofNullable(bounds);
    }

    @Override
    public void stop() {
        stopped = true;
        sharper.ifPresent(SharperBounds.Work::stop);
    }
}
