package evenrise.solver.tidy;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.Load;
import evenrise.model.project.Project;
import evenrise.model.project.Scene;
import evenrise.model.project.SceneUse;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class AlikeLoadsTest {
    private static List<List<String>> alike(LoadBuilder... loads) {
        return AlikeLoads.of(aProject().loads(loads).build(), any -> true);
    }

    @Test
    void loadsThatDifferInNamesAloneAreAlikeInNaturalOrder() {
        assertThat(alike(aLoad("amp-10").name("Left"), aLoad("amp-2").name("Right"), aLoad("amp-1")))
                .containsExactly(List.of("amp-1", "amp-2", "amp-10"));
    }

    @Test
    void numbersAreComparedByValueAndEqualValuesByTheirZeros() {
        List<String> names = new ArrayList<>(List.of("a10b", "a2b", "a02b", "a", "b1", "a2", "7"));

        names.sort(NaturalOrder.INSTANCE);

        assertThat(names).containsExactly("7", "a", "a2", "a02b", "a2b", "a10b", "b1");
    }

    @Test
    void aLoadThatDrawsMoreIsNotAlike() {
        assertThat(alike(aLoad("a").runningAmps(10), aLoad("b").runningAmps(10.1)))
                .isEmpty();
    }

    @Test
    void cablesMayDiffer() {
        Project project = aProject().loads(aLoad("a"), aLoad("b")).build();
        Load wired = project.loads()
                .get(0)
                .withCircuit(Optional.of(Circuit.builder()
                        .cable(Cable.builder().lengthMetres(20).size("12 AWG").build())
                        .build()));
        Load bare =
                project.loads().get(1).withCircuit(Optional.of(Circuit.builder().build()));

        assertThat(AlikeLoads.of(project.withLoads(List.of(wired, bare)), any -> true))
                .containsExactly(List.of("a", "b"));
    }

    @Test
    void loadsThatComeAfterTheSameAreAlike() {
        assertThat(alike(
                        aLoad("core").settleSeconds(5),
                        aLoad("a").comesAfter("core"),
                        aLoad("b").comesAfter("core")))
                .containsExactly(List.of("a", "b"));
    }

    @Test
    void aLoadThatComesAfterAnotherIsNotAlikeWithIt() {
        assertThat(alike(aLoad("a"), aLoad("b").comesAfter("a"))).isEmpty();
    }

    @Test
    void loadsThatOthersWaitForAreNotAlikeWithThoseThatNobodyWaitsFor() {
        assertThat(alike(aLoad("a"), aLoad("b"), aLoad("amp").amplifier().comesAfter("a")))
                .isEmpty();
    }

    @Test
    void loadsApartFromEachOtherAreAlike() {
        assertThat(alike(aLoad("a").apartFrom("b"), aLoad("b"))).containsExactly(List.of("a", "b"));
    }

    @Test
    void aSceneThatNamesOneOfTwoTellsThemApart() {
        Project project = aProject().loads(aLoad("a"), aLoad("b")).build();
        Scene quiet = Scene.builder()
                .id("quiet")
                .use(List.of(SceneUse.builder().loads(List.of("a")).factor(0.5).build()))
                .build();

        assertThat(AlikeLoads.of(project.withScenes(List.of(quiet)), any -> true))
                .isEmpty();
    }
}
