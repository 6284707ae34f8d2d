package evenrise.solver.app;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.OptionalInt;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;

@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class ReworkDraftTest {
    private static final Path YARD = Path.of("..", "datasets", "lantern-yard");
    private static final String DATE = "2026-01-02";

    @TempDir
    private static Path searched;

    @TempDir
    private Path scratch;

    private ReworkDraft draft;

    private static ReworkRequest asked(Path folder) {
        return new ReworkRequest(
                Source.file(YARD.resolve("project.json")),
                Source.file(YARD.resolve("built.plan.json")),
                Optional.of(YARD.resolve("measured.csv")),
                folder,
                Effort.ofMoves(2000).withThreads(1),
                OptionalDouble.empty(),
                OptionalInt.empty(),
                1,
                false,
                NightOptions.NONE,
                Optional.empty(),
                Optional.empty(),
                SpareOptions.NONE,
                false,
                Optional.empty(),
                new SheetOptions("A", DATE, Optional.empty()));
    }

    @BeforeAll
    void search() {
        draft = StandIns.withoutProofs().draftRework(asked(searched), JobControl.NONE);
    }

    @Test
    void nothingIsWrittenUntilItIsAskedFor() {
        assertThat(searched).isEmptyDirectory();
        assertThat(draft.cures()).isNotEmpty().allMatch(each -> each.hardViolations() == 0);
        assertThat(draft.asBuilt().hardViolations()).isEqualTo(3);
        assertThat(draft.notes()).anyMatch(each -> each.contains("12 of 28 loads have measured currents"));
    }

    @Test
    void whatIsWrittenIsByteForByteWhatTheCommandWrites() throws IOException {
        draft.write(draft.chosen(), Optional.empty(), scratch.resolve("by-hand"));
        StandIns.withoutProofs().rework(asked(scratch.resolve("by-command")));

        List<String> names = names("by-command");
        assertThat(names("by-hand")).containsExactlyElementsOf(names).contains("work.json", "work-a4.pdf");
        for (String name : names) {
            assertThat(scratch.resolve("by-hand").resolve(name))
                    .hasSameBinaryContentAs(scratch.resolve("by-command").resolve(name));
        }
    }

    private List<String> names(String folder) throws IOException {
        try (Stream<Path> all = Files.list(scratch.resolve(folder))) {
            return all.map(each -> each.getFileName().toString()).sorted().toList();
        }
    }

    private static List<List<Integer>> sets(DraftedWork work) {
        return work.stages().stream().map(DraftedWork.Stage::changes).toList();
    }

    @Test
    void theProgramsOrderByHandIsAllowedAndWritten() {
        DraftedWork own = draft.order(draft.chosen());
        DraftedWork same = draft.order(draft.chosen(), sets(own));

        assertThat(own.refused()).isZero();
        assertThat(same.stages()).isEqualTo(own.stages());
        assertThat(same.isByHand()).isTrue();
        draft.write(draft.chosen(), Optional.of(sets(own)), scratch.resolve("by-hand"));
        assertThat(scratch.resolve("by-hand/work.json")).exists();
    }

    @Test
    void whatTheRefereeRefusesStandsAtItsStepAndIsNotWritten() {
        int cure = 0; // loads that change slots with each other, which no night can do one by one
        List<List<Integer>> single = new ArrayList<>();
        sets(draft.order(cure)).stream().flatMap(List::stream).forEach(each -> single.add(List.of(each)));

        DraftedWork byHand = draft.order(cure, single);

        assertThat(byHand.stages()).hasSize(single.size());
        assertThat(byHand.refused()).isPositive();
        assertThat(byHand.stages())
                .anySatisfy(stage -> assertThat(stage.steps())
                        .anySatisfy(step -> assertThat(step.refused()).isNotEmpty()));
        assertThatThrownBy(() -> draft.write(cure, Optional.of(single), scratch.resolve("by-hand")))
                .isInstanceOf(JobFailed.class)
                .hasMessageContaining("is not written: in stage");
        assertThat(scratch).isEmptyDirectory();
    }

    @Test
    void stagesThatLeaveAChangeOutAreRefused() {
        assertThatThrownBy(() -> draft.order(0, List.of(List.of(0), List.of(0))))
                .hasMessageContaining("each change once");
        assertThatThrownBy(() -> draft.order(99)).hasMessageContaining("there is no cure 99");
    }

    /** What the step is that ends a panel's time off. */
    private static String afterwards(DraftedWork.Stage stage, String panel) {
        int last = 0;
        for (int i = 0; i < stage.steps().size(); i++) {
            last = stage.steps().get(i).dead().contains(panel) ? i : last;
        }
        return stage.steps().get(last + 1).kind();
    }

    @Test
    void aPanelIsDeadFromTheStepThatIsolatesItToTheOneThatBringsItBack() {
        DraftedWork work = draft.order(draft.chosen());

        for (DraftedWork.Stage stage : work.stages()) {
            for (String panel : stage.deadPanels()) {
                List<String> kinds = stage.steps().stream()
                        .filter(step -> step.dead().contains(panel))
                        .map(DraftedWork.Step::kind)
                        .toList();
                assertThat(kinds).startsWith("isolate-panel").contains("make-ready");
                assertThat(afterwards(stage, panel)).isEqualTo("energise-panel");
            }
            assertThat(stage.steps().get(stage.steps().size() - 1).dead()).isEmpty();
        }
        assertThat(work.stages()).anyMatch(stage -> !stage.deadPanels().isEmpty());
    }

    @Test
    void theSheetsAreSeenAsTheyArePrinted() {
        try (DraftedSheets sheets = draft.printed(draft.chosen(), Optional.empty(), false)) {
            assertThat(sheets.pages())
                    .isGreaterThan(draft.order(draft.chosen()).stages().size());
            assertThat(sheets.png(0, 200)).startsWith(0x89, 'P', 'N', 'G');
        }
    }
}
