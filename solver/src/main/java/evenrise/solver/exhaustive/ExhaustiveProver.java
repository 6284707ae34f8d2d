package evenrise.solver.exhaustive;

import evenrise.model.plan.Plan;
import evenrise.model.project.BoardType;
import evenrise.model.project.Load;
import evenrise.model.project.PlantPart;
import evenrise.model.project.Project;
import evenrise.model.rules.Referee;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.BoundSource;
import evenrise.solver.exhaustive.Timetable.End;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.function.BooleanSupplier;
import java.util.stream.Stream;

/**
 * Proves the least objective of small projects with one panel by looking at whatever could cost less than the best plan that
 * is known: every sharing of phases with every timetable, as far as what both cost at least leaves room. Where a better plan
 * turns up on the way, it goes on from that one.
 */
public final class ExhaustiveProver {
    private static final int MOST_LOADS = 30;
    private static final int MOST_BOARDS = 4;

    /** Objectives that differ by less are not told apart, and as much again is left to rounding; less than what counts. */
    private static final double MARGIN_AMPS = 1e-4;

    /** So much of what is proven is looked at beyond it first; plans that cheap are few. Then a little more, and so on. */
    private static final double FIRST_BEYOND = 0.003;

    private static final double GROWTH = 1.2;

    /** What is left up to the best plan is looked at together with the rest, where it is no more than this part of that. */
    private static final double LITTLE = 0.3;

    private final SmallProject small;
    private final Steps steps;
    private final BoundSource.Incumbent incumbent;
    private final TreePlans plans;
    private double foundAmps = Double.POSITIVE_INFINITY;

    /** Whether it may prove something of such a project. */
    public static boolean suits(Project project) {
        return PlantPart.of(project).isEmpty()
                && project.panels().size() == 1
                && ProvenBounds.panelsDeviateAsMuch(project)
                && project.loads().size() <= MOST_LOADS
                && project.boards().size() <= MOST_BOARDS
                && project.supply().system().phases().size() > 1
                && project.loads().stream().anyMatch(Load::switched)
                && project.objective().peakInrush() > 0
                && project.boardTypes().stream()
                        .flatMap(type -> type.stepSeconds().stream())
                        .allMatch(seconds -> seconds > 0)
                && project.boardTypes().stream()
                        .flatMap(ExhaustiveProver::times)
                        .allMatch(seconds -> Micros.exactly(seconds).isPresent());
    }

    private static Stream<Double> times(BoardType type) {
        return Stream.concat(type.startDelaySeconds().stream(), type.stepSeconds().stream());
    }

    /**
     * @param mostSteps of work, each about a microsecond
     * @param isStopped asked every few milliseconds
     */
    public ExhaustiveProver(
            Project project,
            long mostSteps,
            BooleanSupplier isStopped,
            SlotChooser slots,
            BoundSource.Incumbent incumbent) {
        this.small = new SmallProject(project);
        this.steps = new Steps(mostSteps, isStopped);
        this.incumbent = incumbent;
        this.plans = new TreePlans(small, slots);
    }

    /** What the supply's peak stays below in no plan that keeps every rule, in amperes; 0 where the work allowed does not do. */
    public double peakAmps() {
        try {
            return hasSlots()
                    ? new SharingTree(small, steps, 1, 0)
                                    .least(Double.POSITIVE_INFINITY)
                                    .orElse(0)
                            - MARGIN_AMPS
                    : 0;
        } catch (Steps.Used e) {
            return 0;
        }
    }

    private boolean hasSlots() {
        return small.loads.stream().allMatch(load -> load.phaseSets().length > 0);
    }

    /**
     * Works until the best plan is proven to be that, until it is clear that no plan keeps every rule, or until the work
     * allowed is done.
     *
     * @param knownAmps what no objective stays below
     * @return whether nothing is left to prove
     */
    public boolean prove(double knownAmps) {
        try {
            return hasSlots() && proveFrom(knownAmps);
        } catch (Steps.Used e) {
            return false;
        }
    }

    /** Of the plans that are known and those that were found here, which not everybody keeps. */
    private double best() {
        return Math.min(foundAmps, incumbent.best().map(this::objective).orElse(Double.POSITIVE_INFINITY));
    }

