package evenrise.solver.engine.search;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.check.Feasibility;
import evenrise.model.check.Objection;
import evenrise.model.check.ProjectChecks;
import evenrise.model.plan.Plan;
import evenrise.model.project.Board;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.NodeSource;
import evenrise.model.project.Panel;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Spare;
import evenrise.model.project.SwitchedBy;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import evenrise.model.rules.Referee;
import evenrise.solver.engine.Budget;
import evenrise.solver.engine.PlanningRequest;
import evenrise.solver.engine.search.Plantful.Part;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Set;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** What is called impossible of plants as they are, and that nothing is which a plan keeps. */
class PlantFeasibilityTest {
    private static final int PLANTS = Integer.getInteger("evenrise.plants", 20);
    private static final long SOME_MOVES = 400;

    @Nested
    class OfRandomPlants {
        /** As drawn, and again as tight as the plan that was found just keeps: with its own peaks, currents and time as limits. */
        @Test
        void nothingIsCalledImpossibleThatAPlanKeeps() {
            int kept = 0;
            for (long seed = 1; seed <= PLANTS; seed++) {
                Set<Part> parts = Plantful.some(500 + seed, 12);
                Project project = Plantful.of(500 + seed, parts);
                Layout layout = planned(project, seed);
                if (isSound(layout)) {
                    assertThat(Feasibility.impossible(project))
                            .as("seed %d, %s", seed, parts)
                            .isEmpty();
                }
                Project tight = tight(layout);
                if (ProjectChecks.errors(tight).isEmpty() && isSound(Layout.of(tight, ofBoards(tight, layout)))) {
                    kept++;
                    assertThat(Feasibility.impossible(tight))
                            .as("tight, seed %d, %s", seed, parts)
                            .isEmpty();
                }
            }
            assertThat(kept).as("plants as tight as a plan keeps").isGreaterThan(PLANTS / 5);
        }

        private Layout planned(Project project, long seed) {
            PlanningRequest request =
                    new PlanningRequest(project, Optional.empty(), new Budget.Moves(SOME_MOVES), seed, 1);
            Plan plan = new Planner(request, progress -> {}).plan().plan();
            return Layout.of(project, Plans.judged(project, plan));
        }

        private boolean isSound(Layout layout) {
            return Referee.judge(layout).violations().isEmpty();
        }

        private Plan ofBoards(Project project, Layout layout) {
            Set<String> boards = project.boards().stream().map(Board::id).collect(Collectors.toSet());
            return layout.plan()
                    .withBoards(layout.plan().boards().stream()
                            .filter(each -> boards.contains(each.id()))
                            .toList());
        }

        private Project tight(Layout layout) {
            Project project = layout.project();
            Set<String> started = project.boards().stream()
                    .flatMap(board -> board.after().stream())
                    .collect(Collectors.toSet());
            List<Panel> panels = new ArrayList<>();
            for (int p = 0; p < project.panels().size(); p++) {
                Panel panel = project.panels().get(p);
                double rated = rated(
                        layout.nodes().get(1 + p),
                        panel.continuousFractionUnder(project.supply()),
                        panel.neutralFactor());
                panels.add(panel.with()
                        .ratedAmps(rated)
                        .inrushLimitAmps(limit(layout, 1 + p))
                        .reservedSlots(
                                project.spareIn(panel).isPresent() ? panel.reservedSlots() : unused(panel, layout))
                        .build());
            }
            List<DistributionNode> nodes = new ArrayList<>();
            for (int n = 0; n < project.nodes().size(); n++) {
                DistributionNode node = project.nodes().get(n);
                int at = 1 + panels.size() + n;
                double fraction =
                        node.continuousFraction().orElse(project.supply().continuousFraction());
                nodes.add(node.with()
                        .ratedAmps(rated(layout.nodes().get(at), fraction, node.neutralFactor()))
                        .inrushLimitAmps(limit(layout, at))
                        .build());
            }
            return project.with()
                    .supply(project.supply()
                            .with()
                            .ratedAmps(rated(
                                    layout.nodes().get(0),
                                    project.supply().continuousFraction(),
                                    project.supply().neutralFactor()))
                            .inrushLimitAmps(limit(layout, 0))
                            .build())
                    .maxDurationSeconds(OptionalDouble.of(
                            Math.max(0.001, Referee.judge(layout).metrics().durationSeconds())))
                    .panels(panels)
                    .nodes(nodes)
                    .boards(project.boards().stream()
                            .filter(board -> started.contains(board.id())
                                    || !layout.outputs(board.id()).isEmpty())
                            .toList())
                    .build();
        }

        private OptionalDouble limit(Layout layout, int node) {
            return OptionalDouble.of(Math.max(0.001, layout.worstPeak(node).amps()));
        }

        /** What the plan just keeps: of lines, or of the neutral where that is more. */
        private double rated(NodeFigures node, double fraction, double neutralFactor) {
            double line = node.runningAmps().values().stream()
                    .mapToDouble(Double::doubleValue)
                    .max()
                    .orElse(0);
            return Math.max(1, Math.max(line / fraction, node.neutralAmps() / neutralFactor));
        }

        private List<Integer> unused(Panel panel, Layout layout) {
            Set<Integer> taken = layout.in(panel).stream()
                    .flatMap(each -> each.slots().stream())
                    .collect(Collectors.toSet());
            List<Integer> unused = new ArrayList<>();
            for (int slot = 1; slot <= panel.slots(); slot++) {
                if (!taken.contains(slot)) {
                    unused.add(slot);
                }
            }
            return unused;
        }
    }

