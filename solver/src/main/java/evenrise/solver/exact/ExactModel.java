package evenrise.solver.exact;

import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import evenrise.model.electrical.NeutralCurrent;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Load;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.Tolerances;
import evenrise.model.rules.Verdict;
import evenrise.solver.bounds.ProvenBounds;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.DoubleStream;

/**
 * The whole contract as an integer program: every hard rule and the objective. Only two rules are cut in when a plan breaks
 * them: the neutral, which is quadratic, and an inrush limit that is missed by less than the rounding. Both cuts spare
 * every plan that keeps the rules.
 *
 * <p>Without boards it is a relaxation, in which loads choose their times freely among those that some output can reach:
 * smaller by far, and what bounds it bounds the whole.
 */
final class ExactModel {
    /** Objective units an ampere-equivalent and phase; ten makes a microsecond of duration a whole number. */
    private static final long PER_MILLIWEIGHT = 10;

    private static final double KNOWN_MARGIN_AMPS = 1e-7;
    private static final double WHOLE = 1e-9;

    private final Project project;
    private final CpModel model;
    private final ExactModelPlaces places;
    private final ExactModelTimes times;
    private final ExactModelCurrents currents;
    private final ExactModelInrush inrush;
    private final Optional<ExactModelBoards> boards;
    private final ExactModelPlan crossing;
    private LinearExpr objective;

    ExactModel(Project project, boolean withBoards) {
        this(project, withBoards, Double.POSITIVE_INFINITY);
    }

    /**
     * @param mostSeconds plans that take longer are left out
     * @throws Unfit where the project does not fit the model, or there is no solver on this platform
     */
    ExactModel(Project project, boolean withBoards, double mostSeconds) {
        NativeSolver.load();
        this.project = project;
        model = new CpModel();
        ReachableTimes reachable = new ReachableTimes(project);
        places = new ExactModelPlaces(model, project);
        times = new ExactModelTimes(model, project, reachable, ExactModelUnits.latestMicros(mostSeconds));
        ExactModelOrder.add(model, project, times);
        currents = new ExactModelCurrents(model, project, places);
        inrush = new ExactModelInrush(model, project, places, times);
        boolean tellsRolesApart = ProvenBounds.tellsRolesApart(project);
        PhaseRungs.add(model, project, places, inrush.peak(), inrush.unitsPerGrain(), tellsRolesApart);
        boards = withBoards ? Optional.of(new ExactModelBoards(model, project, times, reachable)) : Optional.empty();
        boards.ifPresent(it -> ExactModelGroups.add(model, project, places, it));
        crossing = new ExactModelPlan(model, project, places, times, inrush, boards);
    }

    CpModel model() {
        return model;
    }

    /** One unit of the model's objective in ampere-equivalents; the phases make means whole numbers. */
    double unitAmps() {
        return 1.0 / (ExactModelUnits.PER_AMP * ExactModelUnits.PER_WEIGHT * PER_MILLIWEIGHT * phases());
    }

    /** How much less than the referee the model may find a plan to cost: two units of peak for each load. */
    static double roundingAmps(Project project) {
        ObjectiveWeights weights = project.objective();
        return weights.peakInrush() * 2 * project.loads().size() / ExactModelUnits.PER_AMP;
    }

    private int phases() {
        return currents.commonPhases();
    }

    /** @param known what is proven already, or zeros */
    void minimize(ExactKnown known) {
        model.addGreaterOrEqual(
                inrush.peak(), (ExactModelUnits.amps(known.peakAmps()) - slack()) / inrush.unitsPerGrain());
        ObjectiveWeights weights = project.objective();
        LinearExprBuilder currentsSum = LinearExpr.newBuilder();
        currentsSum.addTerm(inrush.peak(), perUnit(weights.peakInrush()) * phases() * inrush.unitsPerGrain());
        currents.addDeviation(currentsSum, NodeFigures.SUPPLY, perUnit(weights.supplyImbalance()));
        for (Panel panel : project.panels()) {
            currents.addDeviation(currentsSum, panel.id(), perUnit(weights.panelImbalance()));
        }
        LinearExpr ofCurrents = currentsSum.build();
        LinearExpr ofTimes = durationAndBoards();
        objective = LinearExpr.newBuilder().add(ofCurrents).add(ofTimes).build();
        model.minimize(objective);
        if (hasWholeWeights()) {
            atLeast(ofCurrents, known.peakAndDeviationsAmps());
            if (boards.isPresent()) {
                atLeast(ofTimes, known.durationAndBoardsAmps());
            }
        }
    }

