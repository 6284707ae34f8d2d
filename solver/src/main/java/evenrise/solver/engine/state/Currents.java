package evenrise.solver.engine.state;

import evenrise.model.electrical.Lag;
import evenrise.model.electrical.NeutralCurrent;
import evenrise.model.electrical.PhaseAngle;
import evenrise.model.project.Load;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.rules.ProjectIndex;
import evenrise.model.rules.SceneCurrents;
import evenrise.model.rules.SceneCurrents.InScene;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/**
 * What each load adds to running and neutral current in each scene, in whole nanoamperes, so that adding and taking away
 * leaves no rounding behind.
 */
public final class Currents {
    public static final double NANO = 1e9;

    /** Running current of each load in the scene where it is greatest. */
    public final long[] runningNano;
    /** How many scenes there are; one of all in full where the project states none. */
    final int scenes;
    /** Part of the objective's deviations that each scene has, of 1. */
    final double[] share;
    /** By scene and load. */
    final long[][] sceneNano;

    private final int phaseCount;
    private final Load[] loads;
    private final Map<PhaseSystem, long[][]> neutrals = new EnumMap<>(PhaseSystem.class);
    private final long[][] fundamentalNano;
    private final long[][] thirdNano;
    private final double[] lagCosine;
    private final double[] lagSine;
    private final Map<PhaseSystem, double[]> angles = new EnumMap<>(PhaseSystem.class);

    Currents(ProjectIndex index, int phaseCount, FeederTree tree) {
        this.phaseCount = phaseCount;
        loads = index.project().loads().toArray(Load[]::new);
        int count = loads.length;
        List<InScene> all = SceneCurrents.of(index).scenes();
        scenes = all.size();
        share = all.stream().mapToDouble(InScene::share).toArray();
        sceneNano = new long[scenes][count];
        runningNano = new long[count];
        boolean hasTransformers = tree.transformers.length > 0;
        fundamentalNano = new long[hasTransformers ? scenes : 0][count];
        thirdNano = new long[hasTransformers ? scenes : 0][count];
        for (int scene = 0; scene < scenes; scene++) {
            for (int load = 0; load < count; load++) {
                double amps = all.get(scene).runningAmps().get(loads[load].id());
                sceneNano[scene][load] = Math.round(amps * NANO);
                runningNano[load] = Math.max(runningNano[load], sceneNano[scene][load]);
                if (hasTransformers) {
                    double ratio = loads[load].harmonicRatio();
                    double fundamental = amps / Math.sqrt(1 + ratio * ratio);
                    fundamentalNano[scene][load] = Math.round(fundamental * NANO);
                    thirdNano[scene][load] = Math.round(ratio * fundamental * NANO);
                }
            }
        }
        lagCosine = new double[count];
        lagSine = new double[count];
        for (int load = 0; load < count; load++) {
            lagCosine[load] = Lag.of(loads[load]).cosine();
            lagSine[load] = Lag.of(loads[load]).sine();
        }
        for (PhaseSystem system : new ArrayList<>(Arrays.asList(tree.systems))) {
            neutrals.computeIfAbsent(system, each -> neutrals(each, all));
            angles.computeIfAbsent(system, Currents::angles);
        }
    }

    private long[][] neutrals(PhaseSystem system, List<InScene> all) {
        long[][] nano = new long[scenes][3 * phaseCount * loads.length];
        for (int scene = 0; scene < scenes; scene++) {
            for (int i = 0; i < loads.length; i++) {
                Load load = loads[i];
                double amps = all.get(scene).runningAmps().get(load.id());
                for (int phase = 0; phase < system.phases().size(); phase++) {
                    NeutralCurrent.Share one = NeutralCurrent.share(
                            system, system.phases().get(phase), amps, Lag.of(load), load.harmonicRatio());
                    int at = neutralIndex(i, phase);
                    nano[scene][at] = Math.round(one.realAmps() * NANO);
                    nano[scene][at + 1] = Math.round(one.imaginaryAmps() * NANO);
                    nano[scene][at + 2] = Math.round(one.thirdAmps() * NANO);
                }
            }
        }
        return nano;
    }

    /** By phases that a load touches and by phase, cosine and sine of the angle of the voltage that drives it. */
    private static double[] angles(PhaseSystem system) {
        double[] angles = new double[2 * Winding.PHASES << Winding.PHASES];
        List<Phase> phases = system.phases();
        for (int mask = 1; mask < 1 << phases.size(); mask++) {
            List<Phase> touched = new ArrayList<>();
            for (Phase phase : phases) {
                if ((mask >> phase.ordinal() & 1) != 0) {
                    touched.add(phase);
                }
            }
            for (int i = 0; i < touched.size(); i++) {
                Phase phase = touched.get(i);
                double angle = touched.size() == 2
                        ? PhaseAngle.radiansBetween(system, touched.get(0), touched.get(1))
                        : PhaseAngle.radians(system, phase);
                int sign = touched.size() == 2 && i == 1 ? -1 : 1;
                int at = 2 * (Winding.PHASES * mask + phase.ordinal());
                angles[at] = sign * Math.cos(angle);
                angles[at + 1] = sign * Math.sin(angle);
            }
        }
        return angles;
    }

    /** Third harmonic of a one-pole load in the scene where it is greatest; 0 for others, which return none. */
    public double mostThirdNano(int load) {
        double ratio = loads[load].harmonicRatio();
        return loads[load].poles() == 1 ? runningNano[load] * ratio / Math.sqrt(1 + ratio * ratio) : 0;
    }

    int neutralIndex(int load, int phase) {
        return 3 * (phaseCount * load + phase);
    }

    /**
     * By scene, what a one-pole load adds to the neutral of a node: the fundamental's real and imaginary part and the third
     * harmonic, by load and phase, at {@link #neutralIndex}.
     */
    long[][] neutralNano(PhaseSystem system) {
        return neutrals.get(system);
    }

    /** Adds a load ({@code sign} 1), or takes it away (−1), to sums as {@link Winding} has them. */
    public void addTo(long[] sums, PhaseSystem system, int load, int phaseMask, int sign) {
        double[] driven = angles.get(system);
        for (int scene = 0; scene < scenes; scene++) {
            int at = scene * Winding.SIZE;
            for (int phase = 0; phase < Winding.PHASES; phase++) {
                if ((phaseMask >> phase & 1) != 0) {
                    double cosine = driven[2 * (Winding.PHASES * phaseMask + phase)];
                    double sine = driven[2 * (Winding.PHASES * phaseMask + phase) + 1];
                    long nano = fundamentalNano[scene][load];
                    sums[at + phase] += sign * sceneNano[scene][load];
                    sums[at + Winding.REAL + phase] +=
                            sign * Math.round(nano * (cosine * lagCosine[load] + sine * lagSine[load]));
                    sums[at + Winding.IMAGINARY + phase] +=
                            sign * Math.round(nano * (sine * lagCosine[load] - cosine * lagSine[load]));
                    sums[at + Winding.THIRD + phase] += sign * thirdNano[scene][load];
                }
            }
        }
    }
}
