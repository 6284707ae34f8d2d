package evenrise.model.event;

import static org.assertj.core.api.Assertions.assertThat;

import evenrise.model.plan.EventPeak;
import evenrise.model.project.DeadContacts;
import evenrise.model.project.Load;
import evenrise.model.project.PlanEvent;
import evenrise.model.project.Project;
import evenrise.model.project.SwitchedSystem;
import evenrise.model.rules.Layout;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.Random;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.Tag;
import net.jqwik.api.constraints.IntRange;

/** What holds for plants with a distribution and systems of their own, whatever happens to any part of them. */
@Tag("slow")
class CampusPropertiesTest {
    private static final String SEED = "20013";
    private static final int PLANTS = 3000;
    private static final double REST = 10_000;

    private static ScriptEvent at(double seconds, Happening event) {
        return ScriptEvent.of(OptionalDouble.of(seconds), event);
    }

    /** Commands and contacts of systems, what feeds any point, breakers and feeders that trip; faults where they may be. */
    private static EventScript script(Project project, int seed, boolean withFaults) {
        Random random = new Random(seed * 131L + 3);
        List<String> points = new ArrayList<>(List.of("supply"));
        project.panels().forEach(each -> points.add(each.id()));
        project.nodes().forEach(each -> points.add(each.id()));
        List<String> switched =
                project.loads().stream().filter(Load::switched).map(Load::id).toList();
        List<ScriptEvent> events = new ArrayList<>(List.of(at(0, Happening.SYSTEM_ON)));
        double now = 0;
        for (int i = 1 + random.nextInt(12); i > 0; i--) {
            now += new double[] {0, 0.3, 1, 2.5, 7, 20, 60}[random.nextInt(7)];
            String point = points.get(random.nextInt(points.size()));
            switch (random.nextInt(withFaults ? 8 : 4)) {
                case 0 -> events.add(of(project, at(now, Happening.SYSTEM_ON), random));
                case 1 -> events.add(of(project, at(now, Happening.SYSTEM_OFF), random));
                case 2 -> events.add(of(project, at(now, Happening.EMERGENCY), random));
                case 3 -> events.add(of(project, at(now, Happening.RELEASE), random));
                case 4, 5 ->
                    events.add(at(now, Happening.MAINS)
                            .voltage(new double[] {100, 0, 85, 75, 60}[random.nextInt(5)], List.of())
                            .atNode(point));
                case 6 ->
                    events.add(at(now, random.nextBoolean() ? Happening.TRIP : Happening.RESET)
                            .atNode(point));
                default -> {
                    if (!switched.isEmpty()) {
                        events.add(at(now, random.nextBoolean() ? Happening.TRIP : Happening.STAYS_OPEN)
                                .withLoad(switched.get(random.nextInt(switched.size()))));
                    }
                }
            }
        }
        return new EventScript("drawn", events);
    }

    private static ScriptEvent of(Project project, ScriptEvent event, Random random) {
        List<String> systems =
                project.systems().stream().map(SwitchedSystem::id).toList();
        boolean isCommand = event.event() == Happening.SYSTEM_ON || event.event() == Happening.SYSTEM_OFF;
        return systems.isEmpty() || random.nextInt(3) == 0 || isCommand && !project.hasClocks()
                ? event
                : event.withSystem(systems.get(random.nextInt(systems.size())));
    }

    @Property(tries = 1500, seed = SEED)
    void commandsAndContactsOfSystemsBreakNothing(@ForAll @IntRange(max = PLANTS) int seed, @ForAll boolean usual) {
        Layout layout = RandomCampus.layout(seed, usual);
        EventScript script = script(layout.project(), seed, false);

        Trace trace = Rehearsal.of(ConnectedLoads.of(layout), script);

        assertThat(trace.findings())
                .as("%s%s", layout.project().overlap(), RawEvent.text(script))
                .noneMatch(each -> each.grade() == EventFinding.Grade.BROKEN
                        && !each.rule().equals("inrush-limit"));
    }

    @Property(tries = 1000, seed = SEED)
    void noCurrentIsEverAboveItsBound(
            @ForAll @IntRange(max = PLANTS) int seed, @ForAll boolean usual, @ForAll Use use) {
        Layout layout = RandomCampus.layout(seed, usual);
        EventScript script = script(layout.project(), seed, true);
        double tolerance = layout.project().timingToleranceSeconds();
        Random random = new Random(seed);

        Trace trace = Rehearsal.of(
                ConnectedLoads.of(layout, use), script, (load, closing) -> tolerance * (2 * random.nextDouble() - 1));

        assertThat(trace.findings())
                .as(RawEvent.text(script))
                .noneMatch(each -> each.rule().equals("bound"));
    }

