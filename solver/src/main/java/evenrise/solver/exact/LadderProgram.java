package evenrise.solver.exact;

import com.google.ortools.linearsolver.MPConstraint;
import com.google.ortools.linearsolver.MPObjective;
import com.google.ortools.linearsolver.MPSolver;
import com.google.ortools.linearsolver.MPVariable;

/** The ladder of one box as a linear program, in which loads may be cut in pieces; it is asked for multipliers alone. */
final class LadderProgram implements AutoCloseable {
    private final LadderLoads loads;
    private final MPSolver solver;
    private final MPVariable[][] sits;
    private final MPConstraint[][] rungs;
    private final MPConstraint[] over;
    private final MPConstraint[] under;

    /** @throws Unfit where there is no solver on this platform */
    LadderProgram(LadderLoads loads, double peakWeight, double deviationWeight, double leastPeakAmps) {
        NativeSolver.load();
        this.loads = loads;
        solver = MPSolver.createSolver("GLOP");
        if (solver == null) {
            throw new Unfit("there is no solver of linear programs here");
        }
        MPVariable peak = solver.makeNumVar(leastPeakAmps, MPSolver.infinity(), "");
        MPVariable deviation = solver.makeNumVar(0, MPSolver.infinity(), "");
        MPObjective aim = solver.objective();
        aim.setCoefficient(peak, peakWeight);
        aim.setCoefficient(deviation, deviationWeight);
        aim.setMinimization();
        sits = new MPVariable[loads.count()][1 << loads.phases];
        for (int load = 0; load < loads.count(); load++) {
            seat(load);
        }
        rungs = new MPConstraint[loads.phases][loads.climbers];
        over = new MPConstraint[loads.phases];
        under = new MPConstraint[loads.phases];
        for (int phase = 0; phase < loads.phases; phase++) {
            climb(phase, peak);
            over[phase] = deviate(phase, deviation, 1);
            under[phase] = deviate(phase, deviation, -1);
        }
    }

    private void seat(int load) {
        MPConstraint once = solver.makeConstraint(1, 1, "");
        for (int mask = 1; mask < 1 << loads.phases; mask++) {
            if (Integer.bitCount(mask) == loads.poles[load]) {
                sits[load][mask] = solver.makeNumVar(0, 1, "");
                once.setCoefficient(sits[load][mask], 1);
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
        for (int mask = 1; mask < 1 << loads.phases; mask++) {
            if (sits[load][mask] != null && LadderLoads.has(mask, phase)) {
                row.setCoefficient(sits[load][mask], loads.baseAmps[load]);
            }
        }
    }

    private MPConstraint deviate(int phase, MPVariable deviation, int sign) {
        MPConstraint row = solver.makeConstraint(0, MPSolver.infinity(), "");
        row.setCoefficient(deviation, 1);
        for (int load = 0; load < loads.count(); load++) {
            for (int mask = 1; mask < 1 << loads.phases; mask++) {
                if (sits[load][mask] != null) {
                    double part = (LadderLoads.has(mask, phase) ? 1 : 0) - (double) loads.poles[load] / loads.phases;
                    row.setCoefficient(sits[load][mask], -sign * part * loads.runningAmps[load]);
                }
            }
        }
        return row;
    }

    /** Multipliers that say much of a box; of one that the solver makes nothing of, such as say nothing. */
    LadderMultipliers multipliers(LadderBox box) {
        for (int load = 0; load < loads.climbers; load++) {
            for (int mask = 1; mask < 1 << loads.phases; mask++) {
                if (sits[load][mask] != null) {
                    sits[load][mask].setUb(loads.mayTake(load, mask, box) ? 1 : 0);
                }
            }
        }
        for (int phase = 0; phase < loads.phases; phase++) {
            for (int rank = 0; rank < loads.climbers; rank++) {
                rungs[phase][rank].setLb(rank >= box.to(phase) ? loads.excessAmps[rank] : 0);
            }
        }
        boolean isSolved = solver.solve() == MPSolver.ResultStatus.OPTIMAL;
        double[][] climb = new double[loads.phases][loads.climbers];
        double[] more = new double[loads.phases];
        double[] less = new double[loads.phases];
        for (int phase = 0; isSolved && phase < loads.phases; phase++) {
            for (int rank = 0; rank < loads.climbers; rank++) {
                climb[phase][rank] = rungs[phase][rank].dualValue();
            }
            more[phase] = over[phase].dualValue();
            less[phase] = under[phase].dualValue();
        }
        return new LadderMultipliers(climb, more, less);
    }

    @Override
    public void close() {
        solver.delete();
    }
}
