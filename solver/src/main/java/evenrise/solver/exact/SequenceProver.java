package evenrise.solver.exact;

import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Project;
import evenrise.solver.engine.Budget;

/** Bounds what duration and boards of small projects cost together, by {@link SequenceProgram}. */
final class SequenceProver {
    private static final double PART_OF_THE_TIME = 0.25;
    private static final double MOST_SECONDS = 10;

    private final ProgramBound bound = new ProgramBound();

    /**
     * What duration and boards, by their weights in the objective, stay below in no plan that keeps every rule and takes
     * no longer than {@code mostSeconds}; 0 where nothing is proven.
     *
     * @param budget of the search: the part of it that is used here is small
     */
    double amps(Project project, double mostSeconds, Budget budget, long seed) {
        ObjectiveWeights weights = project.objective();
        if (weights.duration() <= 0 && weights.boards() <= 0) {
            return 0;
        }
        return bound.amps(
                () -> {
                    SequenceProgram program = new SequenceProgram(project, mostSeconds);
                    return new ProgramBound.Made(program.model(), program.minimize());
                },
                ExactEffort.beside(budget, PART_OF_THE_TIME, MOST_SECONDS, seed, 1));
    }

    /** Ends the work soon; may be called from any thread. */
    void stop() {
        bound.stop();
    }
}
