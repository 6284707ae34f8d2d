package evenrise.solver.desk;

import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Metrics;
import evenrise.model.project.Phase;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What windows are told of what might be. */
public final class SupposedAnswers {
    private SupposedAnswers() {}

    /**
     * A place for one more load.
     *
     * @param upToAmps most that it may draw on each line, rms
     * @param by what allows no more
     * @param countsFeeder whether the panel's feeder could be judged, and was
     */
    public record RoomView(
            String panel, List<Integer> slots, List<Phase> phases, double upToAmps, String by, boolean countsFeeder) {}

    /** Every place for one more load, most room first. */
    public record RoomsView(long revision, List<RoomView> places) {}

    /** Running current of a point on each line. */
    public record PointView(String id, List<Phase> phases, List<Double> runningAmps, double ratedAmps) {}

    /** @param id of the scene; empty for all loads in full use */
    public record UseView(String id, List<PointView> points) {}

    /** Full use first, then each scene in the project's order. */
    public record ScenesView(long revision, List<UseView> uses) {}

    /** @param text what happened, in words */
    public record MomentView(double atSeconds, Optional<String> load, String text, int loadsOn, String shown) {}

    /**
     * What follows from one happening until the next.
     *
     * @param boundAmps of the supply's peak at nominal voltage, with the timing tolerance
     */
    public record EpisodeView(
            double fromSeconds,
            double toSeconds,
            String text,
            int closed,
            int opened,
            double boundAmps,
            OptionalDouble limitAmps) {}

    /** @param isBroken whether it must not be; else it is to be known */
    public record FoundView(double atSeconds, boolean isBroken, String message) {}

    /** @param words what may happen, as it is written */
    public record PlayedView(
            double endSeconds,
            List<MomentView> moments,
            List<EpisodeView> episodes,
            List<FoundView> findings,
            List<String> words) {}

    /** @param impossible what no plan of that plant can keep */
    public record SupposedView(
            List<String> supposed,
            Metrics before,
            Metrics after,
            List<BrokenRule> violations,
            List<String> impossible) {}
}
