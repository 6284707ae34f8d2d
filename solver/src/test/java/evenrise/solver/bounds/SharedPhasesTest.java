package evenrise.solver.bounds;

import static evenrise.model.Fixtures.aSupply;
import static evenrise.solver.bounds.Flashes.flash;
import static evenrise.solver.bounds.Flashes.project;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.LoadBuilder;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.solver.sample.Sample;
import evenrise.solver.sample.VenueSize;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class SharedPhasesTest {
    private static final int PROJECTS = Integer.getInteger("evenrise.shared", 60);

    /** What counting in units may lose of a peak. */
    private static final double UNITS_PART = 0.01;

    private static LoadBuilder load(String id, int poles, double baseAmps, double excessAmps) {
        return flash(id, poles, baseAmps, baseAmps, excessAmps);
    }

    private static double amps(Project project) {
        BoundedProject subject = new BoundedProject(project);
        return new SharedPhases(subject).amps(new ThresholdPeak(subject).amps());
    }

    @Nested
    class ByHand {
        /** Three amplifiers of 100 on three phases, one each; what was on before has to be somewhere: 20 on each. */
        @Test
        void theLastOnEachPhaseFindsItsPartOfWhatWasOnBefore() {
            Project project = project(
                    aSupply(),
                    load("always", 3, 20, 0).processing(),
                    load("a", 1, 0, 100).amplifier(),
                    load("b", 1, 0, 100).amplifier(),
                    load("c", 1, 0, 100).amplifier());

            assertThat(amps(project)).isCloseTo(120, within(0.5));
        }

        /**
         * Whoever of two poles comes first bears 110 on two phases, the load of three poles 60 on the third at the least. With
         * the processors' 150 that makes 430 on three phases. Thresholds alone say 123.3: of all three loads or of one.
         */
        @Test
        void eachPhaseBearsItsOwnLargestLoad() {
            Project project = project(
                    aSupply(),
                    load("one", 1, 50, 0).processing(),
                    load("other", 1, 50, 0).processing(),
                    load("third", 1, 50, 0).processing(),
                    load("a", 2, 10, 100).amplifier(),
                    load("b", 2, 10, 90).amplifier(),
                    load("c", 3, 0, 60).amplifier());

            assertThat(amps(project)).isCloseTo(430 / 3.0, within(0.5));
        }

        /** Two lines, three equal loads: two share a line, and the later finds the earlier one's base. */
        @Test
        void twoOfThreeShareALine() {
            Project project =
                    project(aSupply().splitPhase(), load("a", 1, 10, 80), load("b", 1, 10, 80), load("c", 1, 10, 80));

            assertThat(amps(project)).isCloseTo(100, within(0.5));
        }
    }

    /** Every way to put loads on phases and every order of switching, without times, slots or decay that could ask more. */
    private static final class EveryWay {
        private final int phases;
        private final int[] poles;
        private final double[] bases;
        private final double[] excesses;
        private final Role[] roles;
        private double leastAmps = Double.POSITIVE_INFINITY;

        EveryWay(int phases, int[] poles, double[] bases, double[] excesses, Role[] roles) {
            this.phases = phases;
            this.poles = poles;
            this.bases = bases;
            this.excesses = excesses;
            this.roles = roles;
            go(0, 0, new double[phases]);
        }

        private void go(int on, double peakAmps, double[] drawn) {
            if (peakAmps >= leastAmps) {
                return;
            }
            if (on == (1 << poles.length) - 1) {
                leastAmps = peakAmps;
                return;
            }
            for (int i = 0; i < poles.length; i++) {
                if ((on & 1 << i) == 0 && isNext(i, on)) {
                    for (int set = 1; set < 1 << phases; set++) {
                        if (Integer.bitCount(set) == poles[i]) {
                            double[] then = drawn.clone();
                            double peak = peakAmps;
                            for (int phase = 0; phase < phases; phase++) {
                                if ((set & 1 << phase) != 0) {
                                    then[phase] += bases[i];
                                    peak = Math.max(peak, then[phase] + excesses[i]);
                                }
                            }
                            go(on | 1 << i, peak, then);
                        }
                    }
                }
            }
        }

        private boolean isNext(int load, int on) {
            for (int i = 0; i < poles.length; i++) {
                if ((on & 1 << i) == 0 && roles[i].compareTo(roles[load]) < 0) {
                    return false;
                }
            }
            return true;
        }
    }

    @Test
    void isNeverAboveTheLeastPeakOfEveryWayAndIsCloseToItWhereAllLoadsAreOfOneRole() {
        int close = 0;
        int alike = 0;
        for (long seed = 1; seed <= PROJECTS; seed++) {
            Random random = new Random(seed * 7919);
            PhaseSystem system = random.nextInt(3) == 0 ? PhaseSystem.SPLIT_PHASE : PhaseSystem.THREE_PHASE;
            int phases = system.phases().size();
            boolean isOfOneRole = random.nextBoolean();
            int count = 3 + random.nextInt(3);
            int[] poles = new int[count];
            double[] bases = new double[count];
            double[] excesses = new double[count];
            Role[] roles = new Role[count];
            LoadBuilder[] loads = new LoadBuilder[count];
            for (int i = 0; i < count; i++) {
                poles[i] = 1 + random.nextInt(random.nextBoolean() ? 1 : phases);
                bases[i] = random.nextInt(400) / 10.0;
                excesses[i] = random.nextInt(900) / 10.0;
                roles[i] = isOfOneRole ? Role.AMPLIFIER : Role.values()[random.nextInt(Role.values().length)];
                loads[i] = load("load" + i, poles[i], bases[i], excesses[i]).role(roles[i]);
            }
            Project project = project(aSupply().system(system), loads);

            double bound = amps(project);

            double least = new EveryWay(phases, poles, bases, excesses, roles).leastAmps;
            assertThat(bound).as("seed %d", seed).isLessThanOrEqualTo(least + 1e-6);
            alike += isOfOneRole ? 1 : 0;
            close += isOfOneRole && bound >= least * (1 - UNITS_PART) ? 1 : 0;
        }
        assertThat(close).as("of %d with one role", alike).isEqualTo(alike).isPositive();
    }

    @Test
    void provesMoreOfADrawnVenueThanThresholdsDo() {
        BoundedProject subject = new BoundedProject(
                Sample.venue(1, new VenueSize(6, 145, PhaseSystem.THREE_PHASE)).project());
        double thresholds = new ThresholdPeak(subject).amps();

        assertThat(new SharedPhases(subject).amps(thresholds)).isGreaterThan(thresholds * 1.04);
    }

    @Test
    void leavesWhatIsKnownWhereThereIsOnePhase() {
        Project project = project(aSupply().singlePhase(), load("a", 1, 10, 80), load("b", 1, 10, 80));

        assertThat(new SharedPhases(new BoundedProject(project)).amps(7)).isEqualTo(7);
    }
}
