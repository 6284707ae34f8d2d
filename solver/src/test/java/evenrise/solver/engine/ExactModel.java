package evenrise.solver.engine;

import com.google.ortools.Loader;
import com.google.ortools.sat.BoolVar;
import com.google.ortools.sat.CpModel;
import com.google.ortools.sat.CpSolver;
import com.google.ortools.sat.CpSolverStatus;
import com.google.ortools.sat.IntVar;
import com.google.ortools.sat.LinearExpr;
import com.google.ortools.sat.LinearExprBuilder;
import com.google.ortools.sat.Literal;
import evenrise.model.electrical.NeutralCurrent;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.BoardSetting;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.Load;
import evenrise.model.project.ObjectiveWeights;
import evenrise.model.project.Panel;
import evenrise.model.project.Project;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.NodeLimits;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.model.rules.Violation;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.Set;
import java.util.function.Predicate;

/**
 * The whole contract as an integer program, for small projects: every hard rule and the objective, solved to a proven
 * optimum. Only two rules are cut in when a plan breaks them: the neutral, which is quadratic, and an inrush limit that is
 * missed by less than the rounding. Both cuts spare every plan that keeps the rules.
 */
final class ExactModel {
    private static final Set<String> CUT_WHEN_BROKEN = Set.of("neutral", "inrush-limit");
    private static final double SECONDS = 120;

    private final Project project;
    private final CpModel model;
    private final ExactModelPlaces places;
    private final ExactModelTimes times;
    private final ExactModelCurrents currents;

    /**
     * A best plan.
     *
     * @param plan one that the referee finds no fault with
     * @param atLeastAmps no plan that keeps every rule has a smaller objective
     * @param uncutAmps the same without what is cut in when broken, the neutral above all
     */
    record Optimum(Plan plan, double atLeastAmps, double uncutAmps) {}

    private ExactModel(Project project) {
        Loader.loadNativeLibraries();
        this.project = project;
        model = new CpModel();
        places = new ExactModelPlaces(model, project);
        times = new ExactModelTimes(model, project);
        ExactModelOrder.add(model, project, places, times);
        currents = new ExactModelCurrents(model, project, places, times);
    }

    /** The least objective of all plans that keep every rule; fails where there is none. */
    static Optimum solve(Project project) {
        ExactModel it = new ExactModel(project);
        it.minimize();
        CpSolver solver = new CpSolver();
        solver.getParameters().setMaxTimeInSeconds(SECONDS).setNumWorkers(4);
        return it.solve(solver);
    }

    /** Some plan that keeps every rule, the same every time: one worker, no objective. */
    static Plan anyPlan(Project project) {
        CpSolver solver = new CpSolver();
        solver.getParameters().setNumWorkers(1).setRandomSeed(1);
        return new ExactModel(project).solve(solver).plan();
    }

    /** One unit of the model's objective in ampere-equivalents; the phases make means whole numbers. */
    private double unitAmps() {
        return 1.0 / (ExactModelUnits.PER_AMP * ExactModelUnits.PER_WEIGHT * phases());
    }

    private int phases() {
        return project.supply().system().phases().size();
    }

    private static long weight(double weight) {
        return ExactModelUnits.exactly(weight, ExactModelUnits.PER_WEIGHT);
    }

    private void minimize() {
        ObjectiveWeights weights = project.objective();
        LinearExprBuilder sum = LinearExpr.newBuilder();
        sum.addTerm(currents.peak(), weight(weights.peakInrush()) * phases());
        sum.addTerm(currents.deviationTimesPhases(NodeFigures.SUPPLY), weight(weights.supplyImbalance()));
        for (Panel panel : project.panels()) {
            sum.addTerm(currents.deviationTimesPhases(panel.id()), weight(weights.panelImbalance()));
        }
        IntVar duration = model.newIntVar(0, 1_000_000, "duration");
        project.loads().stream()
                .filter(Load::switched)
                .forEach(load -> model.addLessOrEqual(times.on(load, 0), duration));
        long ampsAMilli = ExactModelUnits.PER_AMP / ExactModelUnits.PER_SECOND;
        sum.addTerm(duration, weight(weights.duration()) * phases() * ampsAMilli);
        for (Board board : project.boards()) {
            sum.addTerm(times.idle(board).not(), weight(weights.boards()) * phases() * ExactModelUnits.PER_AMP);
        }
        model.minimize(sum.build());
    }

    private Optimum solve(CpSolver solver) {
        double uncut = Double.NaN;
        while (true) {
            CpSolverStatus status = solver.solve(model);
            if (status != CpSolverStatus.OPTIMAL) {
                throw new IllegalStateException(project.name() + ": " + status + " instead of a proven optimum");
            }
            double atLeast = solver.objectiveValue() * unitAmps();
            uncut = Double.isNaN(uncut) ? atLeast : uncut;
            Plan plan = plan(solver);
            Verdict verdict = Referee.judge(project, plan);
            if (verdict.violations().stream().map(Violation::rule).noneMatch(CUT_WHEN_BROKEN::contains)) {
                return new Optimum(plan, atLeast, uncut);
            }
            cutNeutral(plan, verdict);
            cut(solver);
        }
    }