    private LinearExpr durationAndBoards() {
        ObjectiveWeights weights = project.objective();
        LinearExprBuilder sum = LinearExpr.newBuilder();
        long latest = times.all().isEmpty() ? 0 : times.all().last();
        IntVar duration = model.newIntVar(0, latest, "");
        project.loads().stream().filter(Load::switched).forEach(load -> model.addLessOrEqual(times.on(load), duration));
        sum.addTerm(duration, durationUnits(weights.duration()));
        long perBoard = perUnit(weights.boards()) * phases() * ExactModelUnits.PER_AMP;
        boards.ifPresent(it ->
                project.boards().forEach(board -> sum.addTerm(it.idle(board).not(), perBoard)));
        return sum.build();
    }

    /** What programs prove of a part of the objective that round as the model does. */
    private void atLeast(LinearExpr part, double amps) {
        double least = amps - KNOWN_MARGIN_AMPS;
        if (least > 0) {
            model.addGreaterOrEqual(part, (long) Math.floor(least / unitAmps()));
        }
    }

    /** Whether no weight is rounded; else what is known of plans may not hold of the model, which finds them cheaper. */
    private boolean hasWholeWeights() {
        ObjectiveWeights weights = project.objective();
        return DoubleStream.of(
                        weights.peakInrush(),
                        weights.supplyImbalance(),
                        weights.panelImbalance(),
                        weights.duration(),
                        weights.boards())
                .allMatch(weight ->
                        Math.abs(weight * ExactModelUnits.PER_WEIGHT - Math.round(weight * ExactModelUnits.PER_WEIGHT))
                                < WHOLE);
    }

    /** Units by which the model may find a peak lower than it is: short arguments know nothing of its rounding. */
    private long slack() {
        return 2L * project.loads().size();
    }

    private static long perUnit(double weight) {
        return ExactModelUnits.weight(weight) * PER_MILLIWEIGHT;
    }

    private long durationUnits(double weight) {
        return perUnit(weight) * phases() * ExactModelUnits.PER_AMP / ExactModelUnits.PER_SECOND;
    }

    /** Leaves out plans that cost more than {@code mostAmps}, and says that none costs less than {@code leastAmps}. */
    void within(double leastAmps, double mostAmps) {
        if (hasWholeWeights()) {
            atLeast(objective, leastAmps - roundingAmps(project));
        }
        if (Double.isFinite(mostAmps)) {
            model.addLessOrEqual(objective, (long) Math.ceil((mostAmps + 1e-6) / unitAmps()));
        }
    }

    /** Leaves nothing but {@code plan}, or nothing at all. */
    void fix(Plan plan) {
        crossing.fix(plan);
    }

    /** Lets the solver begin at {@code plan}, which is one with times and phases. */
    void hint(Plan plan) {
        crossing.hint(plan);
    }

    /** The plan of a solution, bare; only of a model with boards. */
    Plan plan(Predicate<Literal> holds) {
        return crossing.plan(holds);
    }

    /**
     * Cuts off a plan that keeps all but a neutral or an inrush limit, and with it what breaks the same rule.
     *
     * @return whether there was anything to cut
     */
    boolean cut(Plan plan, Verdict verdict, Predicate<Literal> holds) {
        boolean neutral = cutNeutral(plan, verdict);
        boolean inrushLimit =
                verdict.violations().stream().anyMatch(each -> each.rule().equals("inrush-limit"));
        if (inrushLimit) {
            model.addBoolOr(moments().stream().filter(holds).map(BoolVar::not).toArray(Literal[]::new));
        }
        return neutral || inrushLimit;
    }

    /** Whatever has every load in the same panel, on the same phases and at the same time has the same inrush. */
    private List<BoolVar> moments() {
        List<BoolVar> all = new ArrayList<>();
        for (Load load : project.loads()) {
            all.addAll(places.spots(load).values());
            all.addAll(times.instants(load).values());
        }
        return all;
    }

    boolean cutNeutral(Plan plan, Verdict verdict) {
        boolean any = false;
        List<NodeLimits> limits = NodeLimits.of(project);
        for (int i = 0; i < limits.size(); i++) {
            NodeLimits node = limits.get(i);
            if (verdict.nodes().get(i).neutralAmps() > node.neutralAmps() + Tolerances.AMPS) {
                currents.cutNeutral(node, neutral(plan, i == 0 ? Optional.empty() : Optional.of(node.node())));
                any = true;
            }
        }
        return any;
    }

    private NeutralCurrent.Share neutral(Plan plan, Optional<String> panel) {
        double real = 0;
        double imaginary = 0;
        double third = 0;
        for (Assignment each : plan.assignments()) {
            Load load = load(each.load());
            boolean fed = panel.map(each.panel()::equals).orElse(true);
            if (fed && load.poles() == 1 && !each.phases().isEmpty()) {
                NeutralCurrent.Share share = currents.share(load, each.phases().get(0));
                real += share.realAmps();
                imaginary += share.imaginaryAmps();
                third += share.thirdAmps();
            }
        }
        return new NeutralCurrent.Share(real, imaginary, third);
    }

    private Load load(String id) {
        return project.loads().stream()
                .filter(load -> load.id().equals(id))
                .findFirst()
                .orElseThrow();
    }
}
