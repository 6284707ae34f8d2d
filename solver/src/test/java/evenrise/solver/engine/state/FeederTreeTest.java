package evenrise.solver.engine.state;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.project.DistributionNode;
import evenrise.model.project.NodeSource;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Project;
import evenrise.model.project.Secondary;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * What is seen of a load beyond transformers, by the contract's table: k is secondary over primary voltage, from 240 V to
 * 120 V unless something else is said.
 *
 * <pre>
 * supply 240 V ─┬─ MDP ─┬─ T+ delta-wye +30° ── P1
 *               │       └─ T− delta-wye −30° ── P2
 *               ├─ W wye-wye ── P3
 *               ├─ S single on A, B, split-phase ── P4
 *               ├─ U single on C, split-phase ── P5
 *               ├─ P6 ── TT delta-wye ── SS single on A, B, split-phase 120 V ── P7
 *               └─ (nothing)
 * G, a source of 120 V ── P8
 * </pre>
 */
class FeederTreeTest {
    private static final Offset<Double> NEARLY = within(1e-12);
    private static final double ROOT_3 = Math.sqrt(3);
    private static final int A = 1;
    private static final int B = 2;
    private static final int AB = 3;
    private static final int ABC = 7;

    private final List<DistributionNode> nodes = new ArrayList<>();
    private final Map<String, Integer> index = new TreeMap<>();
    private final CompiledProject compiled = new CompiledProject(project());
    private final FeederTree tree = compiled.tree;

    private Project project() {
        node("MDP", "supply", Optional.empty());
        node("T+", "MDP", transformer(TransformerConnection.DELTA_WYE, 30));
        node("T-", "MDP", transformer(TransformerConnection.DELTA_WYE, -30));
        node("W", "supply", transformer(TransformerConnection.WYE_WYE, 30));
        node("S", "supply", transformer(TransformerConnection.SINGLE, 30, Phase.A, Phase.B));
        node("U", "supply", transformer(TransformerConnection.SINGLE, 30, Phase.C));
        node("TT", "P6", transformer(TransformerConnection.DELTA_WYE, 30));
        node("SS", "TT", transformer(TransformerConnection.SINGLE, 30, Phase.A, Phase.B));
        nodes.add(DistributionNode.builder()
                .id("G")
                .ratedAmps(400)
                .source(Optional.of(NodeSource.builder()
                        .system(PhaseSystem.THREE_PHASE)
                        .lineToNeutralVolts(120)
                        .frequencyHertz(60)
                        .build()))
                .build());
        List<String> feeds = List.of("T+", "T-", "W", "S", "U", "supply", "SS", "G");
        Project project = aProject()
                .supply(aSupply().lineToNeutralVolts(240))
                .panels(
                        aPanel("P1"),
                        aPanel("P2"),
                        aPanel("P3"),
                        aPanel("P4"),
                        aPanel("P5"),
                        aPanel("P6"),
                        aPanel("P7"),
                        aPanel("P8"))
                .loads(aLoad("L").panels("P1"))
                .build();
        index.put("supply", 0);
        for (int i = 0; i < feeds.size(); i++) {
            index.put("P" + (i + 1), i + 1);
        }
        nodes.forEach(each -> index.put(each.id(), index.size()));
        return project.with()
                .nodes(nodes)
                .panels(project.panels().stream()
                        .map(each -> each.withFedFrom(
                                Optional.of(feeds.get(project.panels().indexOf(each)))))
                        .toList())
                .build();
    }

    private void node(String id, String from, Optional<Transformer> transformer) {
        nodes.add(DistributionNode.builder()
                .id(id)
                .fedFrom(Optional.of(from))
                .ratedAmps(400)
                .transformer(transformer)
                .build());
    }

    private static Optional<Transformer> transformer(TransformerConnection connection, int shift, Phase... primary) {
        return Optional.of(Transformer.builder()
                .connection(connection)
                .shiftDegrees(shift)
                .primaryPhases(List.of(primary))
                .secondary(Secondary.builder()
                        .system(
                                connection == TransformerConnection.SINGLE
                                        ? PhaseSystem.SPLIT_PHASE
                                        : PhaseSystem.THREE_PHASE)
                        .lineToNeutralVolts(120)
                        .build())
                .build());
    }

