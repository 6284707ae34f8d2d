package evenrise.solver.exact;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPObjective;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPVariable;
import evenrise.solver.engine.PhaseShares;
import evenrise.solver.exact.LadderPanels.Balance;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * The ladder of one box as a linear program, in which loads may be cut in pieces. A bound takes its multipliers alone, a search
 * who sits where.
 */
final class LadderProgram implements AutoCloseable {
    private final LadderLoads loads;
    private final MPSolver solver;
    private final MPVariable[][][] sits;
    private final MPConstraint[][] rungs;
    private final MPConstraint[][] over;
    private final MPConstraint[][] under;

    /** @throws Unfit where there is no solver on this platform */
    LadderProgram(LadderLoads loads, List<Balance> balances, double peakWeight, double leastPeakAmps) {
        NativeSolver.load();
        this.loads = loads;
        solver = MPSolver.createSolver("GLOP");
        if (solver == null) {
            throw new Unfit("there is no solver of linear programs here");
        }
        MPVariable peak = solver.makeNumVar(leastPeakAmps, MPSolver.infinity(), "");
        MPObjective aim = solver.objective();
        aim.setCoefficient(peak, peakWeight);
        aim.setMinimization();
        sits = new MPVariable[loads.count()][][];
        for (int load = 0; load < loads.count(); load++) {
            seat(load);
        }
        rungs = new MPConstraint[loads.phases][loads.climbers];
        for (int phase = 0; phase < loads.phases; phase++) {
            climb(phase, peak);
        }
        over = new MPConstraint[balances.size()][loads.phases];
        under = new MPConstraint[balances.size()][loads.phases];
        for (int i = 0; i < balances.size(); i++) {
            MPVariable deviation = solver.makeNumVar(0, MPSolver.infinity(), "");
            aim.setCoefficient(deviation, balances.get(i).weight());
            for (int phase = 0; phase < loads.phases; phase++) {
                over[i][phase] = deviate(balances.get(i), phase, deviation, 1);
                under[i][phase] = deviate(balances.get(i), phase, deviation, -1);
            }
        }
    }

    private void seat(int load) {
        MPConstraint once = solver.makeConstraint(1, 1, "");
        sits[load] = new MPVariable[loads.maySitIn[load].length][1 << loads.phases];
        for (int place = 0; place < sits[load].length; place++) {
            for (int mask = 1; mask < 1 << loads.phases; mask++) {
                if (loads.maySitIn[load][place] && Integer.bitCount(mask) == loads.poles[load]) {
                    sits[load][place][mask] = solver.makeNumVar(0, 1, "");
                    once.setCoefficient(sits[load][place][mask], 1);
                }
            }
        }
    }

    /** What a phase carries is summed up from rank to rank. */
    private void climb(int phase, MPVariable peak) {
        MPVariable below = solver.makeNumVar(0, MPSolver.infinity(), "");
        MPConstraint earlier = solver.makeConstraint(0, 0, "");
        earlier.setCoefficient(below, -1);
        for (int load = loads.climbers; load < loads.count(); load++) {
            add(earlier, load, phase);
        }
        for (int rank = 0; rank < loads.climbers; rank++) {
            MPVariable carried = solver.makeNumVar(0, MPSolver.infinity(), "");
            MPConstraint step = solver.makeConstraint(0, 0, "");
            step.setCoefficient(below, 1);
            step.setCoefficient(carried, -1);
            add(step, rank, phase);
            MPConstraint rung = solver.makeConstraint(0, MPSolver.infinity(), "");
            rung.setCoefficient(peak, 1);
            rung.setCoefficient(carried, -1);
            rungs[phase][rank] = rung;
            below = carried;
        }
    }

    private void add(MPConstraint row, int load, int phase) {
        for (MPVariable[] inPlace : sits[load]) {
            for (int mask = 1; mask < 1 << loads.phases; mask++) {
                if (inPlace[mask] != null && LadderLoads.has(mask, phase)) {
                    row.setCoefficient(inPlace[mask], loads.baseAmps[load]);
                }
            }
        }
    }

    private MPConstraint deviate(Balance balance, int phase, MPVariable deviation, int sign) {
        MPConstraint row = solver.makeConstraint(0, MPSolver.infinity(), "");
        row.setCoefficient(deviation, 1);
        for (int load = 0; load < loads.count(); load++) {
            for (int place = 0; place < sits[load].length; place++) {
                for (int mask = 1; balance.counts(place) && mask < 1 << loads.phases; mask++) {
                    if (sits[load][place][mask] != null) {
                        double part =
                                (LadderLoads.has(mask, phase) ? 1 : 0) - (double) loads.poles[load] / loads.phases;
                        row.setCoefficient(sits[load][place][mask], -sign * part * loads.runningAmps[load]);
                    }
                }
            }
        }
        return row;
    }

    /** Multipliers that say much of a box; of one that the solver makes nothing of, such as say nothing. */
    LadderMultipliers multipliers(LadderBox box) {
        boolean isSolved = solves(box);
        double[][] climb = new double[loads.phases][loads.climbers];
        double[][] more = new double[over.length][loads.phases];
        double[][] less = new double[over.length][loads.phases];
        for (int phase = 0; isSolved && phase < loads.phases; phase++) {
            for (int rank = 0; rank < loads.climbers; rank++) {
                climb[phase][rank] = rungs[phase][rank].dualValue();
            }
            for (int i = 0; i < over.length; i++) {
                more[i][phase] = over[i][phase].dualValue();
                less[i][phase] = under[i][phase].dualValue();
            }
        }
        return new LadderMultipliers(climb, more, less);
    }

    private boolean solves(LadderBox box) {
        for (int load = 0; load < loads.climbers; load++) {
            for (MPVariable[] inPlace : sits[load]) {
                for (int mask = 1; mask < 1 << loads.phases; mask++) {
                    if (inPlace[mask] != null) {
                        inPlace[mask].setUb(loads.mayTake(load, mask, box) ? 1 : 0);
                    }
                }
            }
        }
        for (int phase = 0; phase < loads.phases; phase++) {
            for (int rank = 0; rank < loads.climbers; rank++) {
                rungs[phase][rank].setLb(rank >= box.to(phase) ? loads.excessAmps[rank] : 0);
            }
        }
        return solver.solve() == MPSolver.ResultStatus.OPTIMAL;
    }

    /** Who sits where in the best way of a box; of one that the solver makes nothing of, nobody anywhere. */
    PhaseShares shares(LadderBox box) {
        if (!solves(box)) {
            return PhaseShares.NONE;
        }
        Map<String, double[]> shares = new HashMap<>();
        for (int load = 0; load < loads.count(); load++) {
            double[] share = new double[1 << loads.phases];
            for (MPVariable[] inPlace : sits[load]) {
                for (int mask = 1; mask < share.length; mask++) {
                    share[mask] += inPlace[mask] == null ? 0 : Math.max(0, inPlace[mask].solutionValue());
                }
            }
            shares.put(loads.ids.get(load), share);
        }
        return new PhaseShares(shares);
    }

    @Override
    public void close() {
        solver.delete();
    }
}
