package evenrise.model.sizing;

import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.LoadBuilder;
import evenrise.model.plan.Assignment;
import evenrise.model.plan.Plan;
import evenrise.model.project.Cable;
import evenrise.model.project.Circuit;
import evenrise.model.project.DistributionNode;
import evenrise.model.project.Electrical;
import evenrise.model.project.Equipment;
import evenrise.model.project.Feeder;
import evenrise.model.project.Load;
import evenrise.model.project.Motor;
import evenrise.model.project.PhaseSystem;
import evenrise.model.project.Practice;
import evenrise.model.project.Project;
import evenrise.model.project.Secondary;
import evenrise.model.project.Transformer;
import evenrise.model.project.TransformerConnection;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Worked examples of feeders and transformers; cables by table 310.16, copper, at 5 m, so that current alone governs. */
class FeederSizingExamplesTest {
    private static final Cable ANY =
            Cable.builder().lengthMetres(5).size("12 AWG").build();

    /** All loads have three poles and sit one below the other. */
    private static Plan plan(Project project) {
        List<Assignment> assignments = new ArrayList<>();
        for (Load load : project.loads()) {
            assignments.add(Assignment.builder()
                    .load(load.id())
                    .panel("P1")
                    .slot(1 + 6 * assignments.size())
                    .phases(List.of())
                    .build());
        }
        return Plan.builder().boards(List.of()).assignments(assignments).build();
    }

    private static Project fed(double lineToNeutralVolts, LoadBuilder... loads) {
        return aProject()
                .supply(aSupply().lineToNeutralVolts(lineToNeutralVolts).ratedAmps(2000))
                .electrical(Electrical.builder().practice(Practice.NEC).build())
                .panels(aPanel("P1")
                        .ratedAmps(1000)
                        .feeder(Feeder.builder().cable(ANY).build()))
                .loads(Arrays.stream(loads)
                        .map(each -> each.unswitched().threePole().breakerAmps(400))
                        .toArray(LoadBuilder[]::new))
                .build();
    }

    private static String proposed(Project project, Part part) {
        return Sizer.of(project, Optional.of(plan(project)))
                .of(part)
                .get(0)
                .proposed()
                .map(Size::text)
                .orElse("none");
    }

    /** 125 % of 60 A and 80 A are 155 A (NEC 215.2(A), 215.3); 1/0 has 150 A, 2/0 175 A (common practice, no source). */
    @Test
    void ofAContinuousLoadAndOneThatIsNot() {
        Project project = fed(
                120,
                aLoad("long").runningAmps(60),
                aLoad("short")
                        .runningAmps(80)
                        .circuit(Circuit.builder().continuous(false).build()));

        assertThat(proposed(project, Part.DEVICE)).isEqualTo("175 A");
        assertThat(proposed(project, Part.FEEDER_CABLE)).isEqualTo("2/0 AWG");
    }

    /**
     * NEC 430.24, 125 % of the largest motor and the others. 100, 100, 60 and 7½ hp at 460 V: 124, 124, 77 and 11 A need 367
     * A (a thread of electricians); 25 hp and two of 30 hp, 34, 40 and 40 A, need 124 A (NEC annex D, example D8, from
     * memory); 50, 40 and 10 hp, 65, 52 and 14 A, need 147.25 A; 10, 5 and 3 hp at 208 V, 30.8, 16.7 and 10.6 A, need 65.8 A
     * (both computed). Sizes computed.
     */
    @ParameterizedTest
    @CsvSource({
        "277, '100,100,60,7.5', '124,124,77,11', 500 kcmil",
        "277, '30,30,25', '40,40,34', 1 AWG",
        "277, '50,40,10', '65,52,14', 1/0 AWG",
        "120, '10,5,3', '30.8,16.7,10.6', 4 AWG"
    })
    void ofMotors(double volts, String horsepower, String amps, String cable) {
        String[] sizes = horsepower.split(",");
        String[] currents = amps.split(",");
        LoadBuilder[] motors = new LoadBuilder[sizes.length];
        for (int i = 0; i < sizes.length; i++) {
            Motor motor =
                    Motor.builder().horsepower(Double.parseDouble(sizes[i])).build();
            motors[i] = aLoad("M" + i)
                    .runningAmps(Double.parseDouble(currents[i]))
                    .circuit(Circuit.builder().continuous(false).build())
                    .equipment(Equipment.builder().motor(motor).build());
        }

        assertThat(proposed(fed(volts, motors), Part.FEEDER_CABLE)).isEqualTo(cable);
    }

    /**
     * At 208 V: 83.27, 124.9 and 208.2 A are 30, 45 and 75 kVA (the last published by a calculator of transformers' currents,
     * the others computed); so as much is kept and a little more is not.
     */
    @ParameterizedTest
    @CsvSource({"83.2, 30 kVA", "83.4, 45 kVA", "124.8, 45 kVA", "125.0, 75 kVA", "208.1, 75 kVA", "208.3, 112.5 kVA"})
    void ofATransformer(double amps, String kva) {
        Transformer transformer = Transformer.builder()
                .connection(TransformerConnection.DELTA_WYE)
                .secondary(Secondary.builder()
                        .system(PhaseSystem.THREE_PHASE)
                        .lineToNeutralVolts(208 / Math.sqrt(3))
                        .build())
                .ratedKva(OptionalDouble.of(15))
                .build();
        Project bare = fed(277, aLoad("L1").runningAmps(amps));
        Project project = bare.withNodes(List.of(DistributionNode.builder()
                        .id("T")
                        .ratedAmps(1000)
                        .transformer(transformer)
                        .build()))
                .withPanels(List.of(bare.panels().get(0).withFedFrom(Optional.of("T"))));

        assertThat(proposed(project, Part.TRANSFORMER)).isEqualTo(kva);
    }

    /**
     * 30 A over 90 m of stated feeder behind a node with as much again lose far more than 4 % before the branch: no branch
     * mends that, so it has what its own 3 % ask for, and the load is named.
     */
    @Test
    void leavesABranchAloneThatFeedersBeforeItLeaveNothing() {
        Cable far = Cable.builder()
                .lengthMetres(90)
                .size("12 AWG")
                .conductorCelsius(OptionalDouble.of(75))
                .build();
        Project bare = fed(
                120,
                aLoad("L1")
                        .runningAmps(18)
                        .circuit(Circuit.builder().continuous(false).cable(ANY).build()));
        Optional<Feeder> feeder = Optional.of(Feeder.builder().cable(far).build());
        Project project = bare.withNodes(List.of(DistributionNode.builder()
                        .id("N")
                        .ratedAmps(1000)
                        .feeder(feeder)
                        .build()))
                .withPanels(List.of(bare.panels()
                        .get(0)
                        .with()
                        .fedFrom(Optional.of("N"))
                        .feeder(feeder)
                        .build()));

        Sizes sizes = Sizer.of(project, Optional.of(plan(project)));

        assertThat(sizes.of(Part.BRANCH_CABLE).get(0).proposed().orElseThrow().text())
                .isEqualTo("12 AWG");
        assertThat(sizes.open())
                .filteredOn(each -> each.kind().equals("drops-too-far"))
                .singleElement()
                .satisfies(each -> assertThat(each.place()).isEqualTo("L1"));
    }
}
