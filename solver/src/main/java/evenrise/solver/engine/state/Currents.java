package evenrise.solver.engine.state;

import evenrise.model.electrical.Lag;
import evenrise.model.electrical.NeutralCurrent;
import evenrise.model.project.Load;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;

/**
 * What each load adds to running and neutral current, in whole nanoamperes, so that adding and taking away leaves no
 * rounding behind.
 */
public final class Currents {
    public static final double NANO = 1e9;

    public final long[] runningNano;
    /**
     * What a one-pole load adds to the neutral: the fundamental's real and imaginary part and the third harmonic, by load
     * and phase, at {@link #neutralIndex}.
     */
    final long[] neutralNano;

    private final int phaseCount;

    Currents(Project project) {
        PhaseSystem system = project.supply().system();
        phaseCount = system.phases().size();
        int count = project.loads().size();
        runningNano = new long[count];
        neutralNano = new long[3 * phaseCount * count];
        for (int i = 0; i < count; i++) {
            Load load = project.loads().get(i);
            runningNano[i] = Math.round(load.runningAmps() * NANO);
            for (int phase = 0; phase < phaseCount && load.poles() == 1; phase++) {
                NeutralCurrent.Share share = NeutralCurrent.share(
                        system, system.phases().get(phase), load.runningAmps(), Lag.of(load), load.harmonicRatio());
                int at = neutralIndex(i, phase);
                neutralNano[at] = Math.round(share.realAmps() * NANO);
                neutralNano[at + 1] = Math.round(share.imaginaryAmps() * NANO);
                neutralNano[at + 2] = Math.round(share.thirdAmps() * NANO);
            }
        }
    }

    int neutralIndex(int load, int phase) {
        return 3 * (phaseCount * load + phase);
    }
}
