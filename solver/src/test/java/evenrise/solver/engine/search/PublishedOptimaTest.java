package evenrise.solver.engine.search;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.MadeBy;
import evenrise.model.plan.Metrics;
import evenrise.model.project.Project;
import evenrise.model.rules.PlanFinisher;
import evenrise.solver.bounds.ProvenBounds;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningOutcome;
import evenrise.solver.engine.PlanningRequest;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Classical instances whose published optima are reached by planning them, as anybody would. */
class PublishedOptimaTest {
    private static final long MOVES = 40_000;

    private static Metrics plan(Project project) {
        PlanningRequest request = new PlanningRequest(project, Optional.empty(), new Budget.Moves(MOVES), 1, 1);
        PlanningOutcome outcome = new Planner(request, progress -> {}).plan();
        MadeBy madeBy = MadeBy.builder()
                .softwareVersion("test")
                .projectSha256("none")
                .seed(1)
                .threads(1)
                .movesAllowed(MOVES)
                .build();
        return PlanFinisher.finish(project, outcome.plan(), madeBy, ProvenBounds.of(project))
                .metrics()
                .orElseThrow();
    }

    /**
     * Assembly-line balancing, least cycle time for a given number of stations. Tasks: Bowman 1960, Jackson 1956, Mertens
     * 1967, Jaeschke 1964, Mansoor 1964, in the collection of Scholl 1993 (Data of assembly line balancing problems).
     * Optima: published for the type-1 problem by Scholl and for type 2 in the tables of Blum 2011 (SORT 35(2):145–164);
     * each also proved by an exact solver.
     */
    @Nested
    class AssemblyLines {
        static Stream<Arguments> lines() {
            return Stream.of(
                            line(
                                    "Bowman",
                                    new int[] {11, 17, 9, 5, 8, 12, 10, 3},
                                    new int[][] {{1, 2}, {2, 3}, {2, 4}, {3, 5}, {3, 6}, {4, 6}, {5, 7}, {6, 8}},
                                    38,
                                    28,
                                    22,
                                    17),
                            line(
                                    "Jackson",
                                    new int[] {6, 2, 5, 7, 1, 2, 3, 6, 5, 5, 4},
                                    new int[][] {
                                        {1, 2}, {1, 3}, {1, 4}, {1, 5}, {2, 6}, {3, 7}, {4, 7}, {5, 7}, {6, 8}, {7, 9},
                                        {8, 10}, {9, 11}, {10, 11}
                                    },
                                    23,
                                    16,
                                    12,
                                    10,
                                    9,
                                    8,
                                    7),
                            line(
                                    "Mertens",
                                    new int[] {1, 5, 4, 3, 5, 6, 5},
                                    new int[][] {{1, 2}, {1, 4}, {2, 3}, {2, 5}, {4, 7}, {5, 6}},
                                    15,
                                    10,
                                    9,
                                    7,
                                    6),
                            line(
                                    "Jaeschke",
                                    new int[] {5, 3, 4, 5, 4, 5, 1, 4, 6},
                                    new int[][] {
                                        {1, 2}, {1, 3}, {2, 4}, {3, 4}, {4, 5}, {4, 6}, {4, 7}, {5, 8}, {6, 9}, {7, 9},
                                        {8, 9}
                                    },
                                    19,
                                    13,
                                    10,
                                    9,
                                    8,
                                    7,
                                    6),
                            line(
                                    "Mansoor",
                                    new int[] {4, 38, 45, 12, 10, 8, 12, 10, 2, 10, 34},
                                    new int[][] {
                                        {1, 4}, {2, 4}, {2, 5}, {3, 11}, {4, 6}, {5, 7}, {6, 8}, {7, 9}, {8, 10},
                                        {9, 10}, {10, 11}
                                    },
                                    93,
                                    62,
                                    48))
                    .flatMap(each -> each);
        }

        /** One case a number of stations, from two up. */
        private static Stream<Arguments> line(String name, int[] times, int[][] precedence, int... optima) {
            return IntStream.range(0, optima.length)
                    .mapToObj(i -> Arguments.of(name, times, precedence, i + 2, optima[i]));
        }

        @ParameterizedTest(name = "{0} on {3} stations: {4}")
        @MethodSource("lines")
        void reachTheLeastCycleTime(String name, int[] times, int[][] precedence, int stations, int optimum) {
            Metrics metrics = plan(Instances.assemblyLine(name, times, precedence, stations));

            assertThat(metrics.hardViolations()).isZero();
            assertThat(metrics.peakInrushAmps()).isCloseTo(optimum, within(1e-6));
        }
    }

    /** Three equal machines, least largest sum. */
    @Nested
    class ThreeMachines {
        static Stream<Arguments> instances() {
            return Stream.of(
                    // Walter 2013, Comparing the minimum completion times of two longest-first scheduling heuristics.
                    Arguments.of("Walter", new int[] {46, 39, 27, 26, 16, 13, 10}, 62),
                    // Graham 1969, SIAM J. Appl. Math. 17(2):416–429: where longest-first is worst.
                    Arguments.of("Graham", new int[] {5, 5, 4, 4, 3, 3, 3}, 9),
                    // The usual example of number partitioning into three.
                    Arguments.of("five numbers", new int[] {4, 5, 6, 7, 8}, 11),
                    // Task times of Mansoor and Mitchell without their order; a third of the sum, rounded up, is
                    // reached.
                    Arguments.of("Mansoor", new int[] {4, 38, 45, 12, 10, 8, 12, 10, 2, 10, 34}, 62),
                    Arguments.of(
                            "Mitchell",
                            new int[] {4, 3, 9, 5, 9, 4, 8, 7, 5, 1, 3, 1, 5, 3, 5, 3, 13, 5, 2, 3, 7},
                            35));
        }

        @ParameterizedTest(name = "{0}: {2}")
        @MethodSource("instances")
        void reachTheLeastLargestSum(String name, int[] weights, int optimum) {
            Metrics metrics = plan(Instances.threeMachines(name, weights));

            assertThat(metrics.hardViolations()).isZero();
            assertThat(metrics.peakInrushAmps()).isCloseTo(optimum, within(1e-6));
        }
    }
}