    private Place place(String panel, int phaseMask) {
        return compiled.places.stream()
                .filter(each -> each.panel() == index.get(panel) - 1 && each.phaseMask() == phaseMask)
                .findFirst()
                .orElseThrow();
    }

    /** Parts of one pole by phase at a node; 0 where none is seen. */
    private double[] partsAt(String node, Place place) {
        double[] parts = new double[Winding.PHASES];
        for (FeederTree.Seen seen : tree.seen(place)) {
            if (seen.node() == index.get(node)) {
                for (int phase = 0; phase < parts.length; phase++) {
                    int share = seen.shares()[phase];
                    parts[phase] = share == FeederTree.NO_SHARE ? 0 : tree.shares[share];
                }
            }
        }
        return parts;
    }

    /** As "phase part", for instance "A 0.5". */
    private List<String> returnedAt(String node, Place place) {
        List<String> all = new ArrayList<>();
        for (FeederTree.Returned each : tree.returned(place)) {
            if (each.node() == index.get(node)) {
                all.add(Phase.values()[each.phase()] + " " + each.part());
            }
        }
        return all;
    }

    @Nested
    class ADeltaWye {
        private static final double PART = 0.5 / ROOT_3;

        /** For +30° the lines are A and C, B and A, C and B of the secondary: a pole on A is on the lines A and B. */
        @Test
        void showsAPoleOnTwoLines() {
            assertThat(partsAt("supply", place("P1", A))).containsExactly(new double[] {PART, PART, 0}, NEARLY);
            assertThat(partsAt("MDP", place("P1", B))).containsExactly(new double[] {0, PART, PART}, NEARLY);
        }

        /** For −30° they are A and B, B and C, C and A: a pole on A is on the lines A and C. */
        @Test
        void showsItOnTheOtherNeighbourWhereItShiftsBackwards() {
            assertThat(partsAt("supply", place("P2", A))).containsExactly(new double[] {PART, 0, PART}, NEARLY);
        }

        /** A line that is between two poles of one load carries both. */
        @Test
        void givesNoCreditForAnglesBetweenPoles() {
            assertThat(partsAt("supply", place("P1", AB))).containsExactly(new double[] {PART, 2 * PART, PART}, NEARLY);
            assertThat(partsAt("supply", place("P1", ABC)))
                    .containsExactly(new double[] {2 * PART, 2 * PART, 2 * PART}, NEARLY);
        }

        @Test
        void returnsNothingByThePrimarysNeutral() {
            assertThat(returnedAt("supply", place("P1", A))).isEmpty();
        }
    }

    @Nested
    class AWyeWye {
        @Test
        void showsEachPoleOnItsOwnLine() {
            assertThat(partsAt("supply", place("P3", AB))).containsExactly(new double[] {0.5, 0.5, 0}, NEARLY);
        }

        @Test
        void passesOnWhatReturnsByItsNeutral() {
            assertThat(returnedAt("supply", place("P3", B))).containsExactly("B 0.5");
            assertThat(returnedAt("supply", place("P3", AB))).isEmpty();
        }
    }

    @Nested
    class ASingleOne {
        /** k = 120/(240·√3) across A and B: of a load on both legs twice that, on both lines. */
        @Test
        void showsTheSumOfThePolesOnBothLines() {
            double k = 0.5 / ROOT_3;

            assertThat(partsAt("supply", place("P4", B))).containsExactly(new double[] {k, k, 0}, NEARLY);
            assertThat(partsAt("supply", place("P4", AB))).containsExactly(new double[] {2 * k, 2 * k, 0}, NEARLY);
            assertThat(returnedAt("supply", place("P4", A))).isEmpty();
        }

        /** k = 120/240 between C and neutral: what is on the line comes back by the neutral. */
        @Test
        void returnsByTheNeutralWhereItHasOneLine() {
            assertThat(partsAt("supply", place("P5", AB))).containsExactly(new double[] {0, 0, 1}, NEARLY);
            assertThat(returnedAt("supply", place("P5", A))).containsExactly("C 0.5");
            assertThat(returnedAt("supply", place("P5", AB))).containsExactly("C 1.0");
        }
    }

