package evenrise.model.electrical.source;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.electrical.Impedance;
import evenrise.model.electrical.LineMatrix;
import evenrise.model.electrical.LineValues;
import evenrise.model.electrical.Phasor;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Circuits of one or two meshes at 120 V to neutral, solved by hand. */
class InstantTest {
    private static final Offset<Double> NEARLY = within(1e-4);
    private static final Terminals A = Terminals.neutral(Phase.A);
    private static final Terminals AB = Terminals.lines(Phase.A, Phase.B);
    private static final List<Terminals> ALL = Terminals.all(PhaseSystem.THREE_PHASE);

    private static Inrush inrush(Object kind, double amps, double lagDegrees, String panel, Phase... phases) {
        return new Inrush(new Drawn(panel, List.of(phases), amps), Math.toRadians(lagDegrees), kind);
    }

    /** A source of 0.1 Ω of resistance, panels without feeders, nothing on before. */
    private static Instant behindResistance(Inrush... inrushes) {
        return instant(new Impedance(0.1, 0), Map.of(), inrushes);
    }

    private static Instant instant(Impedance source, Map<String, LineMatrix> feeders, Inrush... inrushes) {
        Map<String, LineValues> none = new LinkedHashMap<>();
        none.put("P1", LineValues.ZERO);
        none.put("P2", LineValues.ZERO);
        return new Instant(
                new RadialPlant(PhaseSystem.THREE_PHASE, 120, source, feeders),
                ALL,
                none,
                List.of(),
                List.of(inrushes));
    }

    /** 100 A at nominal voltage is 1.2 Ω. */
    @Nested
    class OneInrushBehindAResistance {
        private final Instant instant = behindResistance(inrush("amp", 100, 0, "P1", Phase.A));

        @Test
        void leavesWhatWasThere() {
            assertThat(instant.steadyPercent("P1", A)).isCloseTo(100, NEARLY);
            assertThat(instant.steadyPercent("P1", AB)).isCloseTo(100, NEARLY);
        }

        /**
         * 100 A through 0.1 Ω: 10 V. Voltages may lie a = 10/120·(1 + a) from nominal, 0.0909, and a little more is assumed of
         * what the inrush draws at its own: 10 V·(1 + 1.02·0.0909).
         */
        @Test
        void hasLimitsThatAreQuicklyKnown() {
            assertThat(instant.limitsByBound("P1", A).most().leastPercent()).isCloseTo(100 * 110 / 120.0, NEARLY);
            assertThat(instant.limitsByPhasors("P1", A).most().leastPercent())
                    .isCloseTo(100 * (120 - 10 * (1 + 1.02 / 11)) / 120, NEARLY);
            assertThat(instant.limitsByPhasors(RadialPlant.SUPPLY, AB).most().leastPercent())
                    .isLessThan(instant.leastPercentByPhasors(RadialPlant.SUPPLY, AB));
            assertThat(instant.limitsByBound("P1", A).lasting().leastPercent()).isCloseTo(100, NEARLY);
        }

        /** As stated a resistance: 120 V·1.2/1.3; at power factor 0, |1.2j|/|0.1 + 1.2j|. */
        @Test
        void isADividerAtTheAngleStated() {
            assertThat(instant.statedPercent("P1", A)).isCloseTo(100 * 1.2 / 1.3, NEARLY);
            assertThat(behindResistance(inrush("amp", 100, 90, "P1", Phase.A)).statedPercent("P2", A))
                    .isCloseTo(100 * 1.2 / Math.hypot(0.1, 1.2), NEARLY);
        }

        /**
         * At its own terminals all of it is drawn, however low the voltage, at worst in phase: 10 V. At other terminals it is
         * the divider. It is least felt as a reactance: |1.2j|/|0.1 + 1.2j|.
         */
        @Test
        void dipsMostInPhaseAndLeastAcross() {
            Instant.Span span =
                    new Instant.Span(instant.leastPercentByPhasors("P1", A), instant.greatestPercentByPhasors("P1", A));

            assertThat(span.leastPercent()).isCloseTo(100 * 110 / 120.0, NEARLY);
            assertThat(span.lowPercent()).isCloseTo(100 * 10 / 120.0, NEARLY);
            assertThat(span.greatestPercent()).isCloseTo(100 * 1.2 / Math.hypot(0.1, 1.2), NEARLY);
            assertThat(span.highPercent()).isCloseTo(100 * 1.2 / Math.hypot(0.1, 1.2) - 100, NEARLY);
        }

