package evenrise.solver.engine;

import evenrise.model.project.Load;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;

/**
 * What each load adds to running and neutral current, in whole nanoamperes, so that adding and taking away leaves no
 * rounding behind.
 */
final class Currents {
    static final double NANO = 1e9;

    final long[] runningNano;
    /** Fundamental phasor and third harmonic in the neutral, by load and phase; zero for loads of several poles. */
    final long[][] neutralRealNano;

    final long[][] neutralImaginaryNano;
    final long[][] thirdNano;

    Currents(Project project) {
        PhaseSystem system = project.supply().system();
        int phaseCount = system.phases().size();
        int count = project.loads().size();
        runningNano = new long[count];
        neutralRealNano = new long[count][phaseCount];
        neutralImaginaryNano = new long[count][phaseCount];
        thirdNano = new long[count][phaseCount];
        for (int i = 0; i < count; i++) {
            Load load = project.loads().get(i);
            runningNano[i] = Math.round(load.runningAmps() * NANO);
            if (load.poles() == 1) {
                double fundamental = load.runningAmps() / Math.hypot(1, load.thirdHarmonic());
                for (int p = 0; p < phaseCount; p++) {
                    double angle = -2 * Math.PI * p / phaseCount - Math.acos(load.powerFactor());
                    boolean opposed = system == PhaseSystem.SPLIT_PHASE && p == 1;
                    neutralRealNano[i][p] = Math.round(fundamental * Math.cos(angle) * NANO);
                    neutralImaginaryNano[i][p] = Math.round(fundamental * Math.sin(angle) * NANO);
                    thirdNano[i][p] = Math.round(fundamental * load.thirdHarmonic() * (opposed ? -1 : 1) * NANO);
                }
            }
        }
    }
}
