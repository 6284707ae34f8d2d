package evenrise.model.review;

import evenrise.model.plan.Plan;
import evenrise.model.plan.Review;
import evenrise.model.project.Electrical;
import evenrise.model.project.PlantPart;
import evenrise.model.rules.Layout;
import evenrise.model.rules.NodeFigures;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Asks every check. docs/electrical.md explains each. */
public final class ElectricalReview {
    /** In the order in which they are reported. */
    public static final List<ElectricalCheck> ALL = List.of(
            new BreakerRatingCheck(),
            new ContinuousRatingCheck(),
            new BreakerTripCheck(),
            new DeviceTripCheck(),
            new DiscriminationCheck(),
            new ConductorCheck(),
            new VoltageDropCheck(),
            new VoltageDipCheck(),
            new InrushToleranceCheck(),
            new RealisticPeakCheck(),
            new UpsLimitCheck(),
            new FaultLevelCheck(),
            new DisconnectionCheck(),
            new NeutralHarmonicsCheck(),
            new NeutralUseCheck(),
            new UnbalanceCheck(),
            new AmplifierDemandCheck(),
            new HeatCheck(),
            new MotorCircuitCheck(),
            new MotorFeederCheck(),
            new MotorStartCheck(),
            new MotorServiceCheck(),
            new MotorRestartCheck(),
            new EmergencyNeedsCheck(),
            new NewerFormatCheck(),
            new RotationCheck(),
            new ServiceCheck());

    /** Stands for all checks where a plant has parts that none of them understands. */
    private static final String PLANT = "plant";

    private ElectricalReview() {}

    public static Review of(Layout layout) {
        return of(layout, Optional.empty());
    }

    /** Every check is made for one supply with panels and one command: with more none says anything, and that is said. */
    private static Review notMade(Layout layout, List<PlantPart> beyond) {
        List<String> places = Stream.concat(Stream.of(NodeFigures.SUPPLY), Findings.loadsAndPanels(layout).stream())
                .toList();
        Findings findings = new Findings();
        String parts = "checks that understand " + PlantPart.listed(beyond)
                + "; no electrical check is made, nor a peak when something happens worked out, nor the hard rule event-inrush"
                + " judged";
        findings.notCheckedAnywhere(PLANT, Findings.PLANT, places, parts);
        return Review.builder()
                .practice(layout.project().electrical().flatMap(Electrical::practice))
                .remarks(findings.remarks())
                .quantities(findings.quantities())
                .checks(List.of(findings.count(PLANT)))
                .build();
    }

    /** @param earlier plan that a motor's rotation is held against, too */
    public static Review of(Layout layout, Optional<Plan> earlier) {
        List<PlantPart> beyond = PlantPart.beyondReview(layout.project());
        if (!beyond.isEmpty()) {
            return notMade(layout, beyond);
        }
        Findings findings = new Findings();
        ALL.forEach(check -> check.review(layout, findings));
        earlier.ifPresent(plan -> RotationCheck.against(plan, layout, findings));
        return Review.builder()
                .practice(layout.project().electrical().flatMap(Electrical::practice))
                .remarks(findings.remarks())
                .quantities(findings.quantities())
                .checks(ALL.stream()
                        .filter(ElectricalCheck::judges)
                        .map(check -> findings.count(check.id()))
                        .filter(count -> count.made() + count.notMade() > 0)
                        .toList())
                .build();
    }
}
