package evenrise.model.rules;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.BoardTypeBuilder;
import evenrise.model.PlanBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.Grade;
import evenrise.model.plan.Subject;
import evenrise.model.plan.SubjectKind;
import evenrise.model.project.BoardTiming;
import evenrise.model.project.OfferedTimes;
import evenrise.model.project.Project;
import evenrise.model.project.Scene;
import evenrise.model.project.SceneUse;
import evenrise.model.project.SwitchedBy;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** What a broken rule says in parts: whom it is about, where, and by how much. */
class FindingPartsTest {
    private static List<BrokenRule> of(String rule, ProjectBuilder project, PlanBuilder plan) {
        return Judging.verdict(project, plan).violations().stream()
                .filter(each -> each.rule().equals(rule))
                .toList();
    }

    private static Subject subject(SubjectKind kind, String id) {
        return new Subject(kind, id);
    }

    /** 90 A on A of a panel of 100 A, of which 0.8 may be used. */
    @Test
    void aRatingHasItsNodeItsFigureAndItsLimit() {
        BrokenRule broken = of(
                        "rating",
                        aProject()
                                .panels(aPanel("P1").ratedAmps(100))
                                .loads(aLoad("L1").unswitched().runningAmps(90)),
                        aPlan().assignments(anAssignment("L1").at("P1", 1)))
                .get(0);

        assertThat(broken.subjects()).contains(subject(SubjectKind.PANEL, "P1"));
        assertThat(broken.figure().orElseThrow()).isCloseTo(90, within(1e-9));
        assertThat(broken.limit().orElseThrow()).isCloseTo(80, within(1e-9));
        assertThat(broken.unit()).isEqualTo("A");
        assertThat(broken.place()).contains("P1", "A");
        assertThat(broken.grade()).isEqualTo(Grade.BREAKS);
    }

    @Nested
    class OfOutputs {
        private final ProjectBuilder project = aProject().boards(aBoard("B1")).loads(aLoad("L1"), aLoad("L2"));

        @Test
        void aSharedOutputHasBothLoadsAndTheBoard() {
            BrokenRule broken = of(
                            "output",
                            project,
                            aPlan().board("B1", 0, 1)
                                    .assignments(
                                            anAssignment("L1").at("P1", 1).on("B1", 3),
                                            anAssignment("L2").at("P1", 3).on("B1", 3)))
                    .get(0);

            assertThat(broken.subjects())
                    .containsExactly(
                            subject(SubjectKind.LOAD, "L2"),
                            subject(SubjectKind.LOAD, "L1"),
                            subject(SubjectKind.BOARD, "B1"));
            assertThat(broken.place()).contains("B1", "3");
            assertThat(broken.figure()).isEmpty();
        }

        @Test
        void anOutputThatTheBoardHasNotHasTheBoardAndThePanel() {
            BrokenRule broken = of(
                            "output",
                            project,
                            aPlan().board("B1", 0, 1)
                                    .assignments(
                                            anAssignment("L1").at("P1", 1).on("B1", 9),
                                            anAssignment("L2").at("P1", 3).on("B1", 3)))
                    .get(0);

            assertThat(broken.subjects())
                    .contains(
                            subject(SubjectKind.LOAD, "L1"),
                            subject(SubjectKind.BOARD, "B1"),
                            subject(SubjectKind.PANEL, "P1"));
            assertThat(broken.place()).isEqualTo("panel P1 slot 1");
        }

        /** What is behind a contactor has neither board nor output of its own: each is refused. */
        @Test
        void whatIsBehindAContactorHasNoOutput() {
            ProjectBuilder behind = aProject()
                    .boards(aBoard("B1"))
                    .loads(
                            aLoad("L1").with(load -> load.switchedBy(SwitchedBy.CONTACTOR)),
                            aLoad("L2").with(load -> load.comesWith("L1")));
            List<BrokenRule> broken = of(
                    "output",
                    behind,
                    aPlan().board("B1", 0, 1)
                            .assignments(
                                    anAssignment("L1").at("P1", 1).on("B1", 1),
                                    anAssignment("L2").at("P1", 3).on("B1", 2)));

            assertThat(broken).hasSize(2);
            assertThat(broken).allSatisfy(each -> {
                assertThat(each.subjects())
                        .containsExactly(subject(SubjectKind.LOAD, "L2"), subject(SubjectKind.LOAD, "L1"));
                assertThat(each.place()).isEqualTo("panel P1 slot 3");
            });
            assertThat(broken).extracting(BrokenRule::message).anyMatch(text -> text.contains("output 2"));
            assertThat(broken).extracting(BrokenRule::message).anyMatch(text -> text.contains("board 'B1'"));
        }
    }