        /** In phase 110 V; across, √(120² + 10²) V, met by directions 5° apart, which add a thousandth at most. */
        @Test
        void isBoundedByTheWorstAngle() {
            Instant.Span bound =
                    new Instant.Span(instant.leastPercentByBound("P2", A), instant.greatestPercentByBound("P2", A));

            assertThat(bound.leastPercent()).isCloseTo(100 * 110 / 120.0, NEARLY);
            assertThat(bound.greatestPercent())
                    .isBetween(100 * Math.hypot(120, 10) / 120, 100.1 * Math.hypot(120, 10) / 120);
        }

        /** B is not touched: 120 V. Between A and B: A at 110 V in phase, so √(110² + 120² + 110·120) of 207.85 V. */
        @Test
        void isFeltBetweenLinesAndNotOnOthers() {
            Terminals b = Terminals.neutral(Phase.B);

            assertThat(instant.leastPercentByBound("P1", b)).isCloseTo(100, NEARLY);
            assertThat(instant.leastPercentByPhasors("P1", b)).isCloseTo(100, NEARLY);
            double between = Math.sqrt(110 * 110 + 120 * 120 + 110 * 120);
            assertThat(instant.leastPercentByBound("P1", AB))
                    .isBetween(99.0 * between / 207.846, 100 * between / 207.846 + 1e-3);
        }
    }

    /** 0.1 Ω of reactance: in phase the drop stands across, √(120² + 10²) V; drawn as a reactance 110 V. */
    @Test
    void behindAReactanceDipsMostAcross() {
        Instant instant = instant(new Impedance(0, 0.1), Map.of(), inrush("amp", 100, 0, "P1", Phase.A));

        assertThat(instant.leastPercentByPhasors("P1", A)).isCloseTo(100 * 110 / 120.0, NEARLY);
        assertThat(instant.greatestPercentByPhasors("P1", A)).isCloseTo(100 * 1.2 / Math.hypot(0.1, 1.2), NEARLY);
        assertThat(instant.leastPercentByBound("P1", A)).isCloseTo(100 * 110 / 120.0, NEARLY);
        assertThat(instant.greatestPercentByBound("P1", A))
                .isBetween(100 * Math.hypot(120, 10) / 120, 100.1 * Math.hypot(120, 10) / 120);
    }

    /** The feeder's 0.05 Ω and its neutral's 0.03 Ω stand before P1 alone: 18 V at P1, 10 V at P2 and the supply. */
    @Nested
    class BehindAFeeder {
        private final Map<String, LineMatrix> feeders = Map.of(
                "P1", RadialPlant.feeder(PhaseSystem.THREE_PHASE, new Impedance(0.05, 0), new Impedance(0.03, 0)));
        private final Instant instant = instant(new Impedance(0.1, 0), feeders, inrush("amp", 100, 0, "P1", Phase.A));

        @Test
        void dipsMoreAtItsPanelThanAtTheSupply() {
            assertThat(instant.leastPercentByBound("P1", A)).isCloseTo(100 * 102 / 120.0, NEARLY);
            assertThat(instant.leastPercentByBound("P2", A)).isCloseTo(100 * 110 / 120.0, NEARLY);
            assertThat(instant.leastPercentByPhasors("P1", A)).isCloseTo(100 * 102 / 120.0, NEARLY);
            assertThat(instant.statedPercent("P1", A)).isCloseTo(100 * 1.2 / 1.38, NEARLY);
            assertThat(instant.statedPercent("P2", A)).isCloseTo(100 * 1.28 / 1.38, NEARLY);
            assertThat(instant.limitsByBound("P1", A).most().leastPercent()).isCloseTo(100 * 102 / 120.0, NEARLY);
            assertThat(instant.limitsByBound("P2", A).most().leastPercent()).isCloseTo(100 * 110 / 120.0, NEARLY);
        }

        /** The neutral's 3 V lift B by 3 V at 60°: |120 − 3∠120°·…|: never said to be less low than the supply's 120 V. */
        @Test
        void isNeverLessLowThanTheSupply() {
            Terminals b = Terminals.neutral(Phase.B);

            assertThat(instant.statedPercent("P1", b)).isCloseTo(100, NEARLY);
            assertThat(instant.greatestPercentByPhasors("P1", b)).isGreaterThan(100);
        }
    }

    /** Two kinds on the same phase: 60 A and 40 A. */
    @Nested
    class TwoKinds {
        private final Instant instant =
                behindResistance(inrush("amp", 60, 0, "P1", Phase.A), inrush("light", 40, 0, "P2", Phase.A));

