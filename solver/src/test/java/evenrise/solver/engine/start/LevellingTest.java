package evenrise.solver.engine.start;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.NodeSource;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.Currents;
import evenrise.solver.sample.Sample;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What choosing board by board leaves undone and levelling mends: groups without a board, panels filled too far. */
class LevellingTest {
    @Test
    void exchangesGroupsUntilNoPanelCarriesMoreThanItsRating() {
        Project project = crowded().build();

        CompiledProject compiled = new CompiledProject(project);
        BoardChoice choice = chosen(compiled);

        assertThat(choice.boards()).doesNotContain(CompiledProject.NONE);
        assertThat(runningAmps(compiled, choice)).containsExactlyInAnyOrder(72.0, 72.0);
    }

    /** The pair is placed first, since it is fixed to a panel, and takes the board that it leaves emptier. */
    @Test
    void putsOutOthersForAGroupThatFitsOneBoardOnly() {
        Project project = aProject()
                .panels(aPanel("P1"))
                .boardTypes(aBoardType("three").outputs(3), aBoardType("five").outputs(5))
                .boards(aBoard("small").type("three"), aBoard("large").type("five"))
                .groups(aGroup("pair"), aGroup("many"))
                .loads(
                        aLoad("pair1").group("pair").fixedPanel("P1").fixedSlot(1),
                        aLoad("pair2").group("pair"))
                .loads(group("many", 5, 1))
                .build();

        BoardChoice choice = chosen(new CompiledProject(project));

        assertThat(choice.boards()).containsExactly(0, 0, 1, 1, 1, 1, 1);
    }

    /** No board reaches P3, so the load that must sit there can have none. */
    @Test
    void levelsTheRestWhereALoadCanHaveNoBoardAtAll() {
        CompiledProject compiled = new CompiledProject(crowded()
                .panels(aPanel("P3"))
                .loads(aLoad("stray").runningAmps(1).fixedPanel("P3"))
                .build());

        BoardChoice choice = chosen(compiled);

        assertThat(choice.boards()[compiled.loadCount() - 1]).isEqualTo(CompiledProject.NONE);
        assertThat(runningAmps(compiled, choice)).containsExactlyInAnyOrder(72.0, 72.0, 0.0);
    }

    @Test
    void hasNothingToDoWhereNothingIsSwitchedBelowSeveralSources() {
        var source = NodeSource.builder()
                .system(PhaseSystem.THREE_PHASE)
                .lineToNeutralVolts(230)
                .frequencyHertz(50)
                .build();
        Project project = aProject()
                .loads(aLoad("lamp").unswitched(), aLoad("clock").unswitched())
                .with(it -> it.nodes(List.of(DistributionNode.builder()
                        .id("generator")
                        .ratedAmps(100)
                        .source(Optional.of(source))
                        .build())))
                .build();

        BoardChoice choice = chosen(new CompiledProject(project));

        assertThat(choice.boards()).containsOnly(CompiledProject.NONE);
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void leavesNoPanelOverItsRatingAndNoLoadWithoutABoardInADrawnVenue(long seed) {
        CompiledProject compiled = new CompiledProject(Sample.venue(seed, 40));

        BoardChoice choice = chosen(compiled);

        double[] carried = runningAmps(compiled, choice);
        for (int panel = 0; panel < compiled.panelCount; panel++) {
            double allowed = compiled.phaseCount * compiled.limits.runningNano[panel + 1] / Currents.NANO;
            assertThat(carried[panel]).isLessThanOrEqualTo(allowed);
        }
        for (int load = 0; load < compiled.loadCount(); load++) {
            assertThat(choice.boards()[load] != CompiledProject.NONE)
                    .as("load %d has a board", load)
                    .isEqualTo(compiled.switched[load]);
        }
    }

    @Test
    void choosesTheSameEachTime() {
        CompiledProject compiled = new CompiledProject(Sample.venue(1, 40));

        assertThat(chosen(compiled).boards()).isEqualTo(chosen(compiled).boards());
        assertThat(chosen(compiled).panels()).isEqualTo(chosen(compiled).panels());
    }

    /** Board by board: d and a fill the first panel to 60 of 78 A, b and e the second to 60 A, and c is 24 A. */
    private static ProjectBuilder crowded() {
        return aProject()
                .panels(
                        aPanel("P1").slots(24).ratedAmps(26 / 0.8),
                        aPanel("P2").slots(24).ratedAmps(26 / 0.8))
                .boardTypes(aBoardType("twelve").outputs(12))
                .boards(
                        aBoard("B1").type("twelve").in("P1"),
                        aBoard("B2").type("twelve").in("P2"))
                .groups(aGroup("a"), aGroup("b"), aGroup("c"), aGroup("d"), aGroup("e"))
                .loads(group("d", 4, 9))
                .loads(group("a", 3, 8))
                .loads(group("b", 3, 8))
                .loads(group("e", 2, 18))
                .loads(group("c", 2, 12));
    }

    private static BoardChoice chosen(CompiledProject compiled) {
        BoardChoice choice = new BoardChoice(compiled);
        choice.choose();
        return choice;
    }

    private static List<LoadBuilder> group(String id, int loads, double amps) {
        List<LoadBuilder> group = new ArrayList<>();
        for (int i = 1; i <= loads; i++) {
            group.add(aLoad(id + i).group(id).runningAmps(amps));
        }
        return group;
    }

    /** Over all phases. */
    private static double[] runningAmps(CompiledProject compiled, BoardChoice choice) {
        double[] amps = new double[compiled.panelCount];
        for (int load = 0; load < compiled.loadCount(); load++) {
            if (choice.panels()[load] == CompiledProject.NONE) {
                continue;
            }
            amps[choice.panels()[load]] += compiled.loads[load].runningAmps() * compiled.poles[load];
        }
        return Arrays.stream(amps).map(sum -> Math.round(sum * 1e6) / 1e6).toArray();
    }
}
