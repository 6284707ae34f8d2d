package evenrise.model.review;

import evenrise.model.plan.Plan;
import evenrise.model.plan.Review;
import evenrise.model.project.Electrical;
import evenrise.model.rules.Layout;
import java.util.List;
import java.util.Optional;

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
            new RotationCheck(),
            new ServiceCheck());

    private ElectricalReview() {}

    public static Review of(Layout layout) {
        return of(layout, Optional.empty());
    }

    /** @param earlier plan that a motor's rotation is held against, too */
    public static Review of(Layout layout, Optional<Plan> earlier) {
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