        /** Together 100 A in phase: 10 V. Where each may differ from its kind, the bound is no higher, and not far below. */
        @Test
        void dipAsOneWhereTheirAnglesAgree() {
            assertThat(instant.leastPercentByPhasors("P1", A)).isCloseTo(100 * 110 / 120.0, NEARLY);
            assertThat(instant.statedPercent("P1", A)).isCloseTo(100 * 1.2 / 1.3, NEARLY);
            assertThat(instant.leastPercentByBound("P1", A)).isBetween(100 * 109.9 / 120, 100 * 110 / 120.0 + 1e-6);
        }

        /**
         * Behind 0.06 + 0.08j Ω, at 53°, both drop in line with the voltage where they lag by 53°: 120 − 100·0.1 = 110 V.
         * Their drops stand from 37° behind to 53° ahead of it, so none lifts it: 120 V where they draw nothing.
         */
        @Test
        void areEachAtTheirOwnWorstAngle() {
            Instant mixed = instant(
                    new Impedance(0.06, 0.08),
                    Map.of(),
                    inrush("amp", 60, 0, "P1", Phase.A),
                    inrush("light", 40, 0, "P2", Phase.A));

            assertThat(mixed.leastPercentByBound("P1", A)).isBetween(100 * 109.9 / 120, 100 * 110 / 120.0 + 1e-6);
            assertThat(mixed.greatestPercentByBound("P1", A)).isBetween(100.0, 100.1);
            assertThat(mixed.leastPercentByPhasors("P1", A)).isCloseTo(100 * 110 / 120.0, within(0.1));
        }

        /**
         * 60 A behind 0.1 Ω of a source and 40 A behind 0.2j Ω of P2's feeder, at P2: the one drops 6 V in phase, the other 4
         * V at the source and 8 V across in phase, or 8 V in line as a reactance. Each by itself, over every second degree.
         */
        @Test
        void turnApartWhereThatIsWorse() {
            Instant apart = instant(
                    new Impedance(0.1, 0),
                    Map.of("P2", RadialPlant.feeder(PhaseSystem.THREE_PHASE, new Impedance(0, 0.2), Impedance.ZERO)),
                    inrush("amp", 60, 0, "P1", Phase.A),
                    inrush("light", 40, 0, "P2", Phase.A));
            double least = Double.POSITIVE_INFINITY;
            for (int one = 0; one <= 90; one += 2) {
                for (int other = 0; other <= 90; other += 2) {
                    Phasor light = Phasor.polar(40, -Math.toRadians(other));
                    Phasor left = new Phasor(120, 0)
                            .minus(Phasor.polar(60, -Math.toRadians(one)).times(new Impedance(0.1, 0)))
                            .minus(light.times(new Impedance(0.1, 0.2)));
                    least = Math.min(least, left.length());
                }
            }

            // the light's drop is in line at 63°: 120 − 6 − 40·√(0.1² + 0.2²)
            assertThat(least).isCloseTo(114 - 40 * Math.hypot(0.1, 0.2), within(0.01));
            assertThat(apart.leastPercentByBound("P2", A)).isBetween(100 * (least - 0.6) / 120, 100 * least / 120);
            assertThat(apart.leastPercentByPhasors("P2", A)).isCloseTo(100 * least / 120, within(0.15));
        }

        /**
         * 300 A behind 0.1 Ω of a source drop 30 V in phase; 200 A behind that and 0.1j Ω of P2's feeder 28.28 V, in line
         * where they lag by 45°: 120 − 58.28 V. Angles are tried ten degrees apart: 5° off, 0.11 V are missed in line, and
         * 2.46 V across make 61.7 V longer by 0.05 V.
         */
        @Test
        void areFoundBetweenThirdsOfTheirRange() {
            Instant apart = instant(
                    new Impedance(0.1, 0),
                    Map.of("P2", RadialPlant.feeder(PhaseSystem.THREE_PHASE, new Impedance(0, 0.1), Impedance.ZERO)),
                    inrush("amp", 300, 0, "P1", Phase.B),
                    inrush("light", 200, 0, "P2", Phase.B));
            double least = 120 - 30 - 20 * Math.sqrt(2);

            assertThat(apart.leastPercentByPhasors("P2", Terminals.neutral(Phase.B)))
                    .isBetween(100 * least / 120, 100 * (least + 0.17) / 120);
        }
    }

