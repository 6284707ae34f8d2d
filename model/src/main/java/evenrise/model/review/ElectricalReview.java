package evenrise.model.review;

import evenrise.model.plan.Plan;
import evenrise.model.plan.Review;
import evenrise.model.project.Electrical;
import evenrise.model.project.Load;
import evenrise.model.project.PlantPart;
import evenrise.model.rules.Distribution;
import evenrise.model.rules.Layout;
import java.util.List;
import java.util.Optional;
import java.util.Set;
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
            new TapCheck(),
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
            new TransformerCheck(),
            new ContactorCheck(),
            new SceneBasisCheck(),
            new GroundingCheck(),
            new EmergencyNeedsCheck(),
            new NewerFormatCheck(),
            new RotationCheck(),
            new ServiceCheck(),
            new ExistingDemandCheck());

    /** What is said of parts of a plant that events do not understand yet. */
    private ElectricalReview() {}

    public static Review of(Layout layout) {
        return of(layout, Optional.empty());
    }

    /** A check of a plan with parts that it does not understand says nothing, and that is said. */
    private static void review(ElectricalCheck check, Layout layout, Remarks findings) {
        List<PlantPart> beyond = PlantPart.used(layout.project(), check.beyond());
        findings.asking(check.id());
        if (beyond.isEmpty()) {
            check.review(layout, findings);
        } else {
            findings.notCheckedAnywhere(
                    check.id(), Remarks.PLANT, places(layout), "a check that understands " + PlantPart.listed(beyond));
        }
    }

    /** What these checks alone say, named as in docs/electrical.md. */
    public static Review of(Layout layout, Set<String> checks) {
        return of(
                layout,
                ALL.stream().filter(check -> checks.contains(check.id())).toList(),
                Optional.empty());
    }

    private static List<String> places(Layout layout) {
        return Stream.concat(
                        layout.project().loads().stream().map(Load::id),
                        layout.distribution().points().stream().map(Distribution.Point::id))
                .toList();
    }

    /** @param earlier plan that a motor's rotation is held against, too */
    public static Review of(Layout layout, Optional<Plan> earlier) {
        return of(layout, ALL, earlier);
    }

    private static Review of(Layout layout, List<ElectricalCheck> checks, Optional<Plan> earlier) {
        Remarks findings = new Remarks(layout.project());
        checks.forEach(check -> review(check, layout, findings));
        earlier.ifPresent(plan -> RotationCheck.against(plan, layout, findings));
        return Review.builder()
                .practice(layout.project().electrical().flatMap(Electrical::practice))
                .remarks(findings.remarks())
                .quantities(findings.quantities())
                .checks(checks.stream()
                        .filter(ElectricalCheck::judges)
                        .map(ElectricalCheck::id)
                        .map(findings::count)
                        .filter(count -> count.made() + count.notMade() > 0)
                        .toList())
                .build();
    }
}
