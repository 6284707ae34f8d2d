package evenrise.solver.engine.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.Referee;
import evenrise.model.rules.Verdict;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Plantful.Part;
import evenrise.solver.engine.state.CompiledProject;
import evenrise.solver.engine.state.PlanMapper;
import evenrise.solver.engine.state.PlanSums;
import evenrise.solver.sample.Sample;
import evenrise.solver.sample.Venue;
import evenrise.solver.sample.VenueSize;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The same as {@link ScoreTest} of plants as they are: every part alone, with each other and all together. */
class PlantScoreTest {
    private static final long FEW = 60;
    private static final long MOVES = 400;
    private static final int PLANTS = Integer.getInteger("evenrise.plants", 40);
    /** What the search charges nothing for, since it draws nothing that breaks it. */
    private static final Set<String> NEVER_BROKEN = Set.of(
            "board-setting",
            "output",
            "step-time",
            "phase",
            "slot",
            "switched-slot",
            "panel-allowed",
            "voltage",
            "off-delay");

    @ParameterizedTest
    @EnumSource
    void isWhatANaiveEvaluatorSaysOfEachPart(Part part) {
        for (long seed = 1; seed <= 4; seed++) {
            Project project = Plantful.of(seed + 10L * part.ordinal(), EnumSet.of(part));

            ScoreTest.isWhatANaiveEvaluatorSays(project, Optional.empty(), seed, MOVES);
        }
    }