    /** 20 A on before at unity through 0.1 Ω: 118 V; they may draw more where the voltage is lower. */
    @Nested
    class WithSteadyLoads {
        private final Instant instant = new Instant(
                new RadialPlant(PhaseSystem.THREE_PHASE, 120, new Impedance(0.1, 0), Map.of()),
                ALL,
                Map.of("P1", new LineValues(new Phasor(20, 0), Phasor.ZERO, Phasor.ZERO)),
                List.of(new Drawn("P1", List.of(Phase.A), 20)),
                List.of(inrush("amp", 100, 0, "P1", Phase.A)));

        @Test
        void beginsWhereTheyLeaveIt() {
            assertThat(instant.steadyPercent("P1", A)).isCloseTo(100 * 118 / 120.0, NEARLY);
            // What the inrush leaves dies down; what the steady load may draw more of its 2 V does not.
            assertThat(instant.limitsByPhasors("P1", A).lasting().leastPercent())
                    .isCloseTo(100 * 118 / 120.0, NEARLY);
            assertThat(instant.limitsByBound("P1", A).lasting().leastPercent())
                    .isBetween(100 * 116 / 120.0, 100 * 118 / 120.0);
        }

        /**
         * As a constant power, 2400 VA, with 100 A of inrush: V = 110 − 0.1·2400/V, so V = 107.773 V; the bound is below that,
         * and above what twice the steady current would leave, 106 V.
         */
        @Test
        void isBoundedWhateverTheyDrawThen() {
            double power = (110 + Math.sqrt(110 * 110 - 4 * 0.1 * 2400)) / 2;
            assertThat(power).isCloseTo(107.773, within(0.001));

            assertThat(instant.leastPercentByBound("P1", A)).isBetween(100 * 106 / 120.0, 100 * power / 120);
            assertThat(instant.leastPercentByPhasors("P1", A)).isCloseTo(100 * 108 / 120.0, within(0.02));
        }
    }

    /** A motor of three poles, 30 A a line: 0.1 Ω of resistance drop 3 V on each line, in phase. */
    @Test
    void ofThreePolesDipEveryLine() {
        Instant instant = behindResistance(inrush("motor", 30, 0, "P1", Phase.values()));

        assertThat(instant.statedPercent("P1", A)).isCloseTo(100 * 4 / 4.1, NEARLY);
        assertThat(instant.statedPercent("P1", AB)).isCloseTo(100 * 4 / 4.1, NEARLY);
        assertThat(instant.leastPercentByPhasors("P1", AB)).isCloseTo(100 * 117 / 120.0, NEARLY);
        assertThat(instant.leastPercentByBound("P1", A)).isBetween(100 * 116.5 / 120, 100 * 117 / 120.0 + 1e-6);
    }

    @Test
    void withoutInrushIsBoundedByWhatIsThere() {
        assertThat(behindResistance().leastPercentByBound("P1", A)).isCloseTo(100, NEARLY);
        assertThat(behindResistance().greatestPercentByBound("P1", A)).isCloseTo(100, NEARLY);
    }

    /** 3 Ω known as a resistance, 4 Ω and 12 Ω of unknown angle: least 13 Ω as |3 + 4 + 12j|… of the four, most 19 Ω. */
    @Test
    void ohmsOfUnknownAngleAreBetweenTheirEnds() {
        Ohms ohms = Ohms.of(new Impedance(3, 0), true)
                .plus(Ohms.of(new Impedance(0, 4), false))
                .plus(Ohms.of(new Impedance(12, 0), false));

        // |3 + 4 + 12|, |3 + 12 + 4j| = 15.524, |3 + 4 + 12j| = 13.892, |3 + 16j| = 16.279
        assertThat(ohms.leastOhms()).isCloseTo(13.892, within(0.001));
        assertThat(ohms.mostOhms()).isEqualTo(19);
        assertThat(ohms.times(2).leastOhms()).isCloseTo(27.785, within(0.001));
        assertThat(ohms.times(2).mostOhms()).isEqualTo(38);
        assertThat(ohms.assumed()).isEqualTo(new Impedance(15, 4));
        assertThat(ohms.isKnown()).isFalse();
        assertThat(ohms.plus(new Impedance(1, 0)).mostOhms()).isEqualTo(20);
        assertThat(ohms.plus(new Impedance(1, 0)).assumed()).isEqualTo(new Impedance(16, 4));
        assertThat(Ohms.of(new Impedance(3, 4), true).isKnown()).isTrue();
        assertThat(Ohms.of(new Impedance(3, 4), true).leastOhms()).isEqualTo(5);
    }
}
