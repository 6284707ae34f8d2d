package evenrise.model.rules;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.Plan;
import evenrise.model.project.Overlap;
import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import java.nio.file.Path;
import java.util.Optional;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * Three plants small enough for pencil and paper. All inrush halves in 2 ms and steps are 0.5 s or more apart, so an earlier
 * spike is gone when the next comes: a load that is on counts √2·idle, the one coming on its inrush_peak_a.
 */
class PlantFiguresTest {
    private static final Offset<Double> NEARLY = within(1e-9);
    private static final double ROOT_2 = Math.sqrt(2);
    private static final double ROOT_3 = Math.sqrt(3);

    private static Project project(String name) throws Exception {
        return CaseFiles.read(Path.of("src/test/resources/cases", name, "project.json"), Project.class);
    }

    private static Plan plan(String name) throws Exception {
        return CaseFiles.read(Path.of("src/test/resources/cases", name, "plan.json"), Plan.class);
    }

    private static Verdict judge(String name) throws Exception {
        return Referee.judge(project(name), plan(name));
    }

    private static NodeFigures node(Verdict verdict, String id) {
        return verdict.nodes().stream()
                .filter(each -> each.node().equals(id))
                .findAny()
                .orElseThrow();
    }

    /**
     * <pre>
     * supply 240 V ─┬─ T-1 delta-wye 120 V ── P1: L3 A 6 A, L4 B 10 A, L5 C 10 A    (60 A peak each)
     *               ├─ S-1 single on A, B, split-phase 120 V ── P2: L6 A 8 A, L7 B 4 A    (90 A peak each)
     *               ├─ W-1 wye-wye 120 V ── P3: L1 A 4 A, L2 C 2 A    (20 A peak each)
     *               └─ U-1 single on C, single-phase 120 V ── P4: L8 A 6 A, third harmonic 0.75    (20 A peak)
     * </pre>
     */
    @Nested
    class FourTransformers {
        /** T-1: 0.5/√3·√(6²+10²+6·10) = 14·0.288675 on A and B, 10√3·0.288675 = 5 on C; S-1: 12·0.288675 on A and B. */
        @Test
        void drawRunningCurrents() throws Exception {
            NodeFigures supply = node(judge("kept-four-transformers"), "supply");
            double k = 0.5 / ROOT_3;

            assertThat(supply.runningAmps().get(Phase.A)).isCloseTo(14 * k + 12 * k + 0.5 * 4, NEARLY);
            assertThat(supply.runningAmps().get(Phase.B)).isCloseTo(14 * k + 12 * k, NEARLY);
            assertThat(supply.runningAmps().get(Phase.C)).isCloseTo(5 + 0.5 * 2 + 0.5 * 6, NEARLY);
        }

        /** 2∠0 of L1, 1∠120° of L2, 2.4∠120° and third harmonic 1.8 of L8: √(4 + 11.56 − 6.8 + 3.24) = √12. */
        @Test
        void returnByTheNeutralWhatHasAWay() throws Exception {
            Verdict verdict = judge("kept-four-transformers");

            assertThat(node(verdict, "supply").neutralAmps()).isCloseTo(Math.sqrt(12), NEARLY);
            assertThat(node(verdict, "P1").neutralAmps()).isCloseTo(4, NEARLY);
        }

        /** At 8 s on A: L1 through W-1; L3 and L5 through T-1, L6 and the 90 A of L7 through S-1. */
        @Test
        void peak() throws Exception {
            Verdict verdict = judge("kept-four-transformers");
            double k = 0.5 / ROOT_3;

            assertThat(verdict.metrics().peakInrushAmps()).isCloseTo(0.5 * ROOT_2 + k * 3 * ROOT_2 + k * 90, NEARLY);
            assertThat(verdict.metrics().peakAtSeconds()).isEqualTo(8);
            assertThat(node(verdict, "supply").peaks().get(2).amps())
                    .isCloseTo(0.5 * 2 * ROOT_2 + k * (ROOT_2 + 60), NEARLY);
            assertThat(verdict.metrics().worstNodeImbalancePercent()).hasValue(100);
            assertThat(verdict.metrics().objective()).isCloseTo(36.54410, within(5e-6));
        }
    }

    /** Core: C1 A, C2 B, C3 C; hall: H1 A, H2 A with a contactor, H3 B with it, H4 A; N1 always on, C. */
    @Nested
    class CoreAndHall {
        private double peakAmps(Overlap overlap) throws Exception {
            Project changed =
                    project("kept-core-and-hall").with().overlap(overlap).build();
            return Referee.judge(changed, plan("kept-core-and-hall")).metrics().peakInrushAmps();
        }

        /** On A: core P 20, F 3√2; hall P = √2·2 + √2·1 + 60, F = 22√2: max(20 + 22√2, P + 3√2). */
        @Test
        void peakOneAtATime() throws Exception {
            assertThat(peakAmps(Overlap.ONE_AT_A_TIME)).isCloseTo(3 * ROOT_2 + 60 + 3 * ROOT_2, NEARLY);
        }

