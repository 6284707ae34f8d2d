package evenrise.solver.engine.state;

import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.project.Project;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Panels in which no plan could keep every rule are not offered to a load. */
class AllowedPanelsTest {
    /** Ten amperes running and idle: √2 · 10 A = 14.142 A at the crest, always. */
    private static final LoadBuilder EXIT_LIGHTS = aLoad("lights")
            .unswitched()
            .threePole()
            .runningAmps(10)
            .idleAmps(10)
            .fixedPanel("P1");

    private static ProjectBuilder twoPanels() {
        return aProject().panels(aPanel("P1").inrushLimitAmps(100), aPanel("P2"));
    }

    private static int[] allowed(ProjectBuilder builder, String load) {
        Project project = builder.build();
        int index = IntStream.range(0, project.loads().size())
                .filter(i -> project.loads().get(i).id().equals(load))
                .findFirst()
                .orElseThrow();
        return new CompiledProject(project).allowedPanels[index].stream().toArray();
    }

    @Nested
    class AnInrushLimit {
        @Test
        void keepsOutALoadThatBreaksItAlone() {
            assertThat(allowed(twoPanels().loads(aLoad("sub").inrushPeakAmps(100.01)), "sub"))
                    .containsExactly(1);
        }

        @Test
        void letsInALoadThatJustKeepsIt() {
            assertThat(allowed(twoPanels().loads(aLoad("sub").inrushPeakAmps(100)), "sub"))
                    .containsExactly(0, 1);
        }

        @Test
        void keepsOutALoadThatBreaksItBesideWhatAlwaysDraws() {
            assertThat(allowed(twoPanels().loads(EXIT_LIGHTS, aLoad("sub").inrushPeakAmps(85.87)), "sub"))
                    .containsExactly(1);
        }

        @Test
        void letsInALoadThatKeepsItBesideWhatAlwaysDraws() {
            assertThat(allowed(twoPanels().loads(EXIT_LIGHTS, aLoad("sub").inrushPeakAmps(85.85)), "sub"))
                    .containsExactly(0, 1);
        }

        @Test
        void letsInALoadThatFindsAPhaseOnWhichNothingAlwaysDraws() {
            LoadBuilder onePhase = aLoad("lights")
                    .unswitched()
                    .runningAmps(10)
                    .idleAmps(10)
                    .fixedPanel("P1")
                    .fixedSlot(1);

            assertThat(allowed(twoPanels().loads(onePhase, aLoad("sub").inrushPeakAmps(99)), "sub"))
                    .containsExactly(0, 1);
            assertThat(allowed(
                            twoPanels().loads(onePhase, aLoad("sub").threePole().inrushPeakAmps(99)), "sub"))
                    .containsExactly(1);
        }

        @Test
        void isTheRefereesToJudgeWhereNoPanelIsLeft() {
            assertThat(allowed(
                            twoPanels().loads(aLoad("sub").inrushPeakAmps(101).panels("P1")), "sub"))
                    .containsExactly(0);
        }
    }

    @Nested
    class AGroupInOnePanel {
        private ProjectBuilder withGroup(boolean samePanel) {
            return twoPanels()
                    .groups(samePanel ? aGroup("array").samePanel() : aGroup("array"))
                    .loads(
                            aLoad("large").inrushPeakAmps(101).group("array"),
                            aLoad("small").inrushPeakAmps(5).group("array"));
        }

        @Test
        void keepsOutOfAPanelThatOneOfItsLoadsMayNotTake() {
            assertThat(allowed(withGroup(true), "small")).containsExactly(1);
        }

        @Test
        void isNoneOfOthersBusiness() {
            assertThat(allowed(withGroup(false), "small")).containsExactly(0, 1);
        }
    }
}
