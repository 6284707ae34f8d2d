package evenrise.model.validation;

import static evenrise.model.Fixtures.aBoard;
import static evenrise.model.Fixtures.aBoardType;
import static evenrise.model.Fixtures.aGroup;
import static evenrise.model.Fixtures.aLoad;
import static evenrise.model.Fixtures.aPanel;
import static evenrise.model.Fixtures.aPlan;
import static evenrise.model.Fixtures.aProject;
import static evenrise.model.Fixtures.aSupply;
import static evenrise.model.Fixtures.anAssignment;

import evenrise.model.PlanBuilder;
import evenrise.model.ProjectBuilder;
import evenrise.model.project.Behaviour;
import evenrise.model.project.DeadContacts;
import evenrise.model.project.PlanEvent;
import evenrise.model.project.Project;
import evenrise.model.rules.Layout;
import evenrise.model.rules.PlanFinisher;
import java.util.List;
import java.util.Locale;

/** Peaks of events with the show running, by hand. */
final class EventChecks extends CheckList {
    private static final String SECTION = "Peaks of events while the show runs";

    private static final String BY_HAND = "computed by hand: ";

    static List<Check> all() {
        EventChecks table = new EventChecks();
        table.release();
        return List.copyOf(table.checks);
    }

    private void release() {
        String plant = "10 amplifiers, 16 A running, 1 A idle, 60 A inrush, hold; 2 spots, 4 A, 90 A inrush, drop; each"
                + " half-life over before the next comes on";
        event(PlanEvent.RETURN, plant, 109.799, "√2·10 + √2·4 + 90");
        event(PlanEvent.RELEASE, plant, 321.931, "√2·160 + √2·4 + 90");
        event(PlanEvent.BOARD_FAILURE, plant + "; breakers of a dead board open", 321.931, "√2·160 + √2·4 + 90");
        event(PlanEvent.DIP, plant, 992.132, "10·(√2·16 + 60 − √2) + 2·90");
    }

    private void event(PlanEvent event, String plant, double amps, String sum) {
        double ours = layout().eventPeaks().get(0).stream()
                .filter(each -> each.event() == event)
                .findFirst()
                .orElseThrow()
                .peakInrushAmps();
        number(
                SECTION,
                event.name().toLowerCase(Locale.ROOT).replace('_', ' '),
                plant,
                amps,
                1e-3,
                "A",
                ours,
                BY_HAND + sum);
    }

    private static Layout layout() {
        ProjectBuilder project = aProject()
                .supply(aSupply().singlePhase().ratedAmps(400))
                .panels(aPanel("P").slots(24).ratedAmps(400))
                .boardTypes(aBoardType().outputs(16).startDelaySeconds(0, 10).stepSeconds(0.5))
                .boards(aBoard("B1").in("P"), aBoard("B2").in("P"))
                .groups(aGroup("fx").drops())
                .behaviour(Behaviour.builder().deadContacts(DeadContacts.OPEN).build());
        PlanBuilder plan = aPlan().board("B1", 0, 0.5).board("B2", 10, 0.5);
        for (int i = 1; i <= 10; i++) {
            project.loads(aLoad("amp" + i)
                    .amplifier()
                    .runningAmps(16)
                    .idleAmps(1)
                    .inrushPeakAmps(60)
                    .inrushHalfMillis(2));
            plan.assignments(anAssignment("amp" + i).at("P", i).on("B1", i));
        }
        for (int i = 1; i <= 2; i++) {
            project.loads(aLoad("spot" + i)
                    .amplifier()
                    .group("fx")
                    .runningAmps(4)
                    .inrushPeakAmps(90)
                    .inrushHalfMillis(2));
            plan.assignments(anAssignment("spot" + i).at("P", 10 + i).on("B2", i));
        }
        Project built = project.build();
        return Layout.of(built, PlanFinisher.timed(built, plan.build()));
    }
}