    @Nested
    class OfSystems {
        @Test
        void eachNeedsBoardsOfItsOwn() {
            ProjectBuilder project = halls(aBoard("B1"), load("L1", "hall"), load("L2", "annex"));

            assertThat(impossible(project)).singleElement().satisfies(it -> {
                assertThat(it.pointer()).isEqualTo("/boards");
                assertThat(it.value()).contains("1 load of system 'hall'", "1 load of system 'annex'");
            });
        }

        @Test
        void nothingIsSaidWhereEachHasOne() {
            assertThat(impossible(halls(aBoard("B1"), load("L1", "hall")).boards(aBoard("B2"))))
                    .isEmpty();
        }

        @Test
        void aBoardOfAnotherSystemIsNone() {
            ProjectBuilder project =
                    halls(aBoard("B1").with(it -> it.system(Optional.of("annex"))), load("L1", "hall"));

            assertThat(impossible(project))
                    .anySatisfy(it -> assertThat(it.value()).contains("can only be on no board"));
        }

        private ProjectBuilder halls(evenrise.model.BoardBuilder board, LoadBuilder... loads) {
            return aProject()
                    .boards(board)
                    .loads(loads)
                    .with(it -> it.systems(List.of(
                            SwitchedSystem.builder().id("hall").build(),
                            SwitchedSystem.builder().id("annex").build())));
        }

        private LoadBuilder load(String id, String system) {
            return aLoad(id).with(it -> it.system(Optional.of(system)));
        }
    }

    @Nested
    class OfTheTree {
        /** 30 A on each of three loads, all in the one panel below a node of 32 A · 80 %: a third of 90 A is more. */
        @Test
        void aNodeCarriesWhatCanSitNowhereElse() {
            ProjectBuilder project = below(32, aLoad("L1"), aLoad("L2"), aLoad("L3"));

            assertThat(impossible(project))
                    .anySatisfy(it -> assertThat(it.pointer()).isEqualTo("/nodes/0/rated_a"));
        }

        @Test
        void nothingIsSaidAtTheLimit() {
            assertThat(impossible(below(37.5, aLoad("L1"), aLoad("L2"), aLoad("L3"))))
                    .isEmpty();
        }

        /** The same loads at a source of their own are none of the supply's. */
        @Test
        void theSupplyDoesNotCarryWhatASourceFeeds() {
            ProjectBuilder project = below(100, aLoad("L1"))
                    .supply(evenrise.model.Fixtures.aSupply().ratedAmps(1))
                    .with(it -> it.nodes(List.of(node(100)
                            .withSource(Optional.of(NodeSource.builder()
                                    .system(PhaseSystem.THREE_PHASE)
                                    .lineToNeutralVolts(120)
                                    .frequencyHertz(60)
                                    .build())))));

            assertThat(impossible(project)).isEmpty();
        }

        @Test
        void aLoadOfAnotherVoltageFitsNowhere() {
            ProjectBuilder project = below(100, aLoad("L1").with(it -> it.lineToNeutralVolts(OptionalDouble.of(277))));

            assertThat(impossible(project))
                    .anySatisfy(it ->
                            assertThat(it.value()).contains("it has 120 V to neutral, the load is made for 277 V"));
        }

        private ProjectBuilder below(double ratedAmps, LoadBuilder... loads) {
            for (LoadBuilder load : loads) {
                load.runningAmps(30);
            }
            return aProject()
                    .panels(aPanel("P1").with(it -> it.fedFrom(Optional.of("MDP"))))
                    .boards(aBoard("B1"))
                    .loads(loads)
                    .with(it -> it.nodes(List.of(node(ratedAmps))));
        }

        private DistributionNode node(double ratedAmps) {
            return DistributionNode.builder().id("MDP").ratedAmps(ratedAmps).build();
        }
    }

    @Nested
    class OfContactors {
        /** Two loads on a board of one output: possible behind one contactor, impossible by two breakers. */
        @Test
        void whatIsBehindOneNeedsNoOutput() {
            LoadBuilder first = aLoad("L1").with(it -> it.switchedBy(SwitchedBy.CONTACTOR));

            assertThat(impossible(one(first, aLoad("L2").with(it -> it.comesWith(Optional.of("L1"))))))
                    .isEmpty();
            assertThat(impossible(one(first, aLoad("L2")))).isNotEmpty();
        }

        private ProjectBuilder one(LoadBuilder... loads) {
            return aProject()
                    .boardTypes(aBoardType("one").outputs(1))
                    .boards(aBoard("B1").type("one"))
                    .loads(loads);
        }
    }

    @Nested
    class OfSpare {
        @Test
        void slotsThatAreToStayFreeAreNoPlaces() {
            assertThat(impossible(slots(2))).isEmpty();
            assertThat(impossible(slots(3)))
                    .anySatisfy(it -> assertThat(it.pointer()).isEqualTo("/panels/0"));
        }

        private ProjectBuilder slots(int free) {
            return aProject()
                    .panels(aPanel("P1").slots(4))
                    .boards(aBoard("B1"))
                    .loads(aLoad("L1"), aLoad("L2"))
                    .with(it -> it.spare(Optional.of(Spare.builder().slots(free).build())));
        }
    }

    private static List<Objection> impossible(ProjectBuilder project) {
        return Feasibility.impossible(project.build());
    }
}