    private boolean proveFrom(double knownAmps) {
        OptionalDouble share = new SharingTree(small, steps).least(best());
        if (share.isEmpty()) {
            return tell(best());
        }
        double proven = Math.max(knownAmps, share.getAsDouble());
        tell(proven);
        double width = FIRST_BEYOND * proven;
        while (best() - proven > MARGIN_AMPS && proven <= small.dearestAmps) {
            double target = best() - proven <= (1 + LITTLE) * width ? best() : proven + width;
            if (look(share.getAsDouble(), target) == Look.UNDECIDED) {
                return false;
            }
            proven = Math.min(target, best());
            tell(proven);
            width *= GROWTH;
        }
        return true;
    }

    private boolean tell(double objectiveAmps) {
        if (Double.isFinite(objectiveAmps)) {
            incumbent.bound(objectiveAmps - 2 * MARGIN_AMPS);
        }
        return true;
    }

    private enum Look {
        /** Whatever costs less than was looked for, or than the best plan by now, breaks a rule. */
        DECIDED,
        /** Something would cost less, and whether a plan of it keeps every rule is not known. */
        UNDECIDED
    }

    /** Looks at all that costs less than {@code mostAmps}. */
    private Look look(double leastShareAmps, double mostAmps) {
        List<Timetable> timetables = new Timetables(small, steps).below(mostAmps - leastShareAmps);
        if (timetables.isEmpty()) {
            return Look.DECIDED;
        }
        List<Sharing> sharings =
                new SharingTree(small, steps).below(mostAmps - timetables.get(0).leastAmps());
        TimetableBundle bundle = TimetableBundle.of(small, timetables);
        Sequences sequences = new Sequences(small, steps);
        double[] most = {mostAmps};
        for (Sharing sharing : sharings) {
            most[0] = Math.min(most[0], best());
            if (decide(sharing, bundle, sequences, most) == Look.UNDECIDED) {
                return Look.UNDECIDED;
            }
        }
        return Look.DECIDED;
    }

    /** @param most what is not worth looking at any more, in ampere-equivalents; falls as plans are found */
    private Look decide(Sharing sharing, TimetableBundle bundle, Sequences sequences, double[] most) {
        steps.one();
        Timetable timetable = bundle.whole();
        double left = most[0] - sharing.leastAmps();
        if (timetable.leastAmps() >= left) {
            return Look.DECIDED;
        }
        double limitAmps = limitAmps(sharing, timetable.leastAmps(), most[0]);
        if (sequences.areRefutedByOnePhase(sharing, timetable, timetable.latest(left), limitAmps)) {
            return Look.DECIDED;
        }
        for (TimetableBundle part : bundle.parts()) {
            if (decide(sharing, part, sequences, most) == Look.UNDECIDED) {
                return Look.UNDECIDED;
            }
        }
        if (!bundle.parts().isEmpty()) {
            return Look.DECIDED;
        }
        for (End end : timetable.ends()) {
            if (decide(sharing, timetable, end, sequences, most) == Look.UNDECIDED) {
                return Look.UNDECIDED;
            }
        }
        return Look.DECIDED;
    }

    /** Looks for sequences, each cheaper than the one before. */
    private Look decide(Sharing sharing, Timetable timetable, End end, Sequences sequences, double[] most) {
        while (sharing.leastAmps() + end.amps() < most[0] && !plans.areImpossible(sharing)) {
            Optional<int[]> found = sequences.find(sharing, timetable, end, limitAmps(sharing, end.amps(), most[0]));
            if (found.isEmpty()) {
                return Look.DECIDED;
            }
            Optional<Plan> plan = plans.plan(sharing, timetable, found.get());
            plan.ifPresent(incumbent::plan);
            double amps = plan.map(this::objective).orElse(Double.POSITIVE_INFINITY);
            foundAmps = Math.min(foundAmps, amps);
            if (amps < most[0]) {
                most[0] = amps;
            } else if (!plans.areImpossible(sharing)) {
                return Look.UNDECIDED;
            }
        }
        return Look.DECIDED;
    }

    /** What a peak may be at most in a plan that costs less than {@code mostAmps}. */
    private double limitAmps(Sharing sharing, double timesAmps, double mostAmps) {
        double left = mostAmps - MARGIN_AMPS - sharing.deviationsAmps() - timesAmps;
        return Math.min(small.mostPeakAmps, left / small.project.objective().peakInrush());
    }

    private double objective(Plan plan) {
        return Referee.judge(small.project, plan).metrics().objective();
    }
}
