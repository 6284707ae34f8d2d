package evenrise.solver.app;

import java.nio.file.Path;
import java.util.Optional;

/**
 * A plan is to be found for a project.
 *
 * @param from an earlier plan to start at
 * @param target where the plan is written
 * @param resumes whether to go on from what an earlier search for the target left when it was cut off
 * @param placesAll whether a place that breaks a rating is better than none
 * @param few how far from the earlier plan; only where there is one
 * @param patience when a search for a time may end before it; not where moves are counted
 * @param documents of the plan, written too
 * @param manySeeds by which seeds the plan is searched for, of which the best is kept, and where; empty for one search here
 * @param changes sent back from a page of {@code from}: without a time or moves they are all that is done, else the search
 *     goes on from there with what was moved pinned
 * @since 0.1.0
 */
public record PlanRequest(
        Source project,
        Optional<Source> from,
        Effort effort,
        PlanTarget target,
        boolean resumes,
        boolean placesAll,
        FewMoves few,
        Patience patience,
        Optional<DocumentSet> documents,
        Optional<ManySeeds> manySeeds,
        Optional<Source> changes) {

    /** Searched as long as is usual, and written nowhere. */
    public static PlanRequest of(Source project) {
        return new PlanRequest(
                project,
                Optional.empty(),
                Effort.USUAL,
                PlanTarget.NONE,
                false,
                false,
                FewMoves.ANY,
                Patience.ALL,
                Optional.empty(),
                Optional.empty(),
                Optional.empty());
    }

    /** The same for a project's file. */
    public static PlanRequest of(Path project) {
        return of(Source.file(project));
    }

    public PlanRequest withFrom(Source value) {
        return new PlanRequest(
                project,
                Optional.of(value),
                effort,
                target,
                resumes,
                placesAll,
                few,
                patience,
                documents,
                manySeeds,
                changes);
    }

    public PlanRequest withEffort(Effort value) {
        return new PlanRequest(
                project, from, value, target, resumes, placesAll, few, patience, documents, manySeeds, changes);
    }

    public PlanRequest withTarget(PlanTarget value) {
        return new PlanRequest(
                project, from, effort, value, resumes, placesAll, few, patience, documents, manySeeds, changes);
    }

    public PlanRequest withResuming(boolean value) {
        return new PlanRequest(
                project, from, effort, target, value, placesAll, few, patience, documents, manySeeds, changes);
    }

    public PlanRequest withPlacingAll(boolean value) {
        return new PlanRequest(
                project, from, effort, target, resumes, value, few, patience, documents, manySeeds, changes);
    }

    public PlanRequest withDocuments(DocumentSet value) {
        return new PlanRequest(
                project,
                from,
                effort,
                target,
                resumes,
                placesAll,
                few,
                patience,
                Optional.of(value),
                manySeeds,
                changes);
    }

    /** Not further from the plan to start at. */
    public PlanRequest withFewMoves(FewMoves value) {
        return new PlanRequest(
                project, from, effort, target, resumes, placesAll, value, patience, documents, manySeeds, changes);
    }

    /** No longer than asked for. */
    public PlanRequest withPatience(Patience value) {
        return new PlanRequest(
                project, from, effort, target, resumes, placesAll, few, value, documents, manySeeds, changes);
    }

    /** By these seeds, or on these machines, and the best of what they find. */
    public PlanRequest withManySeeds(ManySeeds value) {
        return new PlanRequest(
                project,
                from,
                effort,
                target,
                resumes,
                placesAll,
                few,
                patience,
                documents,
                Optional.of(value),
                changes);
    }

    /** With the moves of a change file put down on the plan to start at. */
    public PlanRequest withChanges(Source value) {
        return new PlanRequest(
                project,
                from,
                effort,
                target,
                resumes,
                placesAll,
                few,
                patience,
                documents,
                manySeeds,
                Optional.of(value));
    }
}
