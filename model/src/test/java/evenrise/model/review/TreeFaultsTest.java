package evenrise.model.review;

import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import evenrise.model.plan.Grade;
import evenrise.model.plan.Remark;
import evenrise.model.project.Cable;
import evenrise.model.project.Conduit;
import evenrise.model.project.Device;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Feeder;
import evenrise.model.project.InstantaneousRange;
import evenrise.model.project.NodeSource;
import evenrise.model.project.Phase;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.project.TransformerBuilder;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;

/** Fault currents behind transformers and sources beside the supply. */
class TreeFaultsTest {
    private static final Cable FIFTY_FEET =
            Cabling.cable("3/0 AWG", 15.24).withConduit(Conduit.STEEL).withProtectiveSize(Optional.of("3/0 AWG"));

    /** At 480Y/277 V, 50 ft of 3/0 in steel behind the transformer; its nameplate is such that a tenth less is 4.5 %. */
    private static Project plant(Practice practice, TransformerBuilder transformer, double volts) {
        return aProject()
                .supply(aSupply().lineToNeutralVolts(Trees.VOLTS_480))
                .electrical(Trees.stiffNetwork(practice))
                .panels(aPanel("P"))
                .build()
                .withPanels(List.of(aPanel("P")
                        .feeder(Cabling.feeder(FIFTY_FEET, 200))
                        .build()
                        .withFedFrom(Optional.of("T"))))
                .withNodes(List.of(Trees.node(
                                "T",
                                225,
                                transformer
                                        .ratedKva(75)
                                        .impedancePercent(5)
                                        .xOverR(2.2)
                                        .build())
                        .feeder(Optional.of(Cabling.feeder(
                                Cabling.cable("3/0 AWG", 0).withProtectiveSize(Optional.of("3/0 AWG")), 125)))
                        .build()));
    }

    private static Reviews faults(Project project) {
        return Reviews.of(new FaultLevelCheck(), project, aPlan().build());
    }

    /**
     * In complex ohms: transformer 10.742 + j23.632 mΩ at 208 V, network j1.735 mΩ, 50 ft of 3/0 in steel at 0.079 and
     * 0.052 Ω/kft, of which 20 °C leave 3.248 + j2.6 mΩ. Three phases: 120.09 V/|13.990 + j27.967| mΩ. To neutral the
     * network counts for two thirds, as its zero sequence is blocked: 120.09 V/|17.238 + j29.989| mΩ, and at
     * the terminals 120.09 V/|10.742 + j24.789| mΩ, more than the 4,359 A of three phases.
     */
    @Test
    void behindADeltaBlockTheNetworksZeroSequence() {
        Reviews reviews = faults(plant(Practice.NEC, Trees.deltaWye(Trees.VOLTS_208), 120));

        assertThat(reviews.figure("T", "greatest fault current")).isCloseTo(4_445, within(2.0));
        assertThat(reviews.figure("P", "greatest fault current")).isCloseTo(3_840, within(2.0));
        assertThat(reviews.figure("P", "greatest fault current to neutral")).isCloseTo(3_472, within(2.0));
    }

    /**
     * A tenth above 5 %: 5.5 % of 208²/75 kVA are 31.727 mΩ, 13.129 + j28.884; network j1.735; cable at 75 °C 3.95 + j2.6.
     * To neutral 0.95·120.09/|13.129 + 7.9 + j(28.884 + 1.157 + 5.2)| = 114.08/41.04 mΩ.
     */
    @Test
    void leastWithAllThatIsWarmAndAboveItsNameplate() {
        assertThat(faults(plant(Practice.NEC, Trees.deltaWye(Trees.VOLTS_208), 120))
                        .figure("P", "least fault current to neutral"))
                .isCloseTo(2_780, within(3.0));
    }

    /**
     * Single on two lines, 120/240 V: between the legs 4.5 % of 240²/75 kVA, 14.301 + j31.462 mΩ, and the network's two
     * lines, 2·9.238 mΩ·(240/480)². A leg is a third of the first times 1.5/1.67, and 2·9.238 mΩ·(120/480)²:
     * |4.2817 + j(9.4198 + 1.1547)| = 11.408 mΩ; 120 V over that.
     */
    @Test
    void ofSplitPhaseALegToNeutralIsTheMost() {
        Reviews reviews =
                faults(plant(Practice.NEC, Trees.single(PhaseSystem.SPLIT_PHASE, 120, Phase.A, Phase.B), 120));

        assertThat(reviews.figure("T", "greatest fault current")).isCloseTo(10_519, within(5.0));
    }