    /** How much less than the referee the model may find a plan to cost: a unit of peak for each load. */
    static double roundingAmps(Project project) {
        return project.objective().peakInrush() * project.loads().size() / ExactModelUnits.PER_AMP;
    }

    /** What the model says that {@code plan} costs; empty where it finds a rule broken. */
    static OptionalDouble objectiveOf(Project project, Plan plan) {
        ExactModel it = new ExactModel(project);
        it.minimize();
        it.fix(plan);
        it.cutNeutral(plan, Referee.judge(project, plan));
        CpSolver solver = new CpSolver();
        solver.getParameters().setNumWorkers(1);
        return solver.solve(it.model) == CpSolverStatus.OPTIMAL
                ? OptionalDouble.of(solver.objectiveValue() * it.unitAmps())
                : OptionalDouble.empty();
    }

    private void fix(Plan plan) {
        for (Assignment each : plan.assignments()) {
            Load load = load(each.load());
            fix(places.places(load), place -> place.spot().panel().equals(each.panel()) && place.slot() == each.slot());
            if (load.switched()) {
                fix(
                        times.outputs(load),
                        output -> Optional.of(output.board()).equals(each.board())
                                && OptionalInt.of(output.number()).equals(each.output()));
            }
        }
        for (Board board : project.boards()) {
            fix(times.settings(board), plan.boards()::contains);
        }
    }

    /** One of the matching literals holds; where none matches, nothing does. */
    private <T> void fix(Map<T, BoolVar> literals, Predicate<T> matches) {
        model.addBoolOr(literals.entrySet().stream()
                .filter(each -> matches.test(each.getKey()))
                .map(Map.Entry::getValue)
                .toArray(Literal[]::new));
    }

    private void cutNeutral(Plan plan, Verdict verdict) {
        List<NodeLimits> limits = NodeLimits.of(project);
        for (int i = 0; i < limits.size(); i++) {
            NodeLimits node = limits.get(i);
            if (verdict.nodes().get(i).neutralAmps() > node.neutralAmps()) {
                double real = 0;
                double imaginary = 0;
                double third = 0;
                for (Assignment each : plan.assignments()) {
                    Load load = load(each.load());
                    boolean fed = i == 0 || each.panel().equals(node.node());
                    if (fed && load.poles() == 1 && !each.phases().isEmpty()) {
                        NeutralCurrent.Share share =
                                currents.share(load, each.phases().get(0));
                        real += share.realAmps();
                        imaginary += share.imaginaryAmps();
                        third += share.thirdAmps();
                    }
                }
                currents.cutNeutral(node, new NeutralCurrent.Share(real, imaginary, third));
            }
        }
    }

    /** Whatever has every load in the same panel, on the same phases and at the same time breaks the same rule. */
    private void cut(CpSolver solver) {
        model.addBoolOr(currents.moments().stream()
                .filter(solver::booleanValue)
                .map(BoolVar::not)
                .toArray(Literal[]::new));
    }

    private Load load(String id) {
        return project.loads().stream()
                .filter(load -> load.id().equals(id))
                .findFirst()
                .orElseThrow();
    }

    private Plan plan(CpSolver solver) {
        List<BoardSetting> settings = project.boards().stream()
                .map(board -> chosen(solver, times.settings(board)))
                .toList();
        List<Assignment> assignments = new ArrayList<>();
        for (Load load : project.loads()) {
            ExactModelPlaces.Place place = chosen(solver, places.places(load));
            Optional<ExactModelTimes.Output> output =
                    load.switched() ? Optional.of(chosen(solver, times.outputs(load))) : Optional.empty();
            assignments.add(new Assignment(
                    load.id(),
                    place.spot().panel(),
                    place.slot(),
                    place.spot().phases(),
                    output.map(ExactModelTimes.Output::board),
                    output.map(it -> OptionalInt.of(it.number())).orElse(OptionalInt.empty()),
                    OptionalDouble.empty(),
                    OptionalDouble.empty()));
        }
        Plan bare =
                new Plan(Plan.FORMAT, List.of(), settings, assignments, Optional.empty(), List.of(), Optional.empty());
        return Plans.finished(project, bare);
    }

    private static <T> T chosen(CpSolver solver, Map<T, BoolVar> literals) {
        return literals.entrySet().stream()
                .filter(each -> solver.booleanValue(each.getValue()))
                .map(Map.Entry::getKey)
                .findFirst()
                .orElseThrow();
    }
}
