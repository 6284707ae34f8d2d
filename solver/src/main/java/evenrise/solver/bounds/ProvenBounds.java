package evenrise.solver.bounds;

import evenrise.model.plan.Bounds;
import evenrise.model.plan.BoundsBuilder;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.PlantPart;
import evenrise.model.project.Project;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Objective;
import java.util.Arrays;
import java.util.function.BooleanSupplier;
import java.util.function.Consumer;

/** The bounds of a project, each the best of several arguments. The same project always has the same bounds. */
public final class ProvenBounds {
    /** How often plans are split into parts: a few seconds for thousands of loads. */
    private static final int EFFORT = 60;

    /** Of projects with more loads than this, for which a split takes most of a second. */
    private static final int MANY_LOADS = 6000;

    private static final int EFFORT_FOR_MANY = 6;

    /** How often plans of a plant are split by the end of the longest sequence. */
    private static final int SPLITS_OF_PLANT = 10;

    private static final int MANY_LOADS_OF_PLANT = 4000;

    private ProvenBounds() {}

    /** Time: effort × rounds × (half-lives + windows) × instants, and effort × loads × instants. */
    public static Bounds of(Project project) {
        return of(project, () -> false);
    }

    /**
     * The same for whoever cannot wait: what is proven when it is told to stop, which may be less.
     *
     * @param stop asked between two steps, each of which takes up to a second on thousands of loads
     */
    public static Bounds of(Project project, BooleanSupplier stop) {
        return of(project, 0, stop);
    }

    /**
     * The same where more is known of the peak.
     *
     * @param leastPeakAmps what the peak of no plan that keeps every rule stays below
     */
    public static Bounds of(Project project, double leastPeakAmps, BooleanSupplier stop) {
        return of(project, leastPeakAmps, stop, early -> {});
    }

    /**
     * The same for whoever wants to hear at once what takes little work.
     *
     * @param early told, before the longer arguments begin, what the short ones have proven
     */
    public static Bounds of(Project project, double leastPeakAmps, BooleanSupplier stop, Consumer<Bounds> early) {
        if (!PlantPart.of(project).isEmpty()) {
            return ofPlant(project, leastPeakAmps, stop, early);
        }
        BoundedProject subject = new BoundedProject(project);
        int effort = project.loads().size() > MANY_LOADS ? EFFORT_FOR_MANY : EFFORT;
        ObjectiveWeights weights = project.objective();
        LeastDeviation deviation = new LeastDeviation(project);
        double supply = deviation.supplyAmps();
        double panels = deviation.panelsAmps();
        double duration = new ShortestDuration(subject).seconds();
        double rest = Objective.of(weights, 0, supply, panels, 0, FewestBoards.of(project));
        double alone = new SharedPhases(subject).amps(Math.max(leastPeakAmps, new ThresholdPeak(subject).amps()));
        BoundsBuilder known = Bounds.builder().supplyDeviationAmps(supply).panelDeviationsAmps(panels);
        early.accept(known.peakInrushAmps(alone)
                .durationSeconds(duration)
                .objective(weights.peakInrush() * alone + weights.duration() * duration + rest)
                .build());
        double peak = Math.max(alone, new JointMinimum(subject, alone, effort, stop).of(1, 0));
        if (project.supply().inrushLimitAmps().isPresent()) {
            duration = Math.max(duration, new JointMinimum(subject, peak, effort / 4, stop).of(0, 1));
        }
        double together = weights.peakInrush() * weights.duration() > 0
                ? new JointMinimum(subject, peak, effort, stop).of(weights.peakInrush(), weights.duration())
                : 0;
        double apart = weights.peakInrush() * peak + weights.duration() * duration;
        return known.objective(Math.max(together, apart) + rest)
                .peakInrushAmps(peak)
                .durationSeconds(duration)
                .build();
    }

    /**
     * Of a plant with further nodes, systems or boards of other kinds: what holds whatever they are. Nothing is said of
     * deviations.
     */
    private static Bounds ofPlant(Project project, double leastPeakAmps, BooleanSupplier stop, Consumer<Bounds> early) {
        Seats seats = new Seats(project);
        SourcePeaks peaks = new SourcePeaks(project, seats);
        ObjectiveWeights weights = project.objective();
        double duration = SettledDuration.seconds(project);
        double rest = Objective.of(weights, 0, 0, 0, 0, fewestBoards(project));
        double sum = Math.max(leastPeakAmps, peaks.sumAmps());
        BoundsBuilder known =
                Bounds.builder().supplyDeviationAmps(0).panelDeviationsAmps(0).durationSeconds(duration);
        early.accept(known.objective(weights.peakInrush() * sum + weights.duration() * duration + rest)
                .peakInrushAmps(max(leastPeakAmps, peaks.amps(Distribution.SUPPLY)))
                .build());
        int splits = project.loads().size() > MANY_LOADS_OF_PLANT ? 0 : SPLITS_OF_PLANT;
        PlantMinimum.Found found = new PlantMinimum(new PlantLoads(project, seats), splits, stop)
                .of(weights.peakInrush(), weights.duration(), sum);
        double apart = weights.peakInrush() * found.sourcesAmps() + weights.duration() * duration;
        return known.objective(Math.max(apart, found.objective()) + rest)
                .peakInrushAmps(max(leastPeakAmps, peaks.amps(Distribution.SUPPLY), found.supplyAmps()))
                .build();
    }

    private static double max(double... amps) {
        return Arrays.stream(amps).max().orElse(0);
    }

    /** Boards until their outputs suffice for all loads that need one, whatever else they may share. */
    public static int fewestBoards(Project project) {
        return PlantPart.of(project).isEmpty() ? FewestBoards.of(project) : FewestBoards.byOutputs(project);
    }

    /** The same where boards are a part of what is known of a plant. */
    public static double objectiveOfPlant(Project project, Bounds bounds, double allButDurationAmps) {
        double rest = Objective.of(project.objective(), 0, 0, 0, bounds.durationSeconds(), 0);
        return Math.max(bounds.objective(), allButDurationAmps + rest);
    }

    /**
     * What no objective stays below, in ampere-equivalents, by what is known of its other parts.
     *
     * @param bounds of the same project
     * @param peakAndDeviationsAmps what these parts stay below in no plan that keeps every rule, by their weights
     */
    public static double objective(Project project, Bounds bounds, double peakAndDeviationsAmps) {
        double rest = Objective.of(project.objective(), 0, 0, 0, bounds.durationSeconds(), fewestBoards(project));
        return Math.max(bounds.objective(), peakAndDeviationsAmps + rest);
    }

    /** Whether the panels' deviations add up to at least the supply's, in every plan. */
    public static boolean panelsDeviateAsMuch(Project project) {
        return new LeastDeviation(project).panelsAddUpToTheSupply();
    }

    /**
     * Whether every load comes on no earlier than all of an earlier role, to the instant: else comparisons of times may
     * forgive one that comes a little before.
     */
    public static boolean tellsRolesApart(Project project) {
        return new BoundedProject(project).tellsRolesApart();
    }
}
