package evenrise.solver.compare;

import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.file.SideNotes;
import evenrise.model.plan.Plan;
import evenrise.model.project.Catalogue;
import evenrise.model.project.PanelType;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.SlotNumbering;
import evenrise.solver.app.StandIns;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ScenariosTest {
    @TempDir
    private Path folder;

    private static ProjectBuilder project(int... groupSizes) {
        List<LoadBuilder> loads = new ArrayList<>();
        ProjectBuilder project = aProject()
                .boardTypes(
                        aBoardType("six").outputs(6).price(300),
                        aBoardType("twelve").outputs(12).price(500));
        for (int i = 0; i < groupSizes.length; i++) {
            project.groups(aGroup("g" + i));
            for (int k = 0; k < groupSizes[i]; k++) {
                loads.add(aLoad("g" + i + "-" + k).runningAmps(4).group("g" + i));
            }
        }
        return project.loads(loads)
                .catalogue(Catalogue.builder()
                        .currency("EUR")
                        .panelTypes(List.of(
                                PanelType.builder()
                                        .id("small")
                                        .slots(12)
                                        .ratedAmps(100)
                                        .neutralFactor(1)
                                        .numbering(SlotNumbering.ALTERNATING)
                                        .price(400)
                                        .build(),
                                PanelType.builder()
                                        .id("large")
                                        .slots(30)
                                        .ratedAmps(200)
                                        .neutralFactor(1)
                                        .numbering(SlotNumbering.ALTERNATING)
                                        .price(900)
                                        .build()))
                        .boardsReachAll(true)
                        .build());
    }

    private static List<Scenarios.Cell> cells(
            Project project, Optional<CountRange> panels, Optional<CountRange> boards) {
        return new Comparison(new Variation(project), List.of(), panels, boards).cells();
    }

    private Sweep sweep(Project project, int threads) {
        return new Sweep(
                new Variation(project),
                folder,
                SideNotes.NONE,
                2_000,
                1,
                false,
                new ScenarioPool(threads, StandIns.finisher()));
    }

    @Test
    void thatThereIsNoMakeUpIsNotSaidOfAListThatWasStopped() {
        Variation stopped = new Variation(project(3, 3).build(), () -> true);

        assertThat(new Comparison(stopped, List.of(), Optional.empty(), Optional.empty()).cells())
                .allSatisfy(cell -> assertThat(cell.why())
                        .hasValueSatisfying(why -> assertThat(why).startsWith("not looked at")));
    }

    @Test
    void takeTheCheapestMakeUpThatCountingAllows() {
        List<Scenarios.Cell> cells =
                cells(project(5, 5, 5).build(), Optional.of(new CountRange(1, 2)), Optional.of(new CountRange(2, 2)));

        // 15 poles: one large panel, or two small ones; 15 outputs in groups of five: a six and a twelve
        assertThat(cells).extracting(cell -> cell.scenarios().get(0).price()).containsExactly(900.0 + 800, 800.0 + 800);
    }

    @Test
    void sayWhyANumberIsImpossible() {
        List<Scenarios.Cell> cells =
                cells(project(5, 5, 5).build(), Optional.of(new CountRange(1, 1)), Optional.of(new CountRange(1, 1)));

        assertThat(cells).singleElement().satisfies(cell -> {
            assertThat(cell.scenarios()).isEmpty();
            assertThat(cell.why()).hasValueSatisfying(why -> assertThat(why).contains("no make-up has the slots"));
        });
    }

    @Test
    void beginAtTheLeastNumberOfBoards() {
        List<Scenarios.Cell> cells =
                cells(project(7, 7, 7).build(), Optional.of(new CountRange(1, 1)), Optional.empty());

        // 21 outputs would go on two boards of twelve, but no two groups of seven share one
        assertThat(cells.get(0).boards()).isEqualTo(3);
    }

    @Test
    void askForNoMoreBoardsThanThereAreLoadsToSwitch() {
        List<Scenarios.Cell> cells = cells(project(1, 1).build(), Optional.of(new CountRange(1, 1)), Optional.empty());

        assertThat(cells).extracting(Scenarios.Cell::boards).containsExactly(1, 2);
    }

    @Test
    void sayWhyNoNumberIsPossible() {
        Project project = project(5).build();
        Project threePoles = project.with()
                .loads(project.loads().stream().map(load -> load.withPoles(3)).toList())
                .supply(project.supply().withSystem(PhaseSystem.SINGLE_PHASE))
                .build();

        assertThat(cells(threePoles, Optional.empty(), Optional.empty()))
                .allSatisfy(cell -> assertThat(cell.why()).isPresent());
    }

    @Test
    void areAllPlannedAndGoOnFromWhatIsOnDisk() throws Exception {
        List<Scenario> scenarios =
                cells(project(5, 5, 5).build(), Optional.of(new CountRange(2, 2)), Optional.of(new CountRange(2, 3)))
                        .stream()
                        .flatMap(cell -> cell.scenarios().stream())
                        .toList();

        List<ScenarioResult> first = sweep(project(5, 5, 5).build(), 2).run(scenarios, any -> {});
        List<ScenarioResult> second = sweep(project(5, 5, 5).build(), 1).run(scenarios, any -> {});

        assertThat(first)
                .hasSameSizeAs(scenarios)
                .allSatisfy(each -> assertThat(each.isSound()).isTrue());
        assertThat(plans(second)).isEqualTo(plans(first));
        assertThat(UnbeatenScenarios.of(first)).isNotEmpty().hasSizeLessThanOrEqualTo(first.size());
    }

    @Test
    void leaveNothingBehindOfWhatWasStopped() throws Exception {
        List<Scenario> scenarios =
                cells(project(5, 5).build(), Optional.of(new CountRange(1, 1)), Optional.of(new CountRange(2, 2)))
                        .stream()
                        .flatMap(cell -> cell.scenarios().stream())
                        .toList();
        Sweep sweep = sweep(project(5, 5).build(), 1);
        sweep.stop();

        assertThat(sweep.run(scenarios, any -> {})).isEmpty();
        assertThat(folder).isEmptyDirectory();
    }

    private static List<Plan> plans(List<ScenarioResult> findings) {
        return findings.stream().map(each -> each.plan()).toList();
    }
}
