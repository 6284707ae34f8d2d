package evenrise.solver.sample;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import evenrise.model.plan.Bounds;
import evenrise.model.plan.BrokenRule;
import evenrise.model.plan.MadeBy;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.BoardType;
import evenrise.model.project.FixedPlace;
import evenrise.model.project.Load;
import evenrise.model.project.OnEmergency;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Role;
import evenrise.model.project.ShutdownGroup;
import evenrise.model.rules.PlanFinisher;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.junit.jupiter.api.DisplayName;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

@DisplayName("A drawn venue")
class SampleTest {
    private static final MadeBy NOBODY = MadeBy.builder()
            .softwareVersion("test")
            .projectSha256("none")
            .seed(0)
            .threads(1)
            .timeUsedSeconds(0)
            .build();

    static Verdict verdictOnTheLayout(Venue venue) {
        Plan finished = PlanFinisher.finish(
                venue.project(),
                venue.layout(),
                NOBODY,
                Bounds.builder()
                        .objective(0)
                        .peakInrushAmps(0)
                        .supplyDeviationAmps(0)
                        .panelDeviationsAmps(0)
                        .durationSeconds(0)
                        .build());
        return Referee.judge(venue.project(), finished);
    }

    @Nested
    @DisplayName("can be planned:")
    class Feasible {
        @ParameterizedTest(name = "{0} panels, {1} loads, {2}")
        @CsvSource({
            "1, 6, THREE_PHASE",
            "1, 30, SPLIT_PHASE",
            "2, 48, THREE_PHASE",
            "3, 90, THREE_PHASE",
            "4, 24, SPLIT_PHASE",
            "7, 168, SPLIT_PHASE",
            "13, 312, THREE_PHASE"
        })
        void itsLayoutKeepsEveryHardRule(int panels, int loads, PhaseSystem system) {
            for (long seed = 0; seed < 40; seed++) {
                Venue venue = Sample.venue(seed, new VenueSize(panels, loads, system));

                List<BrokenRule> violations = verdictOnTheLayout(venue).violations();

                assertThat(violations).as("seed %d", seed).isEmpty();
            }
        }

        @Test
        void itsLayoutKeepsEveryHardRuleAtTenThousandLoads() {
            Venue venue = Sample.venue(5, VenueSize.ofPanels(420));

            Verdict verdict = verdictOnTheLayout(venue);

            assertThat(venue.project().loads()).hasSize(10_080);
            assertThat(verdict.violations()).isEmpty();
        }

        @Test
        void itsLimitsBind() {
            Project project = Sample.venue(3, 12);

            assertThat(project.supply().inrushLimitAmps()).isPresent();
            assertThat(project.panels())
                    .anyMatch(panel -> panel.inrushLimitAmps().isPresent());
            double poleAmps = project.loads().stream()
                    .mapToDouble(load -> load.poles() * load.runningAmps())
                    .sum();
            assertThat(poleAmps / 3)
                    .isBetween(
                            0.6 * 0.8 * project.supply().ratedAmps(),
                            0.8 * project.supply().ratedAmps());
        }
    }

    @Nested
    @DisplayName("is drawn by its seed:")
    class Seeded {
        @Test
        void equalSeedsGiveEqualProjects() {
            assertThat(Sample.venue(7, VenueSize.ofPanels(9))).isEqualTo(Sample.venue(7, VenueSize.ofPanels(9)));
        }

        @Test
        void otherSeedsGiveOtherProjects() {
            assertThat(Sample.venue(7, 9).loads())
                    .isNotEqualTo(Sample.venue(8, 9).loads());
        }
    }

    @Nested
    @DisplayName("has a realistic mix:")
    class Mix {
        private final Project project = Sample.venue(1, 40);
        private final Map<String, ShutdownGroup> groups =
                project.shutdownGroups().stream().collect(Collectors.toMap(ShutdownGroup::id, Function.identity()));

        @Test
        void everyRoleEveryPoleCountAndUnswitchedLoadsOccur() {
            assertThat(project.loads()).extracting(Load::role).contains(Role.values());
            assertThat(project.loads()).extracting(Load::poles).contains(1, 2, 3);
            assertThat(project.loads()).extracting(Load::switched).contains(true, false);
        }