    /** Whatever the overlap, at every node, also those of further sources when these fail. */
    @Property(tries = 600, seed = SEED)
    void noEventPeaksAboveItsFigureOfThePlan(
            @ForAll @IntRange(max = PLANTS) int seed, @ForAll boolean usual, @ForAll DeadContacts contacts) {
        Layout layout = RandomCampus.layout(seed, usual);
        List<String> sources = new ArrayList<>(List.of("supply"));
        layout.project().nodes().stream()
                .filter(each -> each.source().isPresent())
                .forEach(each -> sources.add(each.id()));
        double hold = layout.project().behaviourOrDefault().brownoutHoldSeconds();

        for (String each : sources) {
            Trace returned = day(
                    layout,
                    at(0, Happening.SYSTEM_ON),
                    at(REST, Happening.MAINS).voltage(0, List.of()).atNode(each),
                    at(2 * REST, Happening.MAINS).voltage(100, List.of()).atNode(each));
            isWithin(layout, PlanEvent.RETURN, returned, 2 * REST, each);
            if (hold > 0) {
                Trace dipped = day(
                        layout,
                        at(0, Happening.SYSTEM_ON),
                        at(REST, Happening.MAINS).voltage(0, List.of()).atNode(each),
                        at(REST + hold / 2, Happening.MAINS)
                                .voltage(100, List.of())
                                .atNode(each));
                isWithin(layout, PlanEvent.DIP, dipped, REST, each);
            }
        }
        Trace released =
                day(layout, at(0, Happening.SYSTEM_ON), at(REST, Happening.EMERGENCY), at(2 * REST, Happening.RELEASE));
        isWithin(layout, PlanEvent.RELEASE, released, 2 * REST, "all");
        for (SwitchedSystem each : layout.project().systems()) {
            Trace one = day(
                    layout,
                    at(0, Happening.SYSTEM_ON),
                    at(REST, Happening.EMERGENCY).withSystem(each.id()),
                    at(2 * REST, Happening.RELEASE).withSystem(each.id()));
            isWithin(layout, PlanEvent.RELEASE, one, 2 * REST, each.id());
        }
        layout.project().boards().forEach(board -> {
            Trace mended = day(
                    layout,
                    at(0, Happening.BOARD_DEAD).withBoard(board.id()),
                    at(0, Happening.SYSTEM_ON),
                    at(REST, Happening.BOARD_BACK).withBoard(board.id()));
            isWithin(layout, PlanEvent.BOARD_FAILURE, mended, REST, board.id());
            Trace brownout = day(
                    layout,
                    at(0, Happening.SYSTEM_ON),
                    at(REST, Happening.BOARD_DEAD).withBoard(board.id()),
                    at(2 * REST, Happening.MAINS).voltage(0, List.of()),
                    at(3 * REST, Happening.MAINS).voltage(100, List.of()));
            isWithin(layout, PlanEvent.BOARD_FAILURE, brownout, REST, board.id());
        });
    }

    private static Trace day(Layout layout, ScriptEvent... events) {
        return BothWays.of(layout, Use.FULL, new EventScript("day", List.of(events)));
    }

    private static void isWithin(Layout layout, PlanEvent event, Trace trace, double fromSeconds, String what) {
        for (int node = 0; node < layout.nodes().size(); node++) {
            int at = node;
            Optional<EventPeak> figure = layout.eventPeaks().get(node).stream()
                    .filter(each -> each.event() == event)
                    .findFirst();
            double peak = trace.episodes().stream()
                    .filter(each -> each.fromSeconds() >= fromSeconds)
                    .mapToDouble(each -> each.peaks().get(at).boundAmps())
                    .max()
                    .orElse(0);
            figure.ifPresent(it -> assertThat(peak)
                    .as(
                            "%s of %s at %s, %s",
                            event,
                            what,
                            layout.nodes().get(at).node(),
                            layout.project().overlap())
                    .isLessThanOrEqualTo(it.peakInrushAmps() + 1e-6));
        }
    }
}
