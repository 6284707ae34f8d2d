package evenrise.solver.app;

import java.nio.file.Path;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;

/**
 * A plan as built is to be cured with few changes.
 *
 * @param plan as built
 * @param measured readings of a clamp meter or a logger, a CSV table
 * @param folder for the front, its plans and the work; made where there is none
 * @param perMoveAmps what one move costs, in ampere-equivalents of the objective
 * @param maxMoves no plan with more moves is taken
 * @param deadAtOnce loads that may be locked out at once
 * @param keepsRunning whether everything stays for which a system would have to go off
 * @param night what the nights leave no room for
 * @param target the plan to work towards; searched for where there is none
 * @param was the project as it was when the plan was built, which says what gear draws that is gone
 * @param spares breakers that feed nothing
 * @param resumes whether it goes on from what an earlier one into this folder found that was cut off
 * @param manySeeds by which seeds plans are searched for, and where; empty for one search here
 * @param sheets what stands on the sheets that are printed
 * @since 0.1.0
 */
public record ReworkRequest(
        Source project,
        Source plan,
        Optional<Path> measured,
        Path folder,
        Effort effort,
        OptionalDouble perMoveAmps,
        OptionalInt maxMoves,
        int deadAtOnce,
        boolean keepsRunning,
        NightOptions night,
        Optional<Source> target,
        Optional<Source> was,
        SpareOptions spares,
        boolean resumes,
        Optional<ManySeeds> manySeeds,
        SheetOptions sheets) {
    public ReworkRequest {
        if (deadAtOnce < 1) {
            throw new IllegalArgumentException("deadAtOnce is " + deadAtOnce + ", expected at least 1");
        }
        if (maxMoves.isPresent() && maxMoves.getAsInt() < 0) {
            throw new IllegalArgumentException("maxMoves is " + maxMoves.getAsInt() + ", expected at least 0");
        }
        if (perMoveAmps.isPresent() && !(perMoveAmps.getAsDouble() >= 0 && perMoveAmps.getAsDouble() <= 1e9)) {
            throw new IllegalArgumentException("perMoveAmps is " + perMoveAmps.getAsDouble() + ", expected 0 to 1e9");
        }
    }

    /** The cure with the fewest moves, one load dead at once. */
    public static ReworkRequest of(Path project, Path built, Path folder) {
        return new ReworkRequest(
                Source.file(project),
                Source.file(built),
                Optional.empty(),
                folder,
                Effort.USUAL,
                OptionalDouble.empty(),
                OptionalInt.empty(),
                1,
                false,
                NightOptions.NONE,
                Optional.empty(),
                Optional.empty(),
                SpareOptions.NONE,
                false,
                Optional.empty(),
                SheetOptions.usual());
    }

    public ReworkRequest withNight(NightOptions value) {
        return new ReworkRequest(
                project,
                plan,
                measured,
                folder,
                effort,
                perMoveAmps,
                maxMoves,
                deadAtOnce,
                keepsRunning,
                value,
                target,
                was,
                spares,
                resumes,
                manySeeds,
                sheets);
    }

    /** The order of work from the plan as built to another, whatever it is. */
    public ReworkRequest withTarget(Source value) {
        return new ReworkRequest(
                project,
                plan,
                measured,
                folder,
                effort,
                perMoveAmps,
                maxMoves,
                deadAtOnce,
                keepsRunning,
                night,
                Optional.of(value),
                was,
                spares,
                resumes,
                manySeeds,
                sheets);
    }

    public ReworkRequest withEffort(Effort value) {
        return new ReworkRequest(
                project,
                plan,
                measured,
                folder,
                value,
                perMoveAmps,
                maxMoves,
                deadAtOnce,
                keepsRunning,
                night,
                target,
                was,
                spares,
                resumes,
                manySeeds,
                sheets);
    }

    /** Beside the project as it was when the plan was built. */
    public ReworkRequest withWas(Source value) {
        return new ReworkRequest(
                project,
                plan,
                measured,
                folder,
                effort,
                perMoveAmps,
                maxMoves,
                deadAtOnce,
                keepsRunning,
                night,
                target,
                Optional.of(value),
                spares,
                resumes,
                manySeeds,
                sheets);
    }

    /** With breakers that feed nothing. */
    public ReworkRequest withSpares(SpareOptions value) {
        return new ReworkRequest(
                project,
                plan,
                measured,
                folder,
                effort,
                perMoveAmps,
                maxMoves,
                deadAtOnce,
                keepsRunning,
                night,
                target,
                was,
                value,
                resumes,
                manySeeds,
                sheets);
    }

    /** Going on from what an earlier one into this folder found that was cut off. */
    public ReworkRequest resuming() {
        return new ReworkRequest(
                project,
                plan,
                measured,
                folder,
                effort,
                perMoveAmps,
                maxMoves,
                deadAtOnce,
                keepsRunning,
                night,
                target,
                was,
                spares,
                true,
                manySeeds,
                sheets);
    }

    /** By these seeds, or on these machines. */
    public ReworkRequest withManySeeds(ManySeeds value) {
        return new ReworkRequest(
                project,
                plan,
                measured,
                folder,
                effort,
                perMoveAmps,
                maxMoves,
                deadAtOnce,
                keepsRunning,
                night,
                target,
                was,
                spares,
                resumes,
                Optional.of(value),
                sheets);
    }

    /** With another revision, date or title block on the sheets that are printed. */
    public ReworkRequest withSheets(SheetOptions value) {
        return new ReworkRequest(
                project,
                plan,
                measured,
                folder,
                effort,
                perMoveAmps,
                maxMoves,
                deadAtOnce,
                keepsRunning,
                night,
                target,
                was,
                spares,
                resumes,
                manySeeds,
                value);
    }
}
