package evenrise.model.measured;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;

import evenrise.model.project.Phase;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/** Three loads on one board: one, two at 1 s, 2 s, and three on three poles at 3 s. */
final class OnSite {
    /** Two percent of the reading. */
    static final Meter CLAMP =
            new Meter("M1", OptionalDouble.of(100), 0, 2, 0, 0.1, Optional.empty(), Optional.empty());

    static final Visit VISIT = new Visit(Optional.of("2026-03-14"), CLAMP, "sheet line 2");

    private OnSite() {}

    static Project project() {
        return aProject()
                .supply(aSupply().ratedAmps(100).neutralFactor(4))
                .panels(aPanel("P1").ratedAmps(25).neutralFactor(4))
                .boardTypes(aBoardType())
                .boards(aBoard("B1"))
                .loads(
                        aLoad("one").auxiliary().runningAmps(6).idleAmps(2).breakerAmps(16),
                        aLoad("two")
                                .auxiliary()
                                .runningAmps(8)
                                .idleAmps(4)
                                .breakerAmps(16)
                                .guessed("idle_a"),
                        aLoad("three")
                                .auxiliary()
                                .threePole()
                                .runningAmps(5)
                                .idleAmps(1)
                                .breakerAmps(16))
                .build();
    }

    static Layout layout() {
        return layout(project());
    }

    static Layout layout(Project project) {
        return Layout.of(
                project,
                PlanFinisher.timed(
                        project,
                        aPlan().board("B1", 0, 1)
                                .assignments(
                                        anAssignment("one").at("P1", 1).on("B1", 1),
                                        anAssignment("two").at("P1", 3).on("B1", 2),
                                        anAssignment("three").at("P1", 7).on("B1", 3))
                                .build()));
    }

    static PoleReading idle(String load, Phase phase, double amps) {
        return reading(
                load, Optional.of(phase), OptionalDouble.of(amps), OptionalDouble.empty(), OptionalDouble.empty());
    }

    static PoleReading running(String load, double amps) {
        return reading(load, Optional.empty(), OptionalDouble.empty(), OptionalDouble.of(amps), OptionalDouble.empty());
    }

    static PoleReading peak(String load, double amps) {
        return new PoleReading(
                load,
                Optional.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.of(amps),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                VISIT);
    }

    /** The same on another day. */
    static PoleReading runningOn(String date, String load, double amps) {
        return runningOn(date, load, Optional.empty(), amps);
    }

    static PoleReading runningOn(String date, String load, Optional<Phase> phase, double amps) {
        return new PoleReading(
                load,
                phase,
                OptionalDouble.empty(),
                OptionalDouble.of(amps),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                new Visit(Optional.of(date), CLAMP, "sheet line 3"));
    }

    static PoleReading on(String load, double seconds) {
        return reading(
                load, Optional.empty(), OptionalDouble.empty(), OptionalDouble.empty(), OptionalDouble.of(seconds));
    }

    private static PoleReading reading(
            String load, Optional<Phase> phase, OptionalDouble idle, OptionalDouble running, OptionalDouble on) {
        return new PoleReading(
                load,
                phase,
                idle,
                running,
                OptionalDouble.empty(),
                on,
                OptionalDouble.empty(),
                Optional.empty(),
                Optional.empty(),
                VISIT);
    }

    static SiteReadings poles(PoleReading... poles) {
        return new SiteReadings(List.of(poles), List.of(), List.of());
    }

    static PlaceReading place(
            Map<Phase, Double> volts, Map<Phase, Double> idle, Map<Phase, Double> running, Optional<Boolean> rotation) {
        return new PlaceReading(
                "P1",
                volts,
                idle,
                running,
                Map.of(),
                OptionalDouble.empty(),
                rotation,
                OptionalDouble.empty(),
                Optional.empty(),
                VISIT);
    }

    static SiteReadings places(PlaceReading... places) {
        return new SiteReadings(List.of(), List.of(places), List.of());
    }
}
