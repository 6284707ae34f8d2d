package evenrise.model.sizing;

import evenrise.model.project.Practice;
import java.util.Collection;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What is asked of each part. */
final class Criteria {
    static final String CURRENT = "current";
    static final String VOLTAGE_DROP = "voltage drop";
    static final String DISCONNECTION = "disconnection";

    /** What 5 % in all leave beside the 3 % of a branch. */
    private static final double FEEDER_DROP_PERCENT = 2;

    private static final String TABLE = "a metal, insulation and method with a verified table in the cable";

    private static final Criterion AMPACITY = Criterion.of(
                    CURRENT,
                    Set.of("conductor", "motor-circuit", "motor-feeder"),
                    Set.of("conductor-too-small", "cable-too-small"))
            .shownBy("ampacity")
            .needed(TABLE);

    private static final Criterion LOOP = Criterion.of(DISCONNECTION, Set.of("disconnection"), Set.of())
            .shownBy("least fault current to the protective conductor")
            .unlessNotChecked();

    static final Criterion BREAKER = Criterion.of(CURRENT, Set.of("breaker-rating"), Set.of("too-small"));

    static final Criterion MOTOR_BREAKER = Criterion.of(
                    "table 430.52",
                    Set.of("motor-circuit"),
                    Set.of(
                            "breaker-far-above-table",
                            "breaker-above-table",
                            "breaker-below-full-load",
                            "breaker-below-disconnecting-size"))
            .shownBy("full-load current of the motor")
            .needed("equipment.motor.horsepower at a voltage of tables 430.248 and 430.250, or"
                    + " equipment.motor.nameplate_a");

    static final Criterion TRANSFORMER = Criterion.of("load", Set.of("transformer"), Set.of("over-nameplate"))
            .shownBy("load of ")
            .needed("what it feeds");

    static final Criterion INTERRUPTING = Criterion.of(
                    "fault level", Set.of("fault-level"), Set.of("over-interrupting-rating"))
            .shownBy("greatest fault current")
            .needed("electrical.source and the feeders' cables");

    private static final List<Criterion> BRANCH_CABLE = List.of(
            AMPACITY,
            Criterion.of(VOLTAGE_DROP, Set.of("voltage-drop"), Set.of())
                    .shownBy("voltage drop")
                    .ofBranch());

    static final List<Criterion> DEVICE = List.of(
            Criterion.of(CURRENT, Set.of("conductor", "motor-feeder"), Set.of("device-too-small")),
            Criterion.of(
                            "transformer behind it",
                            Set.of("transformer"),
                            Set.of("primary-device-too-large", "trips-when-energised"))
                    .shownBy("rated current of its primary"));

    private static final List<Criterion> FEEDER_CABLE = List.of(
            AMPACITY,
            Criterion.of(VOLTAGE_DROP, Set.of("voltage-drop"), Set.of())
                    .shownBy("voltage drop of the feeder")
                    .atMost(FEEDER_DROP_PERCENT, "of the 5 % in all, beside 3 % of a branch"),
            Criterion.of("neutral", Set.of("neutral-use"), Set.of("cable-over-at-worst-use")));

    static final Set<String> ALL_CHECKS = checks(Stream.of(
                    List.of(BREAKER, MOTOR_BREAKER, TRANSFORMER, INTERRUPTING, LOOP),
                    BRANCH_CABLE,
                    DEVICE,
                    FEEDER_CABLE)
            .flatMap(List::stream)
            .toList());

    private Criteria() {}

    static List<Criterion> branchCable(Practice practice) {
        return withLoop(BRANCH_CABLE, practice);
    }

    static List<Criterion> feederCable(Practice practice) {
        return withLoop(FEEDER_CABLE, practice);
    }

    /** American practice sets no time for a disconnection. */
    private static List<Criterion> withLoop(List<Criterion> criteria, Practice practice) {
        return practice == Practice.NEC
                ? criteria
                : Stream.concat(criteria.stream(), Stream.of(LOOP)).toList();
    }

    static Set<String> checks(Collection<Criterion> criteria) {
        return criteria.stream().flatMap(each -> each.checks().stream()).collect(Collectors.toSet());
    }
}
