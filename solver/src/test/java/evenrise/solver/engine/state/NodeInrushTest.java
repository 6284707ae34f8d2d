package evenrise.solver.engine.state;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.LoadBuilder;
import evenrise.model.project.Overlap;
import evenrise.model.project.Project;
import evenrise.model.project.Scene;
import evenrise.model.project.SwitchedSystem;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * A core and a hall on one phase; all inrush halves in 2 ms, so that it is gone at the next step.
 *
 * <pre>
 * core: C1 at 0 s    runs at 3 A, idles at 2 A, peaks at 20 A      P = 20, F = 3√2
 * hall: H1 at 0 s    2 A, 2 A, 20 A
 *       H2 at 0.5 s  10 A, 1 A, 60 A                               P = 2√2 + 60, F = 12√2
 * always: N          runs at 5 A, idles at 4 A                     U = 5√2; its base is 4√2
 * </pre>
 */
class NodeInrushTest {
    private static final Offset<Double> NEARLY = within(1e-5);
    private static final double ROOT_2 = Math.sqrt(2);
    private static final double U = 5 * ROOT_2;
    private static final int H2 = 2;

    private static LoadBuilder load(String id, String system, double running, double idle, double peak) {
        return aLoad(id)
                .runningAmps(running)
                .idleAmps(idle)
                .inrushPeakAmps(peak)
                .inrushHalfMillis(2)
                .with(it -> it.system(Optional.of(system)));
    }

    private static Project project(Overlap overlap) {
        return aProject()
                .supply(aSupply().singlePhase())
                .panels(aPanel("P1").sequential())
                .boardTypes(aBoardType().startDelaySeconds(0).stepSeconds(0.5))
                .boards(aBoard("core"), aBoard("hall"))
                .loads(
                        load("C1", "core", 3, 2, 20),
                        load("H1", "hall", 2, 2, 20),
                        load("H2", "hall", 10, 1, 60),
                        aLoad("N").unswitched().runningAmps(5).idleAmps(4))
                .build()
                .with()
                .systems(List.of(system("core"), system("hall")))
                .overlap(overlap)
                .build();
    }

    private static SwitchedSystem system(String id) {
        return SwitchedSystem.builder().id(id).build();
    }

    private static PlanSums planned(Project project) {
        CompiledProject compiled = new CompiledProject(project);
        PlanSums sums = new PlanSums(compiled);
        for (int load = 0; load < compiled.loadCount(); load++) {
            sums.place(load, compiled.placeAt[0][load + 1][1]);
        }
        sums.wire(0, compiled.output(0, 0));
        sums.wire(1, compiled.output(1, 0));
        sums.wire(H2, compiled.output(1, 1));
        sums.settle();
        return sums;
    }

    private static double peakAmps(Project project) {
        return planned(project).peakInrushAmps();
    }

    @Nested
    class OneAtATime {
        /** Hall starts while the core is in use: 2√2 + 60 + 3√2, more than 20 + 12√2 = 36.97. */
        @Test
        void isTheWorstStartOnTopOfWhatTheOthersDraw() {
            assertThat(peakAmps(project(Overlap.ONE_AT_A_TIME))).isCloseTo(U + 60 + 5 * ROOT_2, NEARLY);
        }

        /** Without H2: 20 + F of the core = 3√2, more than 20 + F of the hall = 2√2. */
        @Test
        void fallsWithALoadThatFindsNoRoom() {
            PlanSums sums = planned(project(Overlap.ONE_AT_A_TIME));
            sums.wire(H2, null);
            sums.settle();

            assertThat(sums.peakInrushAmps()).isCloseTo(U + 20 + 3 * ROOT_2, NEARLY);
        }

        /** In use at a tenth of 10 A: H2 idles at 1 A, so F = √2·max(1, 1) + √2·max(2, 0.2) = 3√2 for the hall. */
        @Test
        void countsWhatScenesUse() {
            Project project = project(Overlap.ONE_AT_A_TIME);
            Scene quiet = Scene.builder().id("quiet").others(0.1).build();
            Project inScene = project.withScenes(List.of(quiet));

            // F of the core √2·max(2, 0.3); U √2·max(4, 0.5); hall's start is the worst: 2√2 + 60 + 2√2.
            assertThat(peakAmps(inScene)).isCloseTo(4 * ROOT_2 + 60 + 4 * ROOT_2, NEARLY);
            Scene loud = Scene.builder().id("loud").build();
            assertThat(peakAmps(project.withScenes(List.of(quiet, loud))))
                    .as("the largest use in any scene")
                    .isCloseTo(U + 60 + 5 * ROOT_2, NEARLY);
        }

        /** Forty loads of one system that run at 60 A and idle at 1 A: 40·60·√2 = 3394.1 A, far above what starts. */
        @Test
        void holdsWhatIsInUseHoweverLittleStarts() {
            List<LoadBuilder> loads = new ArrayList<>();
            for (int i = 0; i < 40; i++) {
                loads.add(load("L" + i, "core", 60, 1, ROOT_2));
            }
            Project project = aProject()
                    .supply(aSupply().singlePhase())
                    .panels(aPanel("P1").sequential())
                    .boardTypes(aBoardType().outputs(40).startDelaySeconds(0).stepSeconds(0.5))
                    .boards(aBoard("core"))
                    .loads(loads)
                    .build()
                    .withSystems(List.of(system("core")));
            CompiledProject compiled = new CompiledProject(project);
            PlanSums sums = new PlanSums(compiled);
            for (int load = 0; load < compiled.loadCount(); load++) {
                sums.place(load, compiled.placeAt[0][load + 1][1]);
                sums.wire(load, compiled.output(0, load));
            }
            sums.settle();

            assertThat(sums.peakInrushAmps()).isCloseTo(40 * 60 * ROOT_2, within(1e-3));
        }
    }

    @Nested
    class AnyAtOnce {
        /** max(20, 3√2) + max(2√2 + 60, 12√2). */
        @Test
        void isTheSumOfAllStarts() {
            assertThat(peakAmps(project(Overlap.ANY))).isCloseTo(U + 20 + 60 + 2 * ROOT_2, NEARLY);
        }
    }

    @Nested
    class Together {
        /** On one clock: at 0.5 s the core idles at 2√2; what is always on draws its base, 4√2. */
        @Test
        void isOneSequence() {
            assertThat(peakAmps(project(Overlap.TOGETHER)))
                    .isCloseTo(4 * ROOT_2 + 2 * ROOT_2 + 2 * ROOT_2 + 60, NEARLY);
        }
    }
}
