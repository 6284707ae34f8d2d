package evenrise.solver.desk;

import evenrise.model.event.EntryKind;
import evenrise.model.event.ScriptEvent;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;

/** What windows are told of happenings and of chance. */
public final class RehearsalAnswers {
    private RehearsalAnswers() {}

    /**
     * What a happening of the script came to.
     *
     * @param atSeconds when it happened; empty where nothing began with it
     */
    public record HappenedView(OptionalDouble atSeconds, String text) {}

    /** Current of the node on one phase at each instant at which something closes, opens or returns. */
    public record ReadingsView(String phase, List<Double> seconds, List<Double> drawnAmps, List<Double> boundAmps) {}

    /** One thing that happened. */
    public record StepView(
            double atSeconds,
            EntryKind kind,
            Optional<String> load,
            String text,
            int loadsOn,
            String shown,
            boolean locked) {}

    /**
     * What follows from one happening until the next, at the node.
     *
     * @param peakAmps as breakers really closed
     * @param boundAmps the bound at nominal voltage, with the timing tolerance
     */
    public record PartView(
            double fromSeconds,
            double toSeconds,
            String text,
            int closed,
            int opened,
            double peakAmps,
            double peakAtSeconds,
            double boundAmps,
            OptionalDouble limitAmps) {}

    /** @param place supply, panel or node; empty where it is nowhere in particular */
    public record RemarkView(double atSeconds, boolean isBroken, String message, String place) {}

    /** A script that was played. */
    public record PlayedScript(
            double endSeconds,
            String shown,
            String node,
            List<String> nodes,
            List<HappenedView> happened,
            List<ReadingsView> readings,
            List<StepView> steps,
            List<PartView> parts,
            List<RemarkView> findings,
            int findingsInAll) {}

    /** @param names of those in the folder */
    public record ScriptsView(List<String> names) {}

    public record ScriptView(String name, List<ScriptEvent> events) {}

    /** A percentile with the interval that holds the true one with a confidence of 95 %. */
    public record PercentileView(double percent, double value, double least, double most) {}

    /**
     * How a node's peak and dip scatter.
     *
     * @param rangeAmps the plan's peak over the voltages that are drawn: no trial exceeds it
     * @param rangeBound whether that bounds the plant, too
     * @param envelopeAmps the plan's peak at nominal voltage
     */
    public record ScatterView(
            String node,
            List<PercentileView> peakAmps,
            double greatestAmps,
            double rangeAmps,
            boolean rangeBound,
            OptionalDouble limitAmps,
            double envelopeAmps,
            List<PercentileView> dipPercent,
            double deepestPercent) {}

    /** @param lines as the command tells it, with what is to be known of it */
    public record ChanceView(long revision, int trials, long seed, List<ScatterView> nodes, List<String> lines) {}

    /** @param command whose curve it is; empty where one command switches all */
    public record NodeCurve(String command, List<DeskAnswers.CurveView> phases) {}

    public record NodeCurvesView(String node, List<NodeCurve> curves) {}
}