    /** 4.5 % of 120²/75 kVA: 3.5753 + j7.8656 mΩ; the way of a line and the neutral 9.238 mΩ·(120/277.13)². */
    @Test
    void ofOnePrimaryPhaseTheNeutralIsTheWayBack() {
        Reviews reviews = faults(plant(Practice.NEC, Trees.single(PhaseSystem.SINGLE_PHASE, 120, Phase.C), 120));

        assertThat(reviews.figure("T", "greatest fault current"))
                .isCloseTo(120 / Math.hypot(3.5753e-3, 9.5977e-3), within(5.0));
    }

    @Test
    void transformersWithoutARatingAreNamed() {
        Project bare = plant(Practice.NEC, Trees.deltaWye(Trees.VOLTS_208), 120);
        Project project = bare.withNodes(List.of(
                Trees.node("T", 225, Trees.deltaWye(Trees.VOLTS_208).build()).build()));

        assertThat(faults(project).remarks())
                .filteredOn(each -> each.grade() == Grade.NOT_CHECKED)
                .extracting(Remark::message)
                .contains("not checked: needs transformer.rated_kva and impedance_pct of transformer 'T' ('P', 'T')");
    }

    /** A second source of 400 A at 120 V behind nothing else: 400 A at its terminals. */
    @Test
    void aSourceBesideTheSupplyHasItsOwn() {
        Project project = plant(Practice.NEC, Trees.deltaWye(Trees.VOLTS_208), 120)
                .withNodes(List.of(DistributionNode.builder()
                        .id("T")
                        .ratedAmps(225)
                        .source(Optional.of(NodeSource.builder()
                                .system(PhaseSystem.THREE_PHASE)
                                .lineToNeutralVolts(120)
                                .frequencyHertz(60)
                                .behind(Optional.of(Sources.utility(400)))
                                .build()))
                        .build()));

        assertThat(faults(project).figure("T", "greatest fault current")).isCloseTo(400, within(0.01));
    }

    /**
     * A panel that interrupts 3,500 A behind 3,840 A breaks, at its own voltage; the same plant without a transformer would see
     * far more.
     */
    @Test
    void holdsAPanelAgainstTheFaultAtItsOwnVoltage() {
        Project plant = plant(Practice.NEC, Trees.deltaWye(Trees.VOLTS_208), 120);
        Project project =
                plant.withPanels(List.of(plant.panels().get(0).withInterruptingAmps(OptionalDouble.of(3_500))));

        assertThat(faults(project).remarks())
                .anyMatch(each -> each.grade() == Grade.BREAKS
                        && each.place().equals("P")
                        && Math.abs(each.figure().orElse(0) - 3_840) < 2);
    }

    /**
     * Behind a delta-wye the earth fault returns to the transformer's own star point: 13.129 + j(28.884 + 1.157) mΩ and the
     * cable there and back, 7.9 + j5.2: the same 41.04 mΩ, although nothing is known of the utility's way back.
     */
    @Test
    void loopsOfASeparatelyDerivedSystemNeedNoWordOfTheUtility() {
        Reviews reviews = Reviews.of(
                new DisconnectionCheck(), plant(Practice.NEC, Trees.deltaWye(Trees.VOLTS_208), 120), aPlan().build());

        assertThat(reviews.figure("P", "fault loop")).isCloseTo(0.04104, within(5e-5));
        assertThat(reviews.remarks())
                .extracting(Remark::message)
                .anyMatch(message -> message.contains("electrical.source.fault_loop_ohm") && message.contains("'T'"));
    }

    /** Primary devices are held against devices behind: 2/√3·208/480 of a secondary current may flow on one primary line. */
    @Test
    void discriminationSeesThroughATransformer() {
        Feeder before = Cabling.feeder(FIFTY_FEET, 125).withDevice(ranged(5, 10));
        Feeder behind = Cabling.feeder(FIFTY_FEET, 200).withDevice(ranged(5, 10));
        Project plant = plant(Practice.NEC, Trees.deltaWye(Trees.VOLTS_208), 120);
        Project project = plant.withPanels(List.of(plant.panels().get(0).withFeeder(Optional.of(behind))))
                .withNodes(List.of(plant.nodes().get(0).withFeeder(Optional.of(before))));

        Reviews reviews = Reviews.of(new DiscriminationCheck(), project, aPlan().build());

        // 5·125 A hold on the primary: 625·√3/2·480/208 behind it.
        assertThat(reviews.figure("T", "discrimination shown up to"))
                .isCloseTo(625 * Math.sqrt(3) / 2 * 480 / 208, within(0.01));
        assertThat(reviews.remarks())
                .anyMatch(each -> each.place().equals("T") && each.grade() == Grade.EXCEEDS_RECOMMENDATION);
    }

    private static Optional<Device> ranged(double low, double high) {
        return Optional.of(Device.builder()
                .instantaneous(Optional.of(
                        InstantaneousRange.builder().low(low).high(high).build()))
                .build());
    }
}