        @Test
        void peakAtAnyTime() throws Exception {
            assertThat(peakAmps(Overlap.ANY)).isCloseTo(20 + 3 * ROOT_2 + 60, NEARLY);
        }

        /** C1 idles at 2 A when H4 comes on. */
        @Test
        void peakTogether() throws Exception {
            assertThat(peakAmps(Overlap.TOGETHER)).isCloseTo(2 * ROOT_2 + 3 * ROOT_2 + 60, NEARLY);
        }

        /** Hall starts: 60 A of H4 with its base in it, 3√2 of the rest, and core, 3 A in use: C1 and what is on A. */
        @Test
        void shareThePeakAmongThemselves() throws Exception {
            for (Overlap overlap : Overlap.values()) {
                Project changed =
                        project("kept-core-and-hall").with().overlap(overlap).build();
                Verdict verdict = Referee.judge(changed, plan("kept-core-and-hall"));

                assertThat(verdict.peakShares().stream()
                                .mapToDouble(PeakShare::amps)
                                .sum())
                        .isCloseTo(verdict.metrics().peakInrushAmps(), NEARLY);
                assertThat(verdict.peakShares()).allMatch(share -> share.amps() > 0);
                assertThat(verdict.peakShares().get(0).load()).isEqualTo("H4");
                assertThat(verdict.peakShares().get(0).amps()).isCloseTo(60, NEARLY);
            }
        }

        /** One at a time core is in use while hall starts: C1 draws √2·3 A of its running current, by the total above. */
        @Test
        void shareWhatIsInUseByItsRunningCurrent() throws Exception {
            Verdict verdict = Referee.judge(project("kept-core-and-hall"), plan("kept-core-and-hall"));

            assertThat(verdict.peakShares())
                    .filteredOn(share -> share.load().equals("C1"))
                    .singleElement()
                    .satisfies(share -> assertThat(share.amps()).isCloseTo(3 * ROOT_2, NEARLY));
        }

        @Test
        void haveClocksOfTheirOwn() throws Exception {
            Clocks clocks = Layout.of(project("kept-core-and-hall"), plan("kept-core-and-hall"))
                    .clocks();

            assertThat(clocks.ends()).containsEntry(Optional.of("core"), 3.0).containsEntry(Optional.of("hall"), 3.7);
            assertThat(clocks.longestSeconds()).isEqualTo(3.7);
        }
    }

    /** Show, weight 2: all in full; speech, weight 1: amplifiers half, but A4 in full. */
    @Nested
    class ShowAndSpeech {
        /** Supply: 8 A in the show, 4 in the speech; imbalance 8/14 in the show, 4/9.5 in the speech. */
        @Test
        void averageDeviationsAndKeepTheWorst() throws Exception {
            Verdict verdict = judge("kept-show-and-speech");

            assertThat(node(verdict, "supply").deviationAmps()).isCloseTo((2 * 8 + 4) / 3.0, NEARLY);
            assertThat(node(verdict, "P2").deviationAmps()).isCloseTo((2 * 4 + 3.5) / 3.0, NEARLY);
            assertThat(node(verdict, "supply").imbalancePercent()).isCloseTo(100 * 8 / 14.0, NEARLY);
            assertThat(node(verdict, "P2").imbalancePercent()).isCloseTo(100 * 3.5 / 5.5, NEARLY);
            assertThat(node(verdict, "supply").neutralAmps()).isCloseTo(12, NEARLY);
        }

        /** R1: P1, P2, rows next to each other; R2: P2 rows 1 and 3, P1. H passes on with its fourth output, at 3 s. */
        @Test
        void countRacksAndPassOnAfterAll() throws Exception {
            Verdict verdict = judge("kept-show-and-speech");

            assertThat(verdict.metrics().rackPanels()).hasValue(2);
            assertThat(verdict.metrics().rackBoards()).hasValue(2);
            assertThat(verdict.metrics().rackRows()).hasValue(1);
            assertThat(verdict.metrics().durationSeconds()).isEqualTo(6);
            assertThat(verdict.metrics().objective()).isCloseTo(72.01421, within(5e-6));
        }

        @Test
        void countWhatMoved() throws Exception {
            Project project = project("kept-show-and-speech");
            Plan now = plan("kept-show-and-speech");
            Plan earlier = now.with()
                    .boards(now.boards().stream()
                            .map(each ->
                                    each.id().equals("D") ? each.withStepSeconds(java.util.OptionalDouble.of(2)) : each)
                            .toList())
                    .assignments(now.assignments().stream()
                            .map(each -> each.load().equals("A1")
                                    ? each.with().slot(2).output(5).build()
                                    : each)
                            .toList())
                    .build();

            Rewiring moves = Rewiring.of(Layout.of(project, now), earlier);

            assertThat(moves).isEqualTo(new Rewiring(1, 1, 1));
        }
    }
}
