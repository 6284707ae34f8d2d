package evenrise.solver.exhaustive;

import evenrise.model.project.Role;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import java.util.function.Consumer;

/**
 * Every way to share phases, load by load: first what is always on, then role by role by falling inrush. The last to come
 * on of those of a role with at least some excess that sit on a phase brings that excess, and finds the bases of the others,
 * of all earlier roles and of what is always on; so in this order the load that is placed says what its phases must bear
 * at least, and neither that nor what is out of balance already can be undone by what follows.
 */
final class SharingTree {
    private final SmallProject project;
    private final Steps steps;
    private final List<SmallLoad> order = new ArrayList<>();
    private final PhaseSwaps swaps;

    /** Running currents, of one pole, that are still to be placed after so many loads. */
    private final double[] runningLeft;

    /** After so many loads, with so many phases that have one of the next load's role: what the mean phase must bear. */
    private final double[][] meanLeft;

    private final double meanRunning;
    private final double weight;
    private final double deviationWeight;
    private final double[] bases;
    private final double[] running;
    private final int[] sets;
    private double limitAmps;
    private Consumer<Sharing> found;

    /** Peak and deviations by the weights of the project's objective. */
    SharingTree(SmallProject project, Steps steps) {
        this(project, steps, project.project.objective().peakInrush(), project.deviationWeight);
    }

    /**
     * @param weight of an ampere of peak
     * @param deviationWeight of an ampere by which the supply is out of balance
     */
    SharingTree(SmallProject project, Steps steps, double weight, double deviationWeight) {
        this.project = project;
        this.steps = steps;
        this.weight = weight;
        this.deviationWeight = deviationWeight;
        Comparator<SmallLoad> falling =
                Comparator.comparingDouble(SmallLoad::excessAmps).reversed();
        project.loads.stream()
                .filter(load -> !load.switched())
                .sorted(Comparator.comparingDouble(SmallLoad::baseAmps).reversed())
                .forEach(order::add);
        for (Role role : Role.values()) {
            project.loads.stream()
                    .filter(load -> load.switched() && load.load().role() == role)
                    .sorted(falling)
                    .forEach(order::add);
        }
        if (!project.tellsRolesApart) {
            order.removeIf(SmallLoad::switched);
            project.loads.stream().filter(SmallLoad::switched).sorted(falling).forEach(order::add);
        }
        swaps = new PhaseSwaps(project);
        bases = new double[project.phases];
        running = new double[project.phases];
        sets = new int[project.loads.size()];
        runningLeft = new double[order.size() + 1];
        meanLeft = new double[order.size() + 1][project.phases + 1];
        double all = 0;
        for (int i = order.size() - 1; i >= 0; i--) {
            runningLeft[i] = runningLeft[i + 1] + order.get(i).load().runningAmps();
            all += order.get(i).load().poles() * order.get(i).load().runningAmps();
        }
        meanRunning = all / project.phases;
        fillMeans();
    }

    private void fillMeans() {
        double[] sums = new double[order.size()];
        double sum = 0;
        for (int i = 0; i < order.size(); i++) {
            sum += order.get(i).load().poles() * order.get(i).baseAmps();
            sums[i] = sum;
        }
        for (int i = order.size() - 1; i >= 0; i--) {
            SmallLoad load = order.get(i);
            boolean isSameRole = i + 1 < order.size() && areOneRole(load, order.get(i + 1));
            double later = i + 1 < order.size() && !isSameRole ? meanLeft[i + 1][0] : 0;
            for (int touched = 0; touched <= project.phases; touched++) {
                int least = Math.max(touched, load.load().poles());
                double own = (sums[i] + (load.switched() ? least * load.excessAmps() : 0)) / project.phases;
                double next = isSameRole ? meanLeft[i + 1][least] : later;
                meanLeft[i][touched] = Math.max(own, next);
            }
        }
    }

    private boolean areOneRole(SmallLoad one, SmallLoad other) {
        return one.switched() == other.switched()
                && (!project.tellsRolesApart
                        || one.load().role() == other.load().role());
    }

    /**
     * The least that peak and deviations cost together by their weights, in ampere-equivalents; empty where none costs less
     * than {@code limitAmps}.
     */
    OptionalDouble least(double limitAmps) {
        double[] least = {Double.POSITIVE_INFINITY};
        walk(limitAmps, sharing -> {
            least[0] = sharing.leastAmps();
            this.limitAmps = sharing.leastAmps();
        });
        return Double.isFinite(least[0]) ? OptionalDouble.of(least[0]) : OptionalDouble.empty();
    }

