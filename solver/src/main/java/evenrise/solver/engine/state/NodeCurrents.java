package evenrise.solver.engine.state;

/** Running and neutral current of one node in each scene, kept up to date load by load. */
public final class NodeCurrents {
    private static final int NEUTRAL = 3;

    private final Currents currents;
    private final long[][] neutralOfLoads;
    private final int scenes;
    private final int phases;
    private final long runningLimitNano;
    /** What loads may run at so that the panel keeps what is to be left of its rating; the limit where nothing is. */
    private final long spareLimitNano;

    private final double neutralLimitNano;
    /** By scene and phase. */
    private final long[] runningNano;
    /** By scene: the fundamentals' real and imaginary part and the third harmonics. */
    private final long[] neutralNano;
    /** Phases that the node has; others carry nothing and count in no mean. */
    private final int had;

    private final int hadCount;

    public NodeCurrents(CompiledProject compiled, int node) {
        currents = compiled.currents;
        neutralOfLoads = currents.neutralNano(compiled.tree.systems[node]);
        scenes = currents.scenes;
        phases = compiled.phaseCount;
        runningLimitNano = compiled.limits.runningNano[node];
        spareLimitNano = compiled.limits.spareNano[node];
        neutralLimitNano = compiled.limits.neutralNano[node];
        runningNano = new long[scenes * phases];
        neutralNano = new long[scenes * NEUTRAL];
        had = compiled.phasesOf[node];
        hadCount = Integer.bitCount(had);
    }

    /** A load that sits on phases of this node. */
    public void add(int load, int phaseMask, int sign) {
        if (scenes == 1) {
            addTo(0, load, phaseMask, sign);
            return;
        }
        for (int scene = 0; scene < scenes; scene++) {
            addTo(scene, load, phaseMask, sign);
        }
    }

    private void addTo(int scene, int load, int phaseMask, int sign) {
        long running = sign * currents.sceneNano[scene][load];
        int first = scene * phases;
        for (int phase = 0; phase < phases; phase++) {
            if ((phaseMask >> phase & 1) != 0) {
                runningNano[first + phase] += running;
                if (phaseMask == 1 << phase) {
                    long[] adds = neutralOfLoads[scene];
                    int at = currents.neutralIndex(load, phase);
                    int to = scene * NEUTRAL;
                    neutralNano[to] += sign * adds[at];
                    neutralNano[to + 1] += sign * adds[at + 1];
                    neutralNano[to + 2] += sign * adds[at + 2];
                }
            }
        }
    }

    /** A part of a load behind a transformer that returns by the neutral here, as of a one-pole load. */
    void addReturned(int load, int phase, double part, int sign) {
        for (int scene = 0; scene < scenes; scene++) {
            int at = currents.neutralIndex(load, phase);
            for (int i = 0; i < NEUTRAL; i++) {
                neutralNano[scene * NEUTRAL + i] += sign * Math.round(part * neutralOfLoads[scene][at + i]);
            }
        }
    }

    /** What a transformer draws here has changed. */
    void addDrawn(int scene, int phase, long nano) {
        runningNano[scene * phases + phase] += nano;
    }

    /** Running current of a phase, in the scene where it is greatest. */
    public long runningNano(int phase) {
        long most = runningNano[phase];
        for (int scene = 1; scene < scenes; scene++) {
            most = Math.max(most, runningNano[scene * phases + phase]);
        }
        return most;
    }

    /** Largest distance of a phase from the mean; of scenes the mean by their shares. */
    public long deviationNano() {
        if (scenes == 1) {
            return deviationTimesPhases(0) / hadCount;
        }
        double mean = 0;
        for (int scene = 0; scene < scenes; scene++) {
            mean += currents.share[scene] * deviationTimesPhases(scene);
        }
        return Math.round(mean / hadCount);
    }

    private long deviationTimesPhases(int scene) {
        long total = total(scene);
        long largest = 0;
        for (int phase = 0; phase < phases; phase++) {
            if ((had >> phase & 1) != 0) {
                largest = Math.max(largest, Math.abs(runningNano[scene * phases + phase] * hadCount - total));
            }
        }
        return largest;
    }

    /** Of the phases that the node has: what else it feeds, if anything, is no part of its mean. */
    private long total(int scene) {
        long total = 0;
        for (int phase = 0; phase < phases; phase++) {
            total += (had >> phase & 1) != 0 ? runningNano[scene * phases + phase] : 0;
        }
        return total;
    }

    /** Mean of the phases, in the scene where it is greatest. */
    public double meanNano() {
        double most = 0;
        for (int scene = 0; scene < scenes; scene++) {
            most = Math.max(most, (double) total(scene));
        }
        return most / hadCount;
    }

    /** 100·deviation/mean, of the worst scene; 0 for an idle node. */
    double imbalancePercent() {
        double worst = 0;
        for (int scene = 0; scene < scenes; scene++) {
            double total = total(scene);
            if (total > 0) {
                worst = Math.max(worst, 100 * deviationTimesPhases(scene) / total);
            }
        }
        return worst;
    }

    /** Charge for current over the rating, over what is to be left of it, and over the neutral's, in milliamperes. */
    public long overload() {
        long over = 0;
        for (int scene = 0; scene < scenes; scene++) {
            for (int phase = 0; phase < phases; phase++) {
                long current = runningNano[scene * phases + phase];
                over += Charges.overMilliAmps(current - runningLimitNano);
                if (spareLimitNano < runningLimitNano) {
                    over += Charges.overMilliAmps(current - spareLimitNano);
                }
            }
            over += neutralOverload(scene * NEUTRAL);
        }
        return over;
    }

    private long neutralOverload(int at) {
        double square = (double) neutralNano[at] * neutralNano[at]
                + (double) neutralNano[at + 1] * neutralNano[at + 1]
                + (double) neutralNano[at + 2] * neutralNano[at + 2];
        return square <= neutralLimitNano * neutralLimitNano
                ? 0
                : Charges.overMilliAmps(Math.sqrt(square) - neutralLimitNano);
    }
}
