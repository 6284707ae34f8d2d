package evenrise.model.rules;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.LoadBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.SupplyBuilder;
import evenrise.model.plan.PeakBasis;
import evenrise.model.project.Electrical;
import evenrise.model.project.Phase;
import evenrise.model.project.Practice;
import evenrise.model.project.Scatter;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

class PeakBasisTest {
    /** L1 in P1, L2 in P2, both on phase A and at once. */
    private static PeakBasis basis(LoadBuilder first, LoadBuilder second, SupplyBuilder supply) {
        return Layout.of(
                        aProject()
                                .supply(supply)
                                .panels(aPanel("P1"), aPanel("P2"))
                                .boards(aBoard("B1").in("P1"), aBoard("B2").in("P2"))
                                .loads(first, second)
                                .build(),
                        aPlan().assignments(
                                        anAssignment("L1").at("P1", 1).on("B1", 1),
                                        anAssignment("L2").at("P2", 1).on("B2", 1))
                                .build())
                .peakBasis();
    }

    private static LoadBuilder sound(String id) {
        return aLoad(id).idleAmps(10).inrushPeakAmps(80).thirdHarmonic(0);
    }

    @Nested
    class OfEveryNode {
        /** Each 65.858·1.1 + 14.142/0.9 = 72.444 + 15.713 = 88.157 A, 80 A at nominal voltage; both at once. */
        @Test
        void standsAtNominalVoltageAndOverTheRange() {
            PeakBasis basis = basis(sound("L1"), sound("L2"), aSupply().voltageRange(90, 110));

            assertThat(basis.supply().nominalAmps()).isCloseTo(160, within(1e-9));
            assertThat(basis.supply().rangeAmps()).isCloseTo(176.314, within(1e-3));
            assertThat(basis.peaks().get(1).rangeAmps()).isCloseTo(88.157, within(1e-3));
            assertThat(basis.peaks()).allMatch(each -> each.nominalBound() && each.rangeBound());
        }

        /** Without L2's inrush the supply's peak falls from 160 to 80 + 14.142 A: no bound there, one in P1. */
        @Test
        void isNoBoundWhereALoadOfItStatesNoInrush() {
            PeakBasis basis = basis(sound("L1"), aLoad("L2").idleAmps(10).thirdHarmonic(0), aSupply());

            assertThat(basis.withoutInrush()).containsExactly("L2");
            assertThat(basis.supply().nominalAmps()).isCloseTo(94.142, within(1e-3));
            assertThat(basis.supply().nominalBound()).isFalse();
            assertThat(basis.supply().rangeBound()).isFalse();
            assertThat(basis.peaks().get(1).nominalBound()).isTrue();
            assertThat(basis.peaks().get(2).nominalBound()).isFalse();
        }

        @Test
        void isNoBoundOverTheRangeWhereALoadStatesNoWaveform() {
            PeakBasis basis = basis(sound("L1"), aLoad("L2").idleAmps(10).inrushPeakAmps(80), aSupply());

            assertThat(basis.withoutWaveform()).containsExactly("L2");
            assertThat(basis.supply().nominalBound()).isTrue();
            assertThat(basis.supply().rangeBound()).isFalse();
        }

        /** What idles at nothing has no crest: its inrush alone counts. */
        @Test
        void needsNoWaveformOfALoadThatIdlesAtNothing() {
            PeakBasis basis = basis(sound("L1"), aLoad("L2").idleAmps(0).inrushPeakAmps(80), aSupply());

            assertThat(basis.withoutWaveform()).isEmpty();
            assertThat(basis.supply().rangeBound()).isTrue();
        }

        /** Two poles, so that both phases peak alike: the first is told. */
        @Test
        void tellsTheFirstOfEquallyHighPhases() {
            PeakBasis basis = basis(sound("L1").twoPole(), sound("L2").twoPole(), aSupply());

            assertThat(basis.supply().rangePhase()).isEqualTo(Phase.A);
        }

        @Test
        void isNoBoundWhereItRestsOnAGuess() {
            PeakBasis basis = basis(sound("L1"), sound("L2").guessed("inrush_peak_a"), aSupply());

            assertThat(basis.guessed()).containsExactly("L2");
            assertThat(basis.supply().nominalBound()).isFalse();
            assertThat(basis.supply().rangeBound()).isFalse();
        }

        /** It draws its inrush when the mains return, never while the sequence runs. */
        @Test
        void needsNoInrushOfALoadThatIsNotSwitched() {
            PeakBasis basis =
                    basis(sound("L1"), aLoad("L2").idleAmps(10).thirdHarmonic(0).unswitched(), aSupply());

            assertThat(basis.withoutInrush()).isEmpty();
            assertThat(basis.unswitchedWithoutInrush()).containsExactly("L2");
            assertThat(basis.peaks().get(1).rangeBound()).isTrue();
        }
    }

    @Nested
    class Voltages {
        private static PeakBasis of(ProjectBuilder project) {
            return Layout.of(project.build(), aPlan().build()).peakBasis();
        }

        private static ProjectBuilder by(Practice practice) {
            return aProject().electrical(Electrical.builder().practice(practice).build());
        }

        @Test
        void areTheStatedOnes() {
            PeakBasis basis = of(aProject().supply(aSupply().voltageRange(94, 106)));

            assertThat(basis.leastVoltagePercent()).isEqualTo(94);
            assertThat(basis.mostVoltagePercent()).isEqualTo(106);
            assertThat(basis.voltageAssumed()).isFalse();
        }

        /** ANSI C84.1 range A on a 120 V base: 126 V and 108 V; EN 50160 and IEC 60038: ±10 %. */
        @Test
        void areThoseOfThePracticeWhereNoneAreStated() {
            assertThat(of(by(Practice.NEC)).leastVoltagePercent()).isEqualTo(90);
            assertThat(of(by(Practice.NEC)).mostVoltagePercent()).isEqualTo(105);
            assertThat(of(by(Practice.IEC)).leastVoltagePercent()).isEqualTo(90);
            assertThat(of(by(Practice.IEC)).mostVoltagePercent()).isEqualTo(110);
            assertThat(of(aProject()).mostVoltagePercent()).isEqualTo(110);
            assertThat(of(by(Practice.NEC)).voltageAssumed()).isTrue();
            assertThat(of(by(Practice.NEC)).voltageFrom()).contains("assumed", "ANSI C84.1");
        }

        /** 104 % and a deviation of 3 %, cut at twice it: 98 to 110 %. */
        @Test
        void haveThoseInThemThatTheScatterDraws() {
            Scatter scatter = Scatter.builder()
                    .meanVoltagePercent(104)
                    .voltageDeviationPercent(3)
                    .build();
            PeakBasis basis =
                    of(aProject().supply(aSupply().voltageRange(99, 101)).scatter(scatter));

            assertThat(basis.leastVoltagePercent()).isEqualTo(98);
            assertThat(basis.mostVoltagePercent()).isEqualTo(110);
            assertThat(basis.voltageFrom()).contains("scatter");
        }

        /** Usual are ±4 %; a supply that holds 1 % is drawn within that. */
        @Test
        void areNotLeftByTheUsualScatter() {
            Scatter usual = SupplyVoltage.scatter(
                    aProject().supply(aSupply().voltageRange(99, 101)).build());

            assertThat(usual.leastVoltageRatio()).isCloseTo(0.99, within(1e-12));
            assertThat(usual.mostVoltageRatio()).isCloseTo(1.01, within(1e-12));
        }
    }
}