    /**
     * All that cost less than {@code limitAmps} by peak and deviations; of those that an exchange of alike loads or of phases
     * makes equal at least one.
     */
    List<Sharing> below(double limitAmps) {
        List<Sharing> all = new ArrayList<>();
        walk(limitAmps, all::add);
        all.sort(Comparator.comparingDouble(Sharing::leastAmps));
        return all;
    }

    private void walk(double limitAmps, Consumer<Sharing> found) {
        this.limitAmps = limitAmps;
        this.found = found;
        place(0, 0, 0, swaps.all());
    }

    /**
     * @param peakAmps what has to be borne by what is placed
     * @param touched phases with a load of the role that is being placed, as bits
     * @param free exchanges of two phases that what is placed does not notice, as bits
     */
    private void place(int depth, double peakAmps, int touched, int free) {
        steps.one();
        if (depth == order.size()) {
            double deviations = deviationWeight * deviation(depth);
            double least = weight * peakAmps + deviations;
            if (least < limitAmps && peakAmps <= project.mostPeakAmps) {
                found.accept(new Sharing(sets.clone(), peakAmps, deviations, least));
            }
            return;
        }
        SmallLoad load = order.get(depth);
        boolean isNewRole = depth > 0 && !areOneRole(order.get(depth - 1), load);
        int before = isNewRole ? 0 : touched;
        double[] cost = new double[load.phaseSets().length];
        double[] peak = new double[cost.length];
        for (int i = 0; i < cost.length; i++) {
            int set = load.phaseSets()[i];
            if (swaps.isLeast(set, free) && fitsAlike(depth, set) && fitsTied(depth, set)) {
                add(load, set, 1);
                peak[i] = Math.max(peakAmps, bears(load, set));
                cost[i] = leastAmps(depth + 1, peak[i], isNewRole ? set : before | set);
                add(load, set, -1);
            } else {
                cost[i] = Double.POSITIVE_INFINITY;
            }
        }
        for (int next = least(cost); cost[next] < limitAmps; next = least(cost)) {
            int set = load.phaseSets()[next];
            cost[next] = Double.POSITIVE_INFINITY;
            add(load, set, 1);
            sets[load.index()] = set;
            place(depth + 1, peak[next], before | set, swaps.afterPlacing(set, free));
            add(load, set, -1);
        }
    }

    private static int least(double[] cost) {
        int least = 0;
        for (int i = 1; i < cost.length; i++) {
            if (cost[i] < cost[least]) {
                least = i;
            }
        }
        return least;
    }

    private void add(SmallLoad load, int set, int times) {
        for (int phase = 0; phase < bases.length; phase++) {
            if ((set & 1 << phase) != 0) {
                bases[phase] += times * load.baseAmps();
                running[phase] += times * load.load().runningAmps();
            }
        }
    }

    private double bears(SmallLoad load, int set) {
        double most = 0;
        for (int phase = 0; phase < bases.length; phase++) {
            if ((set & 1 << phase) != 0) {
                most = Math.max(most, bases[phase]);
            }
        }
        return most + (load.switched() ? load.excessAmps() : 0);
    }

    /** What peak and deviations cost at least, wherever the loads from {@code depth} on go. */
    private double leastAmps(int depth, double peakAmps, int touched) {
        double most = 0;
        for (double amps : running) {
            most = Math.max(most, amps);
        }
        if (most > project.mostRunningAmps) {
            return Double.POSITIVE_INFINITY;
        }
        double peak = peakAmps;
        if (depth < order.size()) {
            boolean isNewRole = !areOneRole(order.get(depth - 1), order.get(depth));
            peak = Math.max(peak, meanLeft[depth][isNewRole ? 0 : Integer.bitCount(touched)]);
        }
        return weight * peak + deviationWeight * deviation(depth);
    }

    /** How far the supply's running currents end up from their mean at least. */
    private double deviation(int depth) {
        double deviation = 0;
        for (double amps : running) {
            deviation = Math.max(deviation, Math.max(amps - meanRunning, meanRunning - amps - runningLeft[depth]));
        }
        return deviation;
    }

    /** Loads that nothing tells apart take rising sets. */
    private boolean fitsAlike(int depth, int set) {
        int alike = order.get(depth).alike();
        for (int i = depth - 1; i >= 0; i--) {
            if (order.get(i).alike() == alike) {
                return sets[order.get(i).index()] <= set;
            }
        }
        return true;
    }

    private boolean fitsTied(int depth, int set) {
        SmallLoad load = order.get(depth);
        for (int i = 0; i < depth; i++) {
            SmallLoad other = order.get(i);
            boolean isTied = load.load().samePhaseAs().contains(other.load().id())
                    || other.load().samePhaseAs().contains(load.load().id());
            if (isTied && sets[other.index()] != set) {
                return false;
            }
        }
        return true;
    }
}