    @Nested
    class OneBehindAnother {
        /**
         * SS: k = 120/(120·√3) = 1/√3 on A and B of TT; TT: 0.5/√3 of A and C, of B and A, of C and B. So a pole shows
         * 0.5/3 on A, twice that on B, 0.5/3 on C.
         */
        @Test
        void multiplyWhatTheyShow() {
            assertThat(partsAt("TT", place("P7", A))).containsExactly(new double[] {1 / ROOT_3, 1 / ROOT_3, 0}, NEARLY);
            assertThat(partsAt("supply", place("P7", A)))
                    .containsExactly(new double[] {0.5 / 3, 1.0 / 3, 0.5 / 3}, NEARLY);
        }

        /** The panel that feeds TT carries what TT draws. */
        @Test
        void areSeenByAPanelBetween() {
            assertThat(partsAt("P6", place("P7", A))).containsExactly(new double[] {0.5 / 3, 1.0 / 3, 0.5 / 3}, NEARLY);
            assertThat(partsAt("SS", place("P7", A)))
                    .as("as it is, not by parts")
                    .containsExactly(0, 0, 0);
        }
    }

    @Nested
    class Carriers {
        private int[] of(String... names) {
            return List.of(names).stream().mapToInt(index::get).toArray();
        }

        @Test
        void endAtTheFirstTransformer() {
            assertThat(tree.carriers[0]).containsExactlyInAnyOrder(of("P1", "T+"));
            assertThat(tree.carriers[5]).containsExactlyInAnyOrder(of("P6", "supply"));
            assertThat(tree.carriers[6]).containsExactlyInAnyOrder(of("P7", "SS"));
        }

        @Test
        void endAtAFurtherSource() {
            assertThat(tree.carriers[7]).containsExactlyInAnyOrder(of("P8", "G"));
            assertThat(tree.seen(place("P8", A))).isEmpty();
            assertThat(tree.sources).containsExactly(of("supply", "G"));
        }

        @Test
        void ofWhatATransformerDrawsAreOnItsPrimarySide() {
            assertThat(tree.drawnAt[index.get("T+")]).containsExactlyInAnyOrder(of("MDP", "supply"));
            assertThat(tree.drawnAt[index.get("TT")]).containsExactlyInAnyOrder(of("P6", "supply"));
            assertThat(tree.transformerAbove[index.get("SS")]).isEqualTo(index.get("TT"));
            assertThat(tree.transformerAbove[index.get("TT")]).isEqualTo(CompiledProject.NONE);
        }

        @Test
        void areKnownToFeedPanelsAlsoThroughTransformers() {
            assertThat(tree.panelsBelow[index.get("MDP")]).containsExactly(0, 1);
            assertThat(tree.panelsBelow[index.get("P6")]).containsExactly(5, 6);
            assertThat(tree.panelsBelow[index.get("G")]).containsExactly(7);
        }

        @Test
        void haveTheVoltageOfTheirOrigin() {
            assertThat(tree.volts(5)).isEqualTo(240);
            assertThat(tree.volts(6)).isEqualTo(120);
            assertThat(tree.origin[6]).isEqualTo(index.get("SS"));
            assertThat(tree.origin[5]).isEqualTo(index.get("supply"));
        }
    }

    /** Each transformer is worked out after all that it feeds. */
    @Test
    void ordersTransformersFromBelow() {
        List<Integer> order = java.util.Arrays.stream(tree.transformers).boxed().toList();

        assertThat(order.indexOf(index.get("SS"))).isLessThan(order.indexOf(index.get("TT")));
        assertThat(order).hasSize(7);
    }

    @Test
    void touchesWhatATransformerShows() {
        assertThat(tree.touches(place("P1", A), 0, 1)).isTrue();
        assertThat(tree.touches(place("P1", A), 0, 2)).isFalse();
        assertThat(tree.touches(place("P1", A), index.get("P1"), 0)).isTrue();
        assertThat(tree.touches(place("P1", A), index.get("P1"), 1)).isFalse();
        assertThat(tree.touches(place("P8", A), 0, 0)).isFalse();
    }
}
