package evenrise.model.review;

import evenrise.model.plan.Review;
import evenrise.model.project.Electrical;
import evenrise.model.rules.Layout;
import java.util.List;

/** Asks every check. docs/electrical.md explains each. */
public final class ElectricalReview {
    /** In the order in which they are reported. */
    public static final List<ElectricalCheck> ALL = List.of(
            new BreakerRatingCheck(),
            new ContinuousRatingCheck(),
            new BreakerTripCheck(),
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
            new MotorStartCheck(),
            new MotorRestartCheck(),
            new EmergencyNeedsCheck(),
            new ServiceCheck());

    private ElectricalReview() {}

    public static Review of(Layout layout) {
        Findings findings = new Findings();
        ALL.forEach(check -> check.review(layout, findings));
        return Review.builder()
                .practice(layout.project().electrical().flatMap(Electrical::practice))
                .remarks(findings.remarks())
                .quantities(findings.quantities())
                .build();
    }
}