    @ParameterizedTest
    @EnumSource
    void isTheSameWhereEachPartMeetsAnother(Part part) {
        for (Part other : Part.values()) {
            if (other.ordinal() > part.ordinal()) {
                long seed = 100 + 20L * part.ordinal() + other.ordinal();

                ScoreTest.isWhatANaiveEvaluatorSays(
                        Plantful.of(seed, EnumSet.of(part, other)), Optional.empty(), seed, FEW);
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {201, 202, 203, 204, 205, 206, 207, 208, 209, 210, 211, 212})
    void isTheSameWithManyPartsTogether(long seed) {
        ScoreTest.isWhatANaiveEvaluatorSays(Plantful.of(seed, many(seed)), Optional.empty(), seed, MOVES);
    }

    /** With an earlier plan every move costs. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {221, 222, 223, 224, 225, 226})
    void isTheSameBesideAnEarlierPlan(long seed) {
        Set<Part> parts = Plantful.some(seed, 30);
        parts.add(Part.WEIGHTS);
        Project project = Plantful.of(seed, parts);

        ScoreTest.isWhatANaiveEvaluatorSays(
                project, Optional.of(planned(project, Optional.empty(), 300, seed)), seed, MOVES);
    }

    /** Loads and boards that the earlier plan does not have cost nothing; one panel of it is gone. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {231, 232, 233, 234})
    void isTheSameBesideAPlanOfAnotherProject(long seed) {
        Set<Part> parts = Plantful.some(seed, 30);
        parts.add(Part.WEIGHTS);
        Project project = Plantful.of(seed, parts);
        Plan whole = planned(project, Optional.empty(), 300, seed);
        String gone = project.panels().get(0).id();
        Plan part = whole.with()
                .boards(whole.boards().subList(1, whole.boards().size()))
                .assignments(whole.assignments().stream()
                        .skip(2)
                        .map(each -> each.panel().equals(gone) ? each.withPanel("gone") : each)
                        .toList())
                .build();

        ScoreTest.isWhatANaiveEvaluatorSays(project, Optional.of(part), seed, MOVES);
    }

    /** Limits that hold for events see all that changes currents, times or sources. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {241, 242, 243, 244, 245, 246, 247, 248, 249, 250})
    void isTheSameWithManyPartsWhereLimitsHoldForEvents(long seed) {
        Set<Part> parts = many(seed);
        parts.add(Part.LIMITS_FOR_EVENTS);
        if (seed % 3 == 0) {
            parts.add(Part.SOURCES);
        }
        Project project = Plantful.of(seed, parts);

        ScoreTest.isWhatANaiveEvaluatorSays(project, Optional.empty(), seed, MOVES);
        agreesWithTheReferee(project, seed);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4})
    void isTheSameInLargerPlants(long seed) {
        Project project = larger(seed, many(seed));

        assertThat(new CompiledProject(project).isSmall()).isFalse();
        ScoreTest.isWhatANaiveEvaluatorSays(project, Optional.empty(), seed, FEW);
    }

    /** Where a shutdown group is larger than a board, it is seated on several, all of one system. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1080, 1290})
    void isTheSameWhereGroupsOfSeveralBoardsMeetSystems(long seed) {
        ScoreTest.isWhatANaiveEvaluatorSays(
                larger(seed, Plantful.some(seed, percent(seed))), Optional.empty(), seed, FEW);
    }

    @Tag("slow")
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("hundreds")
    void isTheSameOfHundredsOfPlants(long seed, int percent) {
        Project project = seed % 10 == 0
                ? larger(seed, Plantful.some(seed, percent))
                : Plantful.of(seed, Plantful.some(seed, percent));

        ScoreTest.isWhatANaiveEvaluatorSays(project, Optional.empty(), seed, MOVES);
    }

    private static List<Arguments> hundreds() {
        List<Arguments> all = new ArrayList<>();
        for (long seed = 1001; seed <= 1000 + PLANTS; seed++) {
            all.add(Arguments.of(seed, percent(seed)));
        }
        return all;
    }

    private static int percent(long seed) {
        return 10 + (int) (seed % 7) * 15;
    }

    @ParameterizedTest
    @EnumSource
    void agreesWithTheRefereeOnEachPart(Part part) {
        for (long seed = 301; seed <= 304; seed++) {
            agreesWithTheReferee(Plantful.of(seed + 10L * part.ordinal(), EnumSet.of(part)), seed);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {401, 402, 403, 404, 405, 406, 407, 408, 409, 410, 411, 412, 413, 414, 415, 416})
    void agreesWithTheRefereeOnMany(long seed) {
        agreesWithTheReferee(Plantful.of(seed, many(seed)), seed);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {11, 12, 13})
    void agreesWithTheRefereeOnLargerPlants(long seed) {
        agreesWithTheReferee(larger(seed, many(seed)), seed);
    }

    @Tag("slow")
    @ParameterizedTest(name = "seed {0}")
    @MethodSource("hundreds")
    void agreesWithTheRefereeOnHundredsOfPlants(long seed, int percent) {
        agreesWithTheReferee(Plantful.of(seed, Plantful.some(seed, percent)), seed);
    }

    /** A group that no board could hold, of which a load is fixed to another board than the rest may have. */
    @Test
    void keepsEachLoadOfAGroupOnTheBoardThatItIsFixedTo() {
        agreesWithTheReferee(Plantful.of(1216, Plantful.some(1216, percent(1216))), 1216);
    }

    private static Set<Part> many(long seed) {
        return Plantful.some(seed, seed % 2 == 0 ? 30 : 80);
    }

    private static Project larger(long seed, Set<Part> parts) {
        Venue venue = Sample.venue(seed, new VenueSize(3, 60, PhaseSystem.THREE_PHASE));
        return Plantful.of(venue.project(), Plans.judged(venue.project(), venue.layout()), seed, parts);
    }

    private static Plan planned(Project project, Optional<Plan> from, long moves, long seed) {
        PlanningRequest request = new PlanningRequest(project, from, new Budget.Moves(moves), seed, 1);
        return Plans.judged(project, new Planner(request, progress -> {}).plan().plan());
    }

    /** Hard level zero and no violation are the same thing, and the objective is the referee's, from an earlier plan, too. */
    private static void agreesWithTheReferee(Project project, long seed) {
        Optional<Plan> earlier = Optional.empty();
        for (long moves : new long[] {1, 100, 1_500}) {
            Plan plan = planned(project, earlier, moves, seed);
            Optional<Plan> kept = earlier.filter(any -> project.objective().move() > 0);
            Verdict verdict = Referee.judge(Layout.of(project, plan), kept);
            CompiledProject compiled = new CompiledProject(project, false, kept);
            PlanSums sums = new PlanMapper(compiled).toSums(plan);

            assertThat(verdict.violations())
                    .as("what no move may break")
                    .noneMatch(each ->
                            NEVER_BROKEN.contains(each.rule()) || each.kind().equals("not-where-fixed"));
            assertThat(sums.hardCharge() == 0)
                    .as("hard charge %d, violations %s", sums.hardCharge(), verdict.violations())
                    .isEqualTo(verdict.violations().isEmpty());
            if (hasEveryLead(project, plan)) {
                assertThat(sums.objectiveMilliAmps() / 1000.0)
                        .isCloseTo(verdict.metrics().objective(), within(0.002));
            }
            earlier = Optional.of(plan);
        }
    }

    /** Whether nothing is behind the contactor of a load that found no room: what that draws is nothing, or its base. */
    private static boolean hasEveryLead(Project project, Plan plan) {
        Set<String> assigned = plan.assignments().stream().map(Assignment::load).collect(Collectors.toSet());
        return project.loads().stream()
                .flatMap(load -> load.comesWith().stream())
                .allMatch(assigned::contains);
    }
}