        @Test
        void spikesTransformersAndSoftStartsOccur() {
            assertThat(project.loads())
                    .anyMatch(load -> load.inrushHalfMillis() <= 5)
                    .anyMatch(load -> load.inrushHalfMillis() >= 20 && load.inrushHalfMillis() <= 60)
                    .anyMatch(load -> load.inrushHalfMillis() >= 300);
        }

        @Test
        void groupsDropHoldKeepToOnePanelAndOutgrowTheLargestBoard() {
            int largest = project.boardTypes().stream()
                    .mapToInt(BoardType::outputs)
                    .max()
                    .orElseThrow();
            Map<String, Long> sizes = project.loads().stream()
                    .filter(load -> load.shutdownGroup().isPresent())
                    .collect(Collectors.groupingBy(load -> load.shutdownGroup().orElseThrow(), Collectors.counting()));

            assertThat(groups.values())
                    .extracting(ShutdownGroup::onEmergency)
                    .contains(OnEmergency.DROP, OnEmergency.HOLD);
            assertThat(groups.values()).anyMatch(ShutdownGroup::samePanel);
            assertThat(sizes.values()).anyMatch(size -> size > largest);
            assertThat(sizes.keySet()).containsExactlyInAnyOrderElementsOf(groups.keySet());
        }

        @Test
        void everyTieBetweenLoadsAndBoardsOccurs() {
            assertThat(project.loads())
                    .anyMatch(load -> !load.comesAfter().isEmpty())
                    .anyMatch(load -> !load.apartFrom().isEmpty())
                    .anyMatch(load -> !load.samePhaseAs().isEmpty())
                    .anyMatch(load -> !load.panels().isEmpty())
                    .anyMatch(load -> !load.fixed().equals(FixedPlace.NONE));
            assertThat(project.boards()).extracting(Board::after).anyMatch(after -> after.isPresent());
            assertThat(project.boards()).anyMatch(board -> board.reaches().size() > 1);
            assertThat(project.panels()).anyMatch(panel -> panel.switchedSlots().isPresent());
            assertThat(project.panels())
                    .anyMatch(panel -> !panel.reservedSlots().isEmpty());
        }

        @Test
        void noBreakerRunsAboveFourFifthsOfItsRating() {
            assertThat(project.loads()).allMatch(load -> load.runningAmps() <= 0.8 * load.breakerAmps());
        }

        @Test
        void namesAreDistinct() {
            assertThat(project.loads()).extracting(Load::name).doesNotHaveDuplicates();
            assertThat(project.loads()).extracting(Load::id).doesNotHaveDuplicates();
            assertThat(project.boards()).extracting(Board::id).doesNotHaveDuplicates();
        }
    }

    @Nested
    @DisplayName("has the size that is asked for:")
    class Size {
        @ParameterizedTest(name = "{0} panels, {1} loads")
        @CsvSource({"1, 6", "5, 30", "5, 150", "40, 1000", "11, 199"})
        void panelsAndLoadsAreCounted(int panels, int loads) {
            Project project = Sample.venue(2, new VenueSize(panels, loads, PhaseSystem.THREE_PHASE))
                    .project();

            assertThat(project.panels()).hasSize(panels);
            assertThat(project.loads()).hasSize(loads);
        }

        @Test
        void refusesMoreLoadsThanThePanelsHoldAndNamesACure() {
            assertThatThrownBy(() -> new VenueSize(2, 61, PhaseSystem.THREE_PHASE))
                    .isInstanceOf(IllegalArgumentException.class)
                    .hasMessage("61 loads in 2 panels, expected 12 to 60. Maybe ask for 3 panel(s).");
        }

        @Test
        void refusesFewerLoadsThanThePanelsNeed() {
            assertThatThrownBy(() -> new VenueSize(2, 11, PhaseSystem.THREE_PHASE))
                    .hasMessage("11 loads in 2 panels, expected 12 to 60. Maybe ask for 1 panel(s).");
        }

        @Test
        void refusesNoPanelAndASinglePhase() {
            assertThatThrownBy(() -> VenueSize.ofPanels(0)).hasMessageContaining("0 panels, expected 1 to 800");
            assertThatThrownBy(() -> new VenueSize(1, 24, PhaseSystem.SINGLE_PHASE))
                    .hasMessageContaining("expected three-phase or split-phase");
        }
    }
}