    /** A board whose outputs have times of their own has neither delay nor step: each that is stated is refused. */
    @Test
    void aBoardWithTimesByOutputHasNeitherDelayNorStep() {
        ProjectBuilder project = aProject()
                .boardTypes(aBoardType(BoardTypeBuilder.EIGHT)
                        .with(type -> type.startDelaySeconds(List.of())
                                .stepSeconds(List.of())
                                .timing(BoardTiming.EACH)
                                .timesSeconds(OfferedTimes.builder()
                                        .listed(List.of(0.0, 1.0))
                                        .build())))
                .boards(aBoard("B1"))
                .loads(aLoad("L1"));

        List<BrokenRule> broken = of(
                "board-setting",
                project,
                aPlan().board("B1", 2, 0.5)
                        .assignments(anAssignment("L1").at("P1", 1).on("B1", 1)));

        assertThat(broken).extracting(each -> each.figure().orElseThrow()).containsExactly(2.0, 0.5);
        assertThat(broken).extracting(BrokenRule::place).containsExactly("board B1", "board B1");
        assertThat(broken.get(0).message()).contains("a start delay", "2 s");
        assertThat(broken.get(1).message()).contains("a step", "0.5 s");
    }

    /** The last output at 2 s + 7·1 s, where 5 s are allowed. */
    @Test
    void aDurationIsInSeconds() {
        BrokenRule broken = of(
                        "duration",
                        aProject().maxDurationSeconds(5).boards(aBoard("B1")).loads(aLoad("L1")),
                        aPlan().board("B1", 2, 1)
                                .assignments(anAssignment("L1").at("P1", 1).on("B1", 8)))
                .get(0);

        assertThat(broken.figure()).hasValue(9);
        assertThat(broken.limit()).hasValue(5);
        assertThat(broken.unit()).isEqualTo("s");
        assertThat(broken.place()).isEqualTo("board B1 output 8");
    }

    /** Long lists are cut, and the rest is counted: none is lost where there is room for all. */
    @Test
    void listsAreCutWithACount() {
        List<Integer> all = IntStream.range(0, 500).boxed().toList();
        String cut = RuleWords.listed(all);
        long shown = cut.chars().filter(each -> each == ',').count() + 1;

        assertThat(cut).endsWith(" and " + (500 - shown) + " more");
        assertThat(RuleWords.listed(all.subList(0, (int) shown)))
                .doesNotContain("more")
                .endsWith(", " + (shown - 1));
    }

    /** Uses by list, by group and by role narrow each other; what no use names draws what others do. */
    @Test
    void aSceneNamesLoadsByListGroupAndRole() {
        Scene scene = Scene.builder()
                .id("speech")
                .weight(1)
                .others(1)
                .use(List.of(
                        SceneUse.builder().loads(List.of("L1")).factor(0.5).build(),
                        SceneUse.builder().group("stage").factor(0.25).build(),
                        SceneUse.builder()
                                .group("stage")
                                .loads(List.of("L3"))
                                .factor(0.1)
                                .build()))
                .build();
        Project project = aProject()
                .groups(aGroup("stage"))
                .loads(
                        aLoad("L1").runningAmps(10),
                        aLoad("L2").runningAmps(10).group("stage"),
                        aLoad("L3").runningAmps(10).group("stage"),
                        aLoad("L4").runningAmps(10))
                .with(made -> made.scenes(List.of(scene)))
                .build();

        Map<String, Double> amps =
                SceneCurrents.of(new ProjectIndex(project)).scenes().get(0).runningAmps();

        assertThat(amps.get("L1")).isCloseTo(5, within(1e-9));
        assertThat(amps.get("L2")).isCloseTo(2.5, within(1e-9));
        assertThat(amps.get("L3")).isCloseTo(1, within(1e-9));
        assertThat(amps.get("L4")).isCloseTo(10, within(1e-9));
    }
}
